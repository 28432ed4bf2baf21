// @ts-check
/**
 * The labels that have what was typed so far, to be tapped: of a label that suffered, two characters are mostly
 * enough. The core says which; the wrong one is among them, and stops as if it had been scanned.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../shapes/code.js';
import { say } from '../../words/words.js';
import { badMark } from '../frame/bad-mark.js';

/** @typedef {import('../../core/views.js').NearLabels} NearLabels */

/** What was asked last for a form, and the answer once it is there. @type {WeakMap<object, {text: string, near: NearLabels | null}>} */
const asked = new WeakMap();

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} typed
 * @param {(text: string) => unknown} take
 * @param {string | null} [job]  whose sensors come before others
 */
export function nearLabels(ctx, typed, take, job) {
  const near = answered(ctx, typed.trim(), job ?? '');
  if (!near?.labels.length) return nothing;
  return html`<section class="screen-stack" role="status">
    <h2 class="asked-words">${say('scan-near', { count: near.labels.length })}</h2>
    <p>${say('scan-near-ask')}</p>
    <ul class="which">
      ${near.labels.map(
        ({ code: text, shown, where, bad }) => html`<li>
          <button class="which-button" type="button" ?disabled=${ctx.busy} @click=${() => take(text)}>
            ${code(shown, { size: 'large' })}<span class="list-note">${where}</span>${badMark(bad)}
          </button>
        </li>`,
      )}
    </ul>
    ${near.more ? html`<p class="soft">${say('scan-near-more', { count: near.more })}</p>` : nothing}
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} text
 * @param {string} job
 */
function answered({ form, services, redraw }, text, job) {
  const last = asked.get(form);
  if (last?.text === text) return last.near;
  /** @type {{text: string, near: NearLabels | null}} */
  const question = { text, near: null };
  asked.set(form, question);
  const answer = (/** @type {NearLabels} */ near) => {
    question.near = near;
    // Whoever typed on is told of what they typed.
    if (asked.get(form) === question && near.labels.length) redraw();
  };
  // Without an answer the code is typed whole, as ever.
  services.core.call('near_labels', { text, job }).then(answer, () => undefined);
  return null;
}
