// @ts-check
/**
 * How the sending stands, in words and as a bar: what waits, how far it has got, when it is tried again.
 */

import { html, nothing, render } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { mounted } from '../frame/mount.js';
import { unsentCount, unsentWords } from './phone-notices.js';
import { ago, size, until } from '../frame/when.js';
import { say } from '../../words/words.js';

/** @param {import('../../sync/status.js').SyncStatus} status */
export function sendingState(status) {
  const { unsentBytes, oldestUnsentAt, lastSyncAt, sentence, state } = status;
  const waits = unsentCount(status);
  return html`<section class="card card-now">
    <div class="sending" role="status">
      <h1>${waits ? say('phone-not-sent', { what: unsentWords(status) }) : say('phone-all-sent')}</h1>
      ${waits
        ? html`<p class="lead">
            ${oldestUnsentAt ? say('phone-saved-here-since', { ago: ago(oldestUnsentAt) }) : say('phone-saved-here')}
            ${unsentBytes ? say('phone-pictures-take', { size: size(unsentBytes) }) : ''}
          </p>`
        : html`<p class="lead">${say('phone-nothing-waits')}</p>`}
      ${sentence ? html`<p class="sending-trouble">${icon('caution')} <span>${sentence}</span></p>` : nothing}
    </div>
    ${state === 'sending' ? progress(status) : nextTry(status)}
    <p class="soft">
      ${lastSyncAt
        ? say('phone-last-exchange', { ago: ago(lastSyncAt) })
        : say('phone-no-exchange')}
    </p>
  </section>`;
}

/** @param {import('../../sync/status.js').SyncStatus} status */
function progress({ toSend, unsentEvents, unsentPhotos }) {
  if (!toSend) return nothing;
  const { events, photos } = toSend;
  const parts = [];
  if (events) parts.push(say('phone-sent-entries', { done: events - unsentEvents, all: events }));
  if (photos) parts.push(say('phone-sent-pictures', { done: photos - unsentPhotos, all: photos }));
  const done = events + photos - unsentEvents - unsentPhotos;
  return html`<div class="progress">
    <p class="progress-words">${say('phone-sent-so-far', { what: parts.join(', ') })}</p>
    <progress max=${events + photos} .value=${done} aria-label=${say('phone-how-much')}></progress>
  </div>`;
}

/** @param {import('../../sync/status.js').SyncStatus} status */
function nextTry({ nextTryAt }) {
  if (nextTryAt === null) return nothing;
  return html`<p class="next-try" ${mounted(`next ${nextTryAt}`, (host) => countDown(host, nextTryAt))}></p>`;
}

/**
 * Draws by itself: a second that passes is no reason to draw the whole screen, or to read it aloud.
 * @param {HTMLElement} host
 * @param {number} at
 */
function countDown(host, at) {
  const draw = () => render(html`${icon('clock')} ${say('phone-again-in', { span: until(at) })}`, host);
  const timer = setInterval(draw, 1000);
  draw();
  return () => clearInterval(timer);
}
