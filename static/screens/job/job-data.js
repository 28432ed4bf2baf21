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

/**
 * All jobs, open ones first; without the core as far as the log tells.
 * @param {import('../frame/context.js').Services} services
 * @returns {Promise<import('../../core/views.js').JobLine[]>}
 */
export async function loadJobs(services) {
  return services.core.available ? services.core.call('jobs') : jobsInLog(services);
}

/**
 * The titles of all jobs by their id.
 * @param {import('../frame/context.js').Services} services
 * @returns {Promise<Map<string, string>>}
 */
export async function jobTitles(services) {
  return new Map((await loadJobs(services)).map(({ id, title }) => [id, title]));
}
