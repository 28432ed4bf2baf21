// @ts-check
/**
 * A list of answers of which one is chosen.
 */

import { html, nothing } from 'lit-html';

import { sentence } from './sentence.js';

/**
 * @param {object} list
 * @param {string} list.name      tells it from other lists of the screen
 * @param {string} [list.label]   said of the whole list, where nothing on the screen says it
 * @param {Array<{id: string, words: string}>} list.options
 * @param {string | undefined} list.chosen
 * @param {(id: string) => void} list.pick
 * @param {boolean} [list.two]    two beside each other, where there is room
 */
export function oneOf({ name, label = '', options, chosen, pick, two = false }) {
  return html`<div class=${two ? 'choices choices-two' : 'choices'} role=${label ? 'group' : nothing} aria-label=${label || nothing}>
    ${options.map(
      ({ id, words }) => html`<label class="choice">
        <input type="radio" name=${name} .checked=${chosen === id} @change=${() => pick(id)} />
        <span class="choice-word">${sentence(words)}</span>
      </label>`,
    )}
  </div>`;
}
