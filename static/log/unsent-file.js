// @ts-check
/**
 * What this phone recorded as one file that a person can keep or pass on, photos included. With a server it
 * holds what was not sent, the last resort where a phone gets no network any more; without one
 * (alone/history-file.js) it holds everything. `unsent-file-reader.js` reads it again.
 *
 * A text file, because that is what phones share with the fewest questions: one canonical JSON value a line,
 *
 *   {"app":"swaptrail","device":…,"entries":N,"made_at":…,"photos":M,"v":2}
 *   {"event":{…},"hash":"…"}            N times; the entries of each device in order, without a gap
 *   {"bytes":"<base64>","sha256":"…"}   M times
 *   {"end":"<SHA-256 of the first line>"}
 *
 * so that every byte is under a hash or has only one right value, and half a file is still good as far as it
 * goes. The first line also holds what proves whose the entries are (proofs.js): "certificates", "signed_heads", and
 * the "key" of this phone. Version 1, of the first release, is one line without photos: {"app", "device", "events", "v"}.
 * `server/log/unsent_file.py` reads the same.
 */

import { base64 } from './base64.js';
import { canonicalText, sha256Hex } from './canonical.js';
import { proofsOf } from './proofs.js';

export const APP = 'swaptrail';
export const VERSION = 2;

/**
 * Make the file of what was not sent.
 * @param {import('./store.js').Store} store
 * @param {string} device  who makes it
 * @returns {Promise<File>}
 */
export async function unsentFile(store, device) {
  const [entries, photos] = await store.withDb((db) => {
    const tx = db.transaction(['events', 'photos']);
    return Promise.all([
      tx.objectStore('events').index('unsent').getAll(),
      tx.objectStore('photos').index('unsent').getAllKeys(),
    ]);
  });
  const name = `swaptrail-unsent-${device}.txt`;
  return (await fileOf(store, { device, entries, photos: /** @type {string[]} */ (photos), name })).file;
}

/**
 * Make a file of entries and photos.
 * @param {import('./store.js').Store} store
 * @param {object} content
 * @param {string} content.device   who makes it
 * @param {import('./store.js').StoredEvent[]} content.entries  those of each device in order, without a gap
 * @param {string[]} content.photos  their hashes
 * @param {string} content.name     of the file
 * @param {(done: number) => void} [content.onPhoto]  hears how many photos were gone through
 * @returns {Promise<{file: File, photos: number, damaged: number}>}  photos in it, and those left out because their
 *     bytes have changed on this phone: with one of them in it, no reader would take the file
 */
export async function fileOf(store, { device, entries, photos, name, onPhoto = () => undefined }) {
  // Each photo becomes a Blob at once: a browser may keep those on disk, and all of them can be a lot.
  /** @type {Blob[]} */
  const pictures = [];
  let damaged = 0;
  for (const [index, sha256] of photos.entries()) {
    const bytes = await store.photoBytes(sha256);
    if (bytes && (await sha256Hex(bytes)) !== sha256) damaged += 1;
    else if (bytes) pictures.push(new Blob([canonicalText({ bytes: base64(bytes), sha256 }), '\n']));
    onPhoto(index + 1);
  }
  const proofs = await proofsOf(store, device, entries);
  const made = { app: APP, device, entries: entries.length, made_at: Date.now(), photos: pictures.length, v: VERSION, ...proofs };
  const first = canonicalText(made);
  const lines = entries.map(({ event, hash }) => `${canonicalText({ event, hash })}\n`);
  const end = canonicalText({ end: await sha256Hex(first) });
  const parts = [`${first}\n`, ...lines, ...pictures, `${end}\n`];
  return { file: new File(parts, name, { type: 'text/plain' }), photos: pictures.length, damaged };
}
