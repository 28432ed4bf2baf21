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
import { render, say } from '../../words/words.js';

/** @param {import('../frame/context.js').Context} ctx */
export function phoneNotices(ctx) {
  const { status } = ctx.services.sync;
  return html`${trustNotice(ctx)}${unpaired(status.value)}${unsent(status.value)}${newVersion(ctx)}${clockNotice(ctx)}`;
}

/** @param {import('../../sync/status.js').SyncStatus} status */
function unpaired({ state }) {
  if (state !== 'not paired') return nothing;
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('caution')} ${say('phone-unpaired')}</p>
    <p>${say('phone-unpaired-note')}</p>
    <div class="card-actions"><a class="small-button" href=${linkTo(to.pair())}>${say('phone-pair')}</a></div>
  </section>`;
}

/** @param {import('../../sync/status.js').SyncStatus} status */
function unsent(status) {
  const { state, oldestUnsentAt, sentence } = status;
  if (!unsentCount(status) || state === 'not paired' || state === 'sending') return nothing;
  return html`<a class="notice notice-row" href=${linkTo(to.outbox())}>
    ${icon('send')}
    <span>
      <strong>${say('phone-not-sent', { what: unsentWords(status) })}</strong>${oldestUnsentAt
        ? say('phone-the-oldest', { ago: ago(oldestUnsentAt) })
        : '.'} ${sentence}
    </span>
  </a>`;
}

/**
 * What is not sent, as a person counts it: jobs and pictures, and what belongs to no job.
 * @param {import('../../sync/status.js').SyncStatus} status
 */
export function unsentWords({ unsentJobs, unsentLoose, unsentPhotos }) {
  const said = [];
  if (unsentJobs) said.push(say('phone-jobs', { count: unsentJobs }));
  if (unsentLoose) said.push(say('phone-loose', { count: unsentLoose }));
  if (unsentPhotos) said.push(say('phone-pictures', { count: unsentPhotos }));
  return said.length ? render({ figure: 'and', of: said }) : '';
}

/** @param {import('../../sync/status.js').SyncStatus} status */
export function unsentCount({ unsentJobs, unsentLoose, unsentPhotos }) {
  return unsentJobs + unsentLoose + unsentPhotos;
}

/**
 * @param {number} events
 * @param {number} photos
 */
export function countWords(events, photos) {
  const said = [];
  if (events) said.push(say('phone-entries', { count: events }));
  if (photos) said.push(say('phone-pictures', { count: photos }));
  return said.length ? render({ figure: 'and', of: said }) : '';
}
