// @ts-check
/**
 * What of a phone without a server is in no file yet, and the last file: on the screen of the file and on that about
 * this phone.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../words/words.js';
import { countWords } from '../phone/phone-notices.js';
import { ago, dayAndTime } from '../frame/when.js';

const HOW = {
  shared: 'alone-file-last-shared',
  downloaded: 'alone-file-last-downloaded',
  'taken in': 'alone-file-last-taken-in',
};

/**
 * What is in a file and what is not; also on the screen about this phone.
 * @param {import('../frame/context.js').Context} ctx
 */
export function fileStanding({ services }) {
  const { entries, photos, since, held, last } = /** @type {import('../../alone/saved.js').Saved} */ (services.saved).standing.value;
  const waits = entries + photos > 0;
  return html`<section class="card card-now">
    <h1>
      ${waits ? say('alone-file-waits', { content: countWords(entries, photos) }) : say(held.entries ? 'alone-file-all' : 'alone-file-none')}
    </h1>
    <p class="lead">
      ${held.entries
        ? heldWords(countWords(held.entries, held.photos), waits ? since : null)
        : say('alone-file-at-once')}
    </p>
    ${last
      ? html`<p class="soft">
          ${say('alone-file-last')} <span class="device-id">${last.name}</span>,
          ${say('alone-file-last-how', { how: say(HOW[last.how]), at: dayAndTime(last.at) })}
        </p>`
      : nothing}
  </section>`;
}

/**
 * @param {string} content
 * @param {number | null} since  when the oldest was recorded that is in no file
 */
function heldWords(content, since) {
  return since === null ? say('alone-file-holds', { content }) : say('alone-file-holds-unsaved', { content, ago: ago(since) });
}
