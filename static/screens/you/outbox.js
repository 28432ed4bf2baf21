// @ts-check
/**
 * What this phone still has to send: how much, since when, how far it has got, what stands against it, and
 * the way out by a file where no network comes.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { whatWaits } from '../../sync/unsent.js';
import { jobTitles } from '../job/job-data.js';
import { mounted } from '../frame/mount.js';
import { notTaken } from './not-taken.js';
import { passOn, takeInFile } from './pass-on.js';
import { countWords } from '../phone/phone-notices.js';
import { linkTo, to } from '../frame/router.js';
import { sendingState } from '../phone/sending-state.js';
import { say } from '../../words/words.js';

export const outboxPage = {
  /** @param {import('../frame/context.js').Services} services */
  load: async (services) => {
    const onlyNotTaken = services.sync.status.value.state === 'sending';
    return { waiting: await whatWaits(services.store, { onlyNotTaken }), titles: await jobTitles(services) };
  },

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { sync } = ctx.services;
    const status = sync.status.value;
    return {
      title: say('you-not-sent'),
      back: to.you(),
      body: html`${sendingState(status)} ${notTaken(ctx)} ${lostPhotos(ctx)} ${status.state === 'sending' ? nothing : byJob(ctx)}
        ${passOn(ctx)} ${takeInFile(ctx)} <span hidden ${mounted('follow', () => follow(ctx))}></span>`,
      main: { words: say('you-send-now'), disabled: status.state === 'sending', run: () => sync.now() },
    };
  },
};

/**
 * Load again what waits whenever a run of sending has changed it.
 * @param {import('../frame/context.js').Context} ctx
 */
function follow({ services, reload }) {
  let shown = '';
  return services.sync.status.subscribe(({ state, unsentEvents, unsentPhotos, lostPhotos: { length } }) => {
    const now = state === 'sending' ? state : `${unsentEvents} ${unsentPhotos} ${length} ${state}`;
    if (shown && now !== shown && now !== 'sending') reload();
    shown = now;
  });
}

/** @param {import('../frame/context.js').Context} ctx */
function byJob({ data, services }) {
  const { jobs, all } = data.waiting;
  const { unsentEvents } = services.sync.status.value;
  if (!jobs.length) return nothing;
  const listed = jobs.reduce((/** @type {number} */ sum, /** @type {any} */ { events }) => sum + events, 0);
  return html`<section>
    <h2>${say('you-what-waits')}</h2>
    <ul class="list">
      ${jobs.map(
        (/** @type {import('../../sync/unsent.js').WaitingJob} */ { job, events, photos }) => html`<li>
          ${job
            ? html`<a class="list-row" href=${linkTo(to.job(job))}>
                ${row(data.titles.get(job) ?? say('you-unknown-job'), events, photos)}
                <span class="list-end">${icon('forward')}</span>
              </a>`
            : html`<div class="list-row">${row(say('you-no-job'), events, photos)}</div>`}
        </li>`,
      )}
    </ul>
    ${all ? nothing : html`<p class="soft">${say('you-later-entries', { count: unsentEvents - listed })}</p>`}
  </section>`;
}

/**
 * What the server had and has not any more, until some phone has sent it again.
 * @param {import('../frame/context.js').Context} ctx
 */
function lostPhotos({ data, services }) {
  const lost = services.sync.status.value.lostPhotos;
  if (!lost.length) return nothing;
  const jobs = [...new Set(lost.map(({ job }) => job))].filter(Boolean);
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('camera')} ${say('you-lost')}</p>
    <p>${say('you-lost-do', { count: lost.length })}</p>
    <ul class="list">
      ${jobs.map((job) => html`<li><a class="list-row" href=${linkTo(to.job(job))}>
        <span class="list-main">${data.titles.get(job) ?? say('you-unknown-job')}</span>
        <span class="list-end">${icon('forward')}</span>
      </a></li>`)}
    </ul>
  </section>`;
}

/**
 * @param {string} title
 * @param {number} events
 * @param {number} photos
 */
function row(title, events, photos) {
  return html`<span class="list-main">
    <span class="list-title">${title}</span>
    <span class="list-note">${say('you-saved-here', { what: countWords(events, photos) })}</span>
  </span>`;
}
