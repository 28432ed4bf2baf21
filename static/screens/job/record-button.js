// @ts-check
/** A small button that records facts at once. */

import { html } from 'lit-html';

import { sentence } from '../frame/sentence.js';

/** @typedef {import('../../core/views.js').Draft} Draft */

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} words
 * @param {Draft[]} events
 */
export function recordButton(ctx, words, events) {
  return html`<button
    class="small-button"
    type="button"
    ?disabled=${ctx.busy}
    @click=${() => ctx.act(events, { after: ctx.forget })}
  >
    ${sentence(words)}
  </button>`;
}
