// @ts-check
/**
 * The ways from where an entry shows to where it is entered anew.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { linkTo, to } from './router.js';
import { sentence } from './sentence.js';

/** @typedef {import('../../core/views.js').HistoryEntry} HistoryEntry */

/** Whether an entry of a job that can be put right shows there. @param {{history: HistoryEntry[]}} job @param {string} about */
export function anyAbout({ history }, about) {
  return history.some((entry) => entry.about.includes(about) && (entry.may_right || entry.may_undo));
}

/** On a line that is itself the way. */
export function correctMark() {
  return html`<span class="aloud">${say('job-right-here')}</span>${icon('undo')}`;
}

/**
 * What shows here is not right.
 * @param {string} where  the address that leads to the entries, one of `to`
 */
export function correctLink(where) {
  return html`<a class="link-button" href=${linkTo(where)}>${say('job-right-here')}</a>`;
}

/**
 * Entries, the first one first, each the way to where it is entered anew.
 * @param {string} job
 * @param {HistoryEntry[]} entries  newest first, as the history has them
 */
export function correctLines(job, entries) {
  if (!entries.length) return nothing;
  return html`<ul class="list">
    ${[...entries].reverse().map(
      ({ about: [about], sentence: words }) => html`<li>
        <a class="list-row" href=${linkTo(to.correct(job, about))}>
          <span class="list-main"
            >${about.startsWith('test') ? html`<span class="list-note">${say('shapes-test', { number: Number(about.slice(5)) })}</span>` : nothing}
            <span>${sentence(words)}</span></span
          >
          <span class="list-end">${correctMark()}</span>
        </a>
      </li>`,
    )}
  </ul>`;
}
