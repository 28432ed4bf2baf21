// @ts-check
/**
 * The two ways a label is answered when the work cannot go on: a stop, and a plain 'this is not it'.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { markShape } from '../../shapes/marks.js';
import { sentence, singleSentences } from '../frame/sentence.js';
import { say } from '../../words/words.js';

/**
 * A stop: hatched, with the square cross, both names in large type, and what to do.
 * @param {{title: string, sentence: string, more: string}} words  as the core says them
 * @param {(() => unknown) | null} [onMixed]
 */
export function stopPanel({ title, sentence: names, more }, onMixed) {
  return html`<section class="panel panel-stop stop" role="alert">
    <p class="panel-kicker">
      <svg class="stop-mark" viewBox="-17 -17 34 34" aria-hidden="true">${markShape('fault', { x: 0, y: 0 })}</svg>
      <span>${title}</span>
    </p>
    <h2 class="stop-names">
      ${singleSentences(names).map((line) => html`<span class="stop-name">${sentence(line)}</span> `)}
    </h2>
    ${more ? html`<p class="stop-do">${sentence(more)}</p>` : nothing}
  </section>
  ${onMixed ? html`<button class="link-button" type="button" @click=${onMixed}>${say('scan-mixed')}</button>` : nothing}`;
}

/**
 * A text that is not a label of ours. What it holds is shown as text, never opened.
 * @param {{title: string, sentence: string}} words
 */
export function toldPanel({ title, sentence: holds }) {
  return html`<section class="panel panel-ask" role="alert">
    <p class="panel-kicker">${icon('ask')}<span>${title}</span></p>
    <p class="told-holds">${sentence(holds)}</p>
    <p>${say('scan-nothing-opened')}</p>
  </section>`;
}
