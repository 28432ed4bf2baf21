// @ts-check
/**
 * Pictures that another app shared with this one. The service worker has put them aside (sw.js), as they came and with no
 * network; here they lie until a person has said what they show, or that they are not kept.
 */

import { ownName } from '../place.js';

/** The same in sw.js. */
const SHARED = ownName('swaptrail-shared');
const NAME = 'X-Name';

/**
 * @typedef {object} SharedFile
 * @property {string} key
 * @property {string} name   as the other app calls it; may be empty
 * @property {Blob} file     whatever came: nobody has looked at it yet
 */

/**
 * What waits, in the order in which it came.
 * @returns {Promise<SharedFile[]>}
 */
export async function sharedFiles() {
  if (!(await isAnyShared())) return [];
  const cache = await caches.open(SHARED);
  const found = [];
  for (const { url } of await cache.keys()) {
    const response = await cache.match(url);
    if (!response) continue;
    const name = decodeURIComponent(response.headers.get(NAME) ?? '');
    found.push({ key: url, name, file: await response.blob() });
  }
  return found;
}

/** How many wait. */
export async function sharedCount() {
  return (await isAnyShared()) ? (await (await caches.open(SHARED)).keys()).length : 0;
}

/**
 * Let go of some: they are on record by now, or are not wanted.
 * @param {string[]} keys
 */
export async function dropShared(keys) {
  const cache = await caches.open(SHARED);
  for (const key of keys) await cache.delete(key);
}

/** A page without a service worker has no caches to look into. */
async function isAnyShared() {
  return 'caches' in globalThis && (await caches.has(SHARED));
}
