// @ts-check
/**
 * Why a verdict stands: the tests that carry it, what else it could be, and what would tell the two apart.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../words/words.js';
import { sentence } from '../frame/sentence.js';

/**
 * @typedef {object} Evidence
 * @property {string[]} carries
 * @property {string} runner_up
 * @property {{sentence: string, results: Array<{result: string, then: string}>} | null} apart
 */

/** @param {Evidence} found */
export function evidence({ carries, runner_up: other, apart }) {
  if (!carries.length) return nothing;
  return html`<section class="evidence">
    <h2>${say('job-evidence-carries')}</h2>
    <ul class="evidence-list">
      ${carries.map((line) => html`<li>${sentence(line)}</li>`)}
    </ul>
    ${other ? html`<h2>${say('job-evidence-other')}</h2><p>${sentence(other)}</p>` : nothing}
    ${apart
      ? html`<h2>${say('job-evidence-apart')}</h2>
          <p>${sentence(apart.sentence)}</p>
          ${results(apart.results)}`
      : nothing}
  </section>`;
}

/** @param {Array<{result: string, then: string}>} rows */
function results(rows) {
  if (!rows.length) return nothing;
  return html`<ul class="evidence-list">
    ${rows.map(
      ({ result, then }) =>
        html`<li>
          <span class="outlook-result">${sentence(result)}</span>
          <span class="outlook-then">${sentence(then)}</span>
        </li>`,
    )}
  </ul>`;
}
