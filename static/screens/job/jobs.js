// @ts-check
/**
 * The list of jobs, open ones first, and what this phone as a whole has to say.
 */

import { html, nothing } from 'lit-html';

import { sharedCount } from '../../phone/shared-pictures.js';
import { smallBoard } from '../../shapes/board.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { loadJobs } from './job-data.js';
import { installCard } from '../phone/install-offer.js';
import { helpRow } from '../frame/help-link.js';
import { keepingNotice } from '../phone/keeping.js';
import { checkRow } from '../frame/file-link.js';
import { linkTo, to } from '../frame/router.js';
import { standingNotices } from '../phone/standing.js';
import { day } from '../frame/when.js';

/** @typedef {import('../../core/views.js').JobLine} JobLine */

export const jobsPage = {
  /** @param {import('../frame/context.js').Services} services */
  load: async (services) => ({
    jobs: await loadJobs(services),
    storage: await services.device.storage(),
    shared: await sharedCount(),
  }),

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    /** @type {{jobs: JobLine[], storage: any}} */
    const { jobs, storage } = ctx.data;
    const open = jobs.filter((job) => !job.closed);
    const closed = jobs.filter((job) => job.closed);
    return {
      title: 'Swaptrail',
      body: html`
        ${standingNotices(ctx)} ${sharedNotice(ctx.data.shared)} ${keepingNotice(ctx, storage)} ${installCard(ctx, jobs.length, 'strong')}
        ${jobs.length ? nothing : empty(ctx)}
        ${open.length ? html`<h1>${say('job-list-open')}</h1>${jobList(open)}` : nothing}
        ${installCard(ctx, jobs.length, 'offer')}
        ${closed.length ? html`${closedHead(open)}${jobList(closed)}` : nothing}
        <ul class="list">${checkRow()} ${helpRow()}</ul>
      `,
      ...buttons(ctx),
    };
  },
};

/**
 * A phone without a server that holds nothing yet has one thing to do.
 * @param {import('../frame/context.js').Context} ctx
 * @returns {{main: import('../frame/frame.js').Button, second?: import('../frame/frame.js').Button}}
 */
function buttons(ctx) {
  const { saved } = ctx.services;
  const openJob = () => ctx.go(to.newJob());
  if (saved && holdsNothing(saved)) return { main: { words: say('job-list-start'), run: openJob } };
  return {
    main: { words: say('job-list-open-one'), run: openJob },
    second: { words: say('job-list-scan'), run: () => ctx.go(to.find()) },
  };
}

/** Somebody left before saying what they show. @param {number} count */
function sharedNotice(count) {
  if (!count) return nothing;
  return html`<a class="notice notice-row" href=${linkTo(to.shared())}>
    ${icon('camera')} <span>${say('job-list-shared', { count })}</span>
  </a>`;
}

/** @param {JobLine[]} open */
function closedHead(open) {
  return open.length ? html`<h2 class="list-head">${say('job-list-closed')}</h2>` : html`<h1>${say('job-list-closed-only')}</h1>`;
}

/** @param {import('../frame/context.js').Context} ctx */
function empty({ services: { saved } }) {
  return html`<section class="nothing">
    ${icon('car', { size: 'large' })}
    <h1>${say('job-list-empty')}</h1>
    <p>
      ${say('job-list-empty-lead')}
    </p>
    ${saved && holdsNothing(saved)
      ? html`<a class="link-button" href=${linkTo(to.takeIn())}>${say('job-list-take-in')}</a>`
      : nothing}
  </section>`;
}

/** @param {import('../../alone/saved.js').Saved} saved */
function holdsNothing({ standing }) {
  return standing.value.held.entries === 0;
}

/** @param {JobLine[]} jobs */
function jobList(jobs) {
  return html`<ul class="list job-list">
    ${jobs.map(
      (job) => html`<li>
        <a class="list-row" href=${linkTo(to.job(job.id))}>
          ${job.board ? html`<span class="job-board" aria-hidden="true">${smallBoard(job.board)}</span>` : nothing}
          <span class="list-main">
            <span class="list-title">${job.title}</span>
            ${job.standing_words ? html`<span class="job-standing">${job.standing_words}</span>` : nothing}
            ${job.handed_to ? html`<span class="list-note job-handed">${icon('person')} ${say('ways-handed-list', { to: job.handed_to })}</span>` : nothing}
            ${job.next_words ? html`<span class="list-note job-next">${say('job-list-next', { step: job.next_words })}</span>` : nothing}
            ${job.complaint ? html`<span class="list-note job-complaint">${job.complaint}</span>` : nothing}
            <span class="list-note">${standing(job)}</span>
            ${job.out || job.disputed ? html`<span class="list-note job-loose">${loose(job)}</span>` : nothing}
          </span>
          <span class="list-end">${icon('forward')}</span>
        </a>
      </li>`,
    )}
  </ul>`;
}

/** @param {JobLine} job */
function standing({ opened_at: at, tests, closed }) {
  return say('job-list-standing', { opened: day(at), count: tests, closed: closed ? 'yes' : 'no' });
}

/** @param {JobLine} job */
function loose({ out, disputed }) {
  const said = [out ? say('job-list-out', { count: out }) : '', disputed ? say('job-list-disputed', { count: disputed }) : ''];
  return html`${icon('out')} ${said.filter(Boolean).join(', ')}`;
}
