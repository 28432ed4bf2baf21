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
