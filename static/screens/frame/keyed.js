// @ts-check
/**
 * Draws a part of a screen afresh where its key changes, and ends what lived in the one before (mount.js): a camera
 * that is no longer on the screen is off. The directive of lit-html of this name leaves it running, for it forgets
 * what was drawn before it takes it away.
 */

import { nothing } from 'lit-html';
import { Directive, directive } from 'lit-html/directive.js';
import { clearPart, setCommittedValue } from 'lit-html/directive-helpers.js';

class Keyed extends Directive {
  /** @type {unknown} */
  #key = nothing;

  /**
   * @param {string} _key
   * @param {unknown} drawn
   */
  render(_key, drawn) {
    return drawn;
  }

  /**
   * @param {any} part
   * @param {[string, unknown]} args
   */
  update(part, [key, drawn]) {
    if (key !== this.#key) {
      clearPart(part);
      setCommittedValue(part);
      this.#key = key;
    }
    return drawn;
  }
}

/** `${keyed(key, html`…`)}` */
export const keyed = directive(Keyed);
