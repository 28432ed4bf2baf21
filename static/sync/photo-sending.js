// @ts-check
/**
 * Sends photos to the server, one at a time, and notes which it has confirmed by hash.
 */

import { ApiError } from './request.js';
import { sha256Hex } from '../log/canonical.js';

const TOO_MANY_TRIES = 429;
const INTERNAL_ERROR = 500;
const MOST_FAULTS = 3; // as many in a row are not the photos' doing

/**
 * Send the photos that the server asks for or has not confirmed yet; throws ApiError where the line fails.
 * One that is refused, or that the server stumbles over, holds up none of the others.
 * @param {import('../log/store.js').Store} store
 * @param {import('./api.js').ServerApi} api
 * @param {string[]} wanted  what the server has said that it lacks
 * @param {(sha256: string) => Promise<unknown>} onSent  called after each one
 * @param {() => boolean} isHurried  whether the others have to wait: something else goes first
 */
export async function sendPhotos(store, api, wanted, onSent, isHurried) {
  const unsent = await store.withDb((db) => db.getAllKeysFromIndex('photos', 'unsent'));
  /** @type {ApiError | null} */
  let fault = null;
  let inARow = 0;
  for (const sha256 of new Set([...wanted, ...unsent])) {
    if (isHurried()) break;
    const photo = await store.photo(sha256);
    const bytes = await store.photoBytes(sha256);
    if (!photo || photo.problem || photo.left_out) continue;
    try {
      const problem = await send(api, photo, bytes, wanted.includes(sha256));
      await change(store, sha256, (now) => told(now, problem));
      inARow = 0;
      await onSent(sha256);
    } catch (error) {
      if (!(error instanceof ApiError) || error.status !== INTERNAL_ERROR) throw error;
      fault ??= error;
      inARow += 1;
      if (inARow === MOST_FAULTS) break;
    }
  }
  if (fault) throw fault;
}

/**
 * Let a photo that was not taken be tried again.
 * @param {import('../log/store.js').Store} store
 * @param {string} sha256
 */
export function tryPhotoAgain(store, sha256) {
  return change(store, sha256, ({ problem, ...photo }) => photo);
}

/**
 * Leave a photo out for good, on a person's word; its bytes stay on this phone.
 * @param {import('../log/store.js').Store} store
 * @param {string} sha256
 */
export function leavePhotoOut(store, sha256) {
  return change(store, sha256, ({ unsent, ...photo }) => ({ ...photo, left_out: 1 }));
}

/**
 * @param {import('./api.js').ServerApi} api
 * @param {import('../log/store.js').StoredPhoto} photo
 * @param {ArrayBuffer | undefined} bytes
 * @param {boolean} isWanted  otherwise the server is asked first whether it has it already
 * @returns {Promise<string>} why the server does not have it, "" where it does
 */
async function send(api, photo, bytes, isWanted) {
  const { sha256, mime } = photo;
  if (!bytes) return 'missing';
  if ((await sha256Hex(bytes)) !== sha256) return 'damaged';
  try {
    if (isWanted || !(await api.hasPhoto(sha256))) await api.putPhoto(sha256, bytes, mime);
  } catch (error) {
    const final = error instanceof ApiError && error.kind === 'refused' && error.status !== TOO_MANY_TRIES;
    if (!final) throw error;
    return error.sentence;
  }
  return '';
}

/**
 * A photo after it was sent, or with what stood against that.
 * @param {import('../log/store.js').StoredPhoto} photo
 * @param {string} problem
 * @returns {import('../log/store.js').StoredPhoto}
 */
function told({ unsent, ...photo }, problem) {
  // A person may have left it out while it was on its way.
  return problem && !photo.left_out ? { ...photo, unsent: 1, problem } : photo;
}

/**
 * @param {import('../log/store.js').Store} store
 * @param {string} sha256
 * @param {(photo: import('../log/store.js').StoredPhoto) => import('../log/store.js').StoredPhoto} how
 */
function change(store, sha256, how) {
  return store.write(['photos'], async (tx) => {
    const photos = tx.objectStore('photos');
    const photo = await photos.get(sha256);
    // Room may have been made of one that the server asked for once more.
    if (photo) await photos.put(how(photo));
  });
}
