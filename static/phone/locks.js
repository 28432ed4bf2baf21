// @ts-check
/**
 * One at a time across all tabs of this app, by Web Locks; where a browser has none, within this tab.
 */

import { ownName } from '../place.js';

export const LOG_LOCK = ownName('swaptrail-log');
export const SYNC_LOCK = ownName('swaptrail-sync');

/** @type {Map<string, Promise<unknown>>} */
const queues = new Map();

/**
 * Run `work` when nobody else holds `name`.
 * @template T
 * @param {string} name
 * @param {() => Promise<T>} work
 * @returns {Promise<T>}
 */
export function withLock(name, work) {
  if (navigator.locks) return /** @type {any} */ (navigator.locks.request(name, work));
  const done = (queues.get(name) ?? Promise.resolve()).then(work);
  queues.set(
    name,
    done.catch(() => undefined),
  );
  return done;
}

/**
 * Run `work` if nobody holds `name` now; otherwise do nothing and return undefined.
 * @template T
 * @param {string} name
 * @param {() => Promise<T>} work
 * @returns {Promise<T | undefined>}
 */
export function withLockIfFree(name, work) {
  if (!navigator.locks) return withLock(name, work);
  const done = navigator.locks.request(name, { ifAvailable: true }, (lock) =>
    lock ? work() : Promise.resolve(undefined),
  );
  return /** @type {any} */ (done);
}
