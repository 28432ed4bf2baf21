// @ts-check
/**
 * Ties something that lives long, such as a camera, to an element of a screen: started once when the
 * element is on the page, stopped when it leaves, untouched by everything drawn in between.
 */

import { AsyncDirective, directive } from 'lit-html/async-directive.js';

/**
 * @typedef {(() => void) | {stop: () => void} | void} Stoppable
 */

class Mounted extends AsyncDirective {
  /** @type {string | null} */
  #key = null;
  /** @type {(host: HTMLElement) => Stoppable} */
  #start = () => undefined;
  /** @type {HTMLElement | null} */
  #host = null;
  /** @type {Stoppable} */
  #running = undefined;

  /**
   * @param {string} _key
   * @param {(host: HTMLElement) => Stoppable} _start
   */
  render(_key, _start) {
    return undefined;
  }

  /**
   * @param {any} part
   * @param {[string, (host: HTMLElement) => Stoppable]} args
   */
  update(part, [key, start]) {
    this.#start = start;
    this.#host = part.element;
    if (key !== this.#key) {
      this.#stop();
      this.#key = key;
      // The element stands on the page only after the template was drawn.
      queueMicrotask(() => this.#begin(key));
    }
  }

  disconnected() {
    this.#stop();
  }

  reconnected() {
    if (this.#key !== null) this.#begin(this.#key);
  }

  /** @param {string} key */
  #begin(key) {
    if (this.isConnected && key === this.#key && this.#host) this.#running = this.#start(this.#host);
  }

  #stop() {
    const running = this.#running;
    this.#running = undefined;
    if (typeof running === 'function') running();
    else running?.stop();
  }
}

const attach = directive(Mounted);

/**
 * On an element: `<div ${mounted('camera', (host) => openCamera(host, {…}))}></div>`. `start` is called
 * once for a key, and what it returns is stopped when the element leaves or the key changes. The element
 * belongs to `start`: give it no children. `start` keeps what it closed over when it was called, so let
 * it read `ctx.form` (the same object as long as the step is) rather than copies.
 * @param {string} key
 * @param {(host: HTMLElement) => Stoppable} start
 */
export function mounted(key, start) {
  return attach(key, start);
}
