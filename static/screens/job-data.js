// @ts-check
/**
 * The view of a job, for every screen that belongs to one.
 */

/**
 * @param {import('./app.js').Services} services
 * @param {Record<string, string>} params
 */
export function loadJob({ core }, { job }) {
  return core.call('job', { job });
}
