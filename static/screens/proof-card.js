// @ts-check
/**
 * How far the proof has come: clean tests in a row, and how sure that makes it against what was asked for.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../shapes/icons.js';
import { markShape } from '../shapes/marks.js';

/** More marks than this are counted in figures only. */
const MOST_MARKS = 12;

/** @param {any} view  the job's view */
export function proofCard(view) {
  const { proof } = view;
  const { clean_in_a_row: row, settled, sentence } = proof;
  // Before the first clean test after a repair there is nothing to count yet.
  if (!sentence || !row) return nothing;
  return html`<section class="card proof" data-settled=${settled ? 'yes' : 'no'}>
    <h2 class="proof-head">${settled ? html`${icon('tick')} Proven` : 'Proof so far'}</h2>
    ${row <= MOST_MARKS
      ? html`<div class="proof-marks" aria-hidden="true">
          ${Array.from(
            { length: row },
            () => html`<svg class="proof-mark" viewBox="-17 -17 34 34">${markShape('clean', { x: 0, y: 0 })}</svg>`,
          )}
          ${settled ? nothing : html`<svg class="proof-mark" viewBox="-17 -17 34 34">${markShape('untested', { x: 0, y: 0 })}</svg>`}
        </div>`
      : nothing}
    <p>${sentence}</p>
    <p class="proof-run">${proof.run_words}</p>
  </section>`;
}
