// @ts-check
/**
 * The list of jobs, open ones first, with its search, and what this phone as a whole has to say.
 */

import { html, nothing } from 'lit-html';

import { sharedCount } from '../../phone/shared-pictures.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { PAGE, loadList, readyToSearch } from './job-data.js';
import { jobRows, unitRows, vehicleRows } from './job-rows.js';
import { ask, jobSearch } from './job-search.js';
import { installCard } from '../phone/install-offer.js';
import { helpRow } from '../frame/help-link.js';
import { keepingNotice } from '../phone/keeping.js';
import { checkRow } from '../frame/file-link.js';
import { placeKept } from '../frame/place-kept.js';
import { linkTo, to } from '../frame/router.js';
import { standingNotices } from '../phone/standing.js';

/** @typedef {import('../../core/views.js').JobListView} JobListView */

export const jobsPage = {
  /** @param {import('../frame/context.js').Services} services */
  load: async (services) => ({
    list: await loadList(services, placeKept()),
    storage: await services.device.storage(),
    shared: await sharedCount(),
  }),

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    /** @type {{list: JobListView, storage: any}} */
    const { list, storage } = ctx.data;
    const count = list.counts.open + list.counts.waiting + list.counts.closed;
    const { text, stands } = placeKept();
    const asked = Boolean(text || stands);
    if (count) readyToSearch(ctx.services);
    return {
      title: 'Swaptrail',
      body: html`
        ${asked
          ? nothing
          : html`${standingNotices(ctx)} ${sharedNotice(ctx.data.shared)} ${keepingNotice(ctx, storage)} ${installCard(ctx, count, 'strong')}`}
        ${count || asked ? nothing : empty(ctx)}
        ${jobSearch(ctx, list.counts)}
        ${moreToCome(ctx)}
        ${list.searched ? found(ctx, list) : groups(ctx, list)}
        ${more(ctx, list)}
        ${asked ? nothing : installCard(ctx, count, 'offer')}
        <ul class="list">${count ? [checkRow(), helpRow()] : [helpRow(), checkRow()]}</ul>
      `,
      ...buttons(ctx),
    };
  },
};

/** What has not come is in no count of this list. @param {import('../frame/context.js').Context} ctx */
function moreToCome({ services: { sync } }) {
  if (!sync.status.value.moreToCome) return nothing;
  return html`<p class="notice more-to-come" role="status">${icon('clock')} ${say('job-list-more-to-come')}</p>`;
}

/**
 * What a search has found, all in one.
 * @param {import('../frame/context.js').Context} ctx
 * @param {JobListView} list
 */
function found(ctx, { jobs, units, vehicles, near, more: left, counts }) {
  const everywhere = counts.open + counts.waiting + counts.closed;
  return html`<h1 class="job-count" role="status">${say('job-list-found', { count: jobs.length + left })}</h1>
    ${near ? html`<p role="status">${say('job-list-near')}</p>` : nothing}
    ${jobs.length ? jobRows(jobs, ctx.services.device.actor) : nothing}
    ${jobs.length || !everywhere ? nothing : wide(say('job-list-found-elsewhere', { count: everywhere }), () => ask(ctx, { stands: '' }))}
    ${everywhere || units.length || vehicles.length ? nothing : html`<p>${say('job-list-found-none')}</p>`}
    ${units.length ? html`<h2 class="list-head">${say('job-list-sensors')}</h2>${unitRows(units)}` : nothing}
    ${vehicles.length ? html`<h2 class="list-head">${say('job-list-vehicles')}</h2>${vehicleRows(vehicles)}` : nothing}`;
}

/**
 * The jobs under how they stand; the first heading is that of the screen.
 * @param {import('../frame/context.js').Context} ctx
 * @param {JobListView} list
 */
function groups(ctx, { jobs }) {
  const { stands } = placeKept();
  const shown = ['open', 'waiting', 'closed'].filter((each) => each === stands || jobs.some((job) => job.stands === each));
  return shown.map((each, place) => {
    const words = say('job-list-group', { which: each });
    const rows = jobs.filter((job) => job.stands === each);
    return html`${place ? html`<h2 class="list-head">${words}</h2>` : html`<h1>${words}</h1>`}
    ${rows.length ? jobRows(rows, ctx.services.device.actor) : html`<p>${say('job-list-none')}</p>`}`;
  });
}

/**
 * What is not shown yet, and what was closed long ago.
 * @param {import('../frame/context.js').Context} ctx
 * @param {JobListView} list
 */
function more(ctx, { jobs, more: left, older }) {
  if (left) return wide(say('job-list-more', { count: left }), () => ask(ctx, { most: jobs.length + PAGE }));
  return older ? wide(say('job-list-older', { count: older }), () => ask(ctx, { stands: 'closed' })) : nothing;
}

/** @param {string} words @param {() => unknown} run */
function wide(words, run) {
  return html`<button class="small-button wide-button" type="button" @click=${run}>${words}</button>`;
}

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
