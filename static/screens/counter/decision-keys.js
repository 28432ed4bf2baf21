// @ts-check
/**
 * A key for each decision, beside its button: keys that no scanner types in the midst of a code.
 */

import { html } from 'lit-html';

import { mark } from '../../shapes/marks.js';
import { DECISION_MARKS } from './card.js';

const KEYS = /** @type {Record<string, string>} */ ({ accept: 'F2', hold: 'F8', refuse: 'F9' });

/** @type {(decision: string) => void} */
let present = () => undefined;
let begun = false;

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {(decision: string) => void} onDecision  on the unit at hand
 */
export function decisionKeys({ services }, onDecision) {
  present = onDecision;
  if (begun) return;
  begun = true;
  addEventListener('keydown', (event) => {
    const [decision] = Object.keys(KEYS).filter((each) => KEYS[each] === event.key);
    if (!decision || services.device.role.value !== 'counter' || !document.querySelector('[data-takes-codes]')) return;
    event.preventDefault();
    if (!event.repeat) present(decision);
  });
}

/**
 * @param {import('./asking.js').CounterCard} answer
 * @param {(decision: string) => void} onDecision
 */
export function decisionButtons({ decisions }, onDecision) {
  return html`<div class="ways-row decision-buttons">
    ${decisions.map(
      ({ decision, word }) =>
        html`<button class="small-button" type="button" aria-keyshortcuts=${KEYS[decision]} @click=${() => onDecision(decision)}>
          ${mark(DECISION_MARKS[decision], { word })} <kbd>${KEYS[decision]}</kbd>
        </button>`,
    )}
  </div>`;
}
