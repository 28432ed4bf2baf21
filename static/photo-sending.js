// @ts-check
/**
 * Sends photos to the server, one at a time, and notes which it has confirmed by hash.
 */

import { ApiError } from './api.js';
import { sha256Hex } from './canonical.js';

const TOO_MANY_TRIES = 429;

/**
 * Send the photos that the server asks for or has not confirmed yet; throws ApiError where the line fails.
 * @param {import('./store.js').Store} store
 * @param {import('./api.js').Api} api
 * @param {string[]} wanted  what the server has said that it lacks
 * @param {() => Promise<unknown>} onSent  called after each one
 */
export async function sendPhotos(store, api, wanted, onSent) {
  const unsent = await store.withDb((db) => db.getAllKeysFromIndex('photos', 'unsent'));
  for (const sha256 of new Set([...wanted, ...unsent])) {
    const photo = await store.photo(sha256);
    const bytes = await store.photoBytes(sha256);
    if (!photo || !bytes || photo.problem) continue;
    await keep(store, await send(api, photo, bytes, wanted.includes(sha256)));
    await onSent();
  }
}

/**
 * @param {import('./api.js').Api} api
 * @param {import('./store.js').PhotoRecord} photo
 * @param {ArrayBuffer} bytes
 * @param {boolean} isWanted  otherwise the server is asked first whether it has it already
 * @returns {Promise<import('./store.js').PhotoRecord>} the photo as it stands now
 */
async function send(api, photo, bytes, isWanted) {
  const { sha256, mime } = photo;
  if ((await sha256Hex(bytes)) !== sha256) {
    return { ...photo, unsent: 1, problem: 'it was damaged on this phone.' };
  }
  try {
    if (isWanted || !(await api.hasPhoto(sha256))) await api.putPhoto(sha256, bytes, mime);
  } catch (error) {
    const final = error instanceof ApiError && error.kind === 'refused' && error.status !== TOO_MANY_TRIES;
    if (!final) throw error;
    return { ...photo, unsent: 1, problem: error.sentence };
  }
  const { unsent, ...confirmed } = photo;
  return confirmed;
}

/**
 * @param {import('./store.js').Store} store
 * @param {import('./store.js').PhotoRecord} photo
 */
function keep(store, photo) {
  return store.write(['photos'], (tx) => tx.objectStore('photos').put(photo));
}
