// @ts-check
/**
 * What to do about a phone that is full: a little space kept aside from the start, and what may go when it
 * is needed. The snapshot goes, which is made again, the small pictures, which are fetched again, and a photo once
 * the server has confirmed it by hash; nothing else ever does.
 */

import { dropSmallPictures } from './small-store.js';
import { dropSnapshots } from './snapshots.js';

const RESERVE_BYTES = 256 * 1024;
const RANDOM_AT_ONCE = 65536; // the most that getRandomValues fills

/**
 * Put a little space aside, unless it is there; `makingRoom` gives it back.
 * @param {import('./store.js').Store} store
 */
export async function keepReserve(store) {
  try {
    // Its key only: reading it would take longer than all else at the start.
    if ((await store.withDb((db) => db.getKey('meta', 'reserve'))) === undefined) {
      // Random, because zeros would be compressed to nothing.
      const reserve = new Uint8Array(RESERVE_BYTES);
      for (let at = 0; at < RESERVE_BYTES; at += RANDOM_AT_ONCE) {
        crypto.getRandomValues(reserve.subarray(at, at + RANDOM_AT_ONCE));
      }
      await store.setMeta('reserve', reserve.buffer);
    }
  } catch (error) {
    if (!isQuotaError(error)) throw error;
  }
}

/**
 * Do `work`; where the phone turns out to be full, make room and do it once more.
 * @template T
 * @param {import('./store.js').Store} store
 * @param {() => Promise<T>} work
 * @returns {Promise<T>}
 */
export async function makingRoom(store, work) {
  try {
    return await work();
  } catch (error) {
    if (!isQuotaError(error)) throw error;
  }
  await dropSnapshots();
  await dropSmallPictures();
  await freeSpace(store);
  return work();
}

/**
 * Drop the reserve and every photo that the server has confirmed by hash.
 * @param {import('./store.js').Store} store
 * @returns {Promise<number>} how many photos were dropped
 */
export function freeSpace(store) {
  return store.write(['meta', 'photos', 'photo_bytes'], async (tx) => {
    await tx.objectStore('meta').delete('reserve');
    const photos = tx.objectStore('photos');
    /** @type {import('./store.js').StoredPhoto[]} */
    const all = await photos.getAll();
    const confirmed = all.filter(({ unsent, left_out: leftOut }) => !unsent && !leftOut);
    for (const { sha256 } of confirmed) {
      await tx.objectStore('photo_bytes').delete(sha256);
      await photos.delete(sha256);
    }
    return confirmed.length;
  });
}

/** Whether an error says that the phone is full. @param {unknown} error */
export function isQuotaError(error) {
  return error instanceof DOMException && error.name === 'QuotaExceededError';
}
