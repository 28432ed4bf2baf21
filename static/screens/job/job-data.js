// @ts-check
/**
 * The view of a job, for every screen that belongs to one, and the list of all.
 */

import { jobsInLog } from './unchecked.js';

/**
 * What `loadJob` asks of the core, so that the answer can come along with that to a tap.
 * @param {Record<string, string>} params
 */
export function jobQuestion({ job }) {
  return { op: /** @type {const} */ ('job'), args: { job } };
}

/**
 * @param {import('../frame/context.js').Services} services
 * @param {Record<string, string>} params
 */
export function loadJob({ core }, params) {
  const { op, args } = jobQuestion(params);
  return core.call(op, args);
}

/**
 * The readings of a sensor's numbers that a further one knows of.
 * @param {import('../../core/views.js').JobView} view
 * @param {string} unit
 */
export function readingsOf(view, unit) {
  return view.units.find(({ id }) => id === unit)?.noted ?? [];
}

/**
 * What the page of a job asks first: what the tests say, at once; the moves where they are known already.
 * @param {Record<string, string>} params
 */
export function quickQuestion({ job }) {
  return { op: /** @type {const} */ ('job'), args: { job, plan: failed.has(job) } };
}

/**
 * @param {import('../frame/context.js').Services} services
 * @param {Record<string, string>} params
 */
export function loadQuick({ core }, params) {
  const { op, args } = quickQuestion(params);
  return core.call(op, args);
}

/**
 * Have the moves of a view worked out that came without them; the screen is then loaded again.
 * @param {import('../frame/context.js').Context} ctx
 */
export function workOut({ services, data: view, reload }) {
  if (begun.has(view)) return;
  begun.add(view);
  services.core
    .call('plan', { job: view.id })
    // What went wrong is told where the whole view is asked for.
    .catch(() => failed.add(view.id))
    .then(reload);
}

/** @type {WeakSet<import('../../core/views.js').JobView>} */
const begun = new WeakSet();
/** @type {Set<string>} */
const failed = new Set();

/** Rows of a list that come at once. */
export const PAGE = 30;
const LONG_AGO_MS = 30 * 86_400_000;

/**
 * All jobs, open ones first; without the core as far as the log tells.
 * @param {import('../frame/context.js').Services} services
 * @returns {Promise<import('../../core/views.js').JobLine[]>}
 */
async function loadJobs(services) {
  return services.core.available ? services.core.call('jobs') : jobsInLog(services);
}

/**
 * The part of the list of jobs that is asked for; without the core all of them, as far as the log tells.
 * @param {import('../frame/context.js').Services} services
 * @param {import('../frame/place-kept.js').Place} asked
 * @returns {Promise<import('../../core/views.js').JobListView>}
 */
export async function loadList(services, { text = '', stands = '', most = PAGE }) {
  if (services.core.available) return services.core.call('job_list', { text, stands, most, since: Date.now() - LONG_AGO_MS });
  const jobs = (await jobsInLog(services)).map((job) => ({
    ...job,
    stands: /** @type {'open' | 'closed'} */ (job.closed ? 'closed' : 'open'),
    found_by: [],
  }));
  const closed = jobs.filter((job) => job.closed).length;
  return { jobs, units: [], vehicles: [], near: false, searched: false, counts: { open: jobs.length - closed, waiting: 0, closed }, more: 0, older: 0 };
}

/**
 * Have the words made that a search needs, a few at a time while nothing else is asked, so that its first letter
 * is answered at once.
 * @param {import('../frame/context.js').Services} services
 */
export async function readyToSearch({ core, log }) {
  const now = log.changes.value;
  if (!core.available || readyFor === now) return;
  readyFor = now;
  try {
    while (!(await core.call('make_findable'))) await new Promise((resolve) => setTimeout(resolve, 20));
  } catch {
    // A search makes them itself.
  }
}

/** @type {unknown} */
let readyFor;

/**
 * The titles of all jobs by their id.
 * @param {import('../frame/context.js').Services} services
 * @returns {Promise<Map<string, string>>}
 */
export async function jobTitles(services) {
  return new Map((await loadJobs(services)).map(({ id, title }) => [id, title]));
}
