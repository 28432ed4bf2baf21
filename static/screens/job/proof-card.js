// @ts-check
/**
 * How far the proof has come: clean tests in a row, and how sure that makes it against what was asked for.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { markShape } from '../../shapes/marks.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').JobView} JobView */

/** More marks than this are counted in figures only. */
const MOST_MARKS = 12;

/** @param {JobView} view  the job's view */
export function proofCard(view) {
  const { clean_in_a_row: row, more, settled, sentence, run_words: run } = view.proof;
  // Before the first clean test after a repair there is nothing to count yet.
  if (!sentence || !row) return nothing;
  return html`<section class="card proof" data-settled=${settled ? 'yes' : 'no'}>
    <h2 class="proof-head">${settled ? html`${icon('tick')} ${say('job-proof-proven')}` : say('job-proof-so-far')}</h2>
    ${row + (more ?? 0) <= MOST_MARKS
      ? html`<div class="proof-marks" aria-hidden="true">
          ${marks('clean', row)} ${settled ? nothing : marks('untested', more ?? 1)}
        </div>`
      : nothing}
    <p>${sentence}</p>
    ${run ? html`<p class="proof-run">${run}</p>` : nothing}
  </section>`;
}

/**
 * @param {string} kind
 * @param {number} length
 */
function marks(kind, length) {
  return Array.from(
    { length },
    () => html`<svg class="proof-mark" viewBox="-17 -17 34 34">${markShape(kind, { x: 0, y: 0 })}</svg>`,
  );
}
