// @ts-check
/**
 * What the list of jobs says of this phone: not paired, what is unsent, a new version, not yet offline.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { newVersion } from './change-over.js';
import { clockNotice } from './clock-notice.js';
import { linkTo, to } from '../frame/router.js';
import { trustNotice } from './trust-notice.js';
import { ago } from '../frame/when.js';

/** @param {import('../frame/context.js').Context} ctx */
export function phoneNotices(ctx) {
  const { status } = ctx.services.sync;
  return html`${trustNotice(ctx)}${unpaired(status.value)}${unsent(status.value)}${newVersion(ctx)}${clockNotice(ctx)}`;
}

/** @param {import('../../sync/status.js').SyncStatus} status */
function unpaired({ state }) {
  if (state !== 'not paired') return nothing;
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('caution')} This phone is not paired</p>
    <p>You can work, and everything is kept here, but nothing reaches the server.</p>
    <div class="card-actions"><a class="small-button" href=${linkTo(to.pair())}>Pair this phone</a></div>
  </section>`;
}

/** @param {import('../../sync/status.js').SyncStatus} status */
function unsent({ state, unsentEvents, unsentPhotos, oldestUnsentAt, sentence }) {
  const waits = unsentEvents + unsentPhotos;
  if (!waits || state === 'not paired' || state === 'sending') return nothing;
  return html`<a class="notice notice-row" href=${linkTo(to.outbox())}>
    ${icon('send')}
    <span>
      <strong>${countWords(unsentEvents, unsentPhotos)} not sent yet</strong>${oldestUnsentAt
        ? html`, the oldest ${ago(oldestUnsentAt)}`
        : nothing}. ${sentence}
    </span>
  </a>`;
}

/**
 * @param {number} events
 * @param {number} photos
 */
export function countWords(events, photos) {
  const said = [];
  if (events) said.push(events === 1 ? '1 entry' : `${events} entries`);
  if (photos) said.push(photos === 1 ? '1 picture' : `${photos} pictures`);
  return said.join(' and ');
}
