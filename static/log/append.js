// @ts-check
/**
 * Appends entries to this phone's chain: in one transaction with their photo and the head of the chain, so that
 * neither a gap nor a double can come of two tabs or of a connection that is lost.
 */

import { eventHash } from './canonical.js';
import { EVENT_FORMAT } from './server-standing.js';

const TRIES = 20;

/**
 * @typedef {import('./log.js').Draft} Draft
 * @typedef {import('./log.js').Photo} Photo
 *
 * @typedef {object} Chained      entries as they continue the chain at `head`
 * @property {number} at
 * @property {import('./device.js').Head} head
 * @property {import('./store.js').StoredEvent[]} entries
 */

/**
 * Make the envelopes that continue the chain at `head`.
 * @param {Draft[]} drafts
 * @param {import('./device.js').Head} head
 * @param {string} actor
 * @param {number} at
 * @param {boolean} unchecked
 */
export async function chain(drafts, head, actor, at, unchecked) {
  const { device } = head;
  let { seq, hash, nextUnsent } = head;
  /** @type {import('./store.js').StoredEvent[]} */
  const entries = [];
  for (const { kind, data, job = null } of drafts) {
    seq += 1;
    const event = { device, seq, prev: hash, v: EVENT_FORMAT, at, actor, job, kind, data };
    hash = await eventHash(event);
    /** @type {import('./store.js').StoredEvent} */
    const entry = { device, seq, hash, event, own: 1, unsent: nextUnsent };
    if (job !== null) entry.job = job;
    if (unchecked) entry.unchecked = 1;
    entries.push(entry);
    nextUnsent += 1;
  }
  return entries;
}

/**
 * Save; when another tab was faster, chain again on what it left.
 * @param {import('./store.js').Store} store
 * @param {Chained} chained
 * @param {Draft[]} drafts  what is chained
 * @param {{photo?: Photo, unchecked: boolean, actor: string}} options
 * @returns {Promise<import('./store.js').StoredEvent[]>}  as they are saved
 */
export async function appended(store, { at, head, entries }, drafts, { photo, unchecked, actor }) {
  for (let tried = 0; tried < TRIES; tried += 1) {
    if (await alreadySaved(store, entries)) return entries;
    if (unchecked) for (const entry of entries) entry.unchecked = 1;
    if (await commit(store, entries, photo, head)) return entries;
    head = await store.getMeta('head');
    entries = await chain(drafts, head, actor, at, unchecked);
  }
  throw new Error(`the head of the chain moved ${TRIES} times in a row`);
}

/**
 * After a connection lost at the commit, the first try may have been saved all the same.
 * @param {import('./store.js').Store} store
 * @param {import('./store.js').StoredEvent[]} entries
 */
async function alreadySaved(store, entries) {
  const { device, seq, hash } = entries[0];
  const saved = await store.withDb((db) => db.get('events', [device, seq]));
  return saved?.hash === hash;
}

/**
 * @param {import('./store.js').Store} store
 * @param {import('./store.js').StoredEvent[]} entries
 * @param {Photo | undefined} photo
 * @param {import('./device.js').Head} head  what `entries` continue
 * @returns {Promise<boolean>} false when the head has moved since
 */
function commit(store, entries, photo, head) {
  const last = entries[entries.length - 1];
  return store.write(['meta', 'events', 'photos', 'photo_bytes'], async (tx) => {
    const meta = tx.objectStore('meta');
    const current = await meta.get('head');
    if (current.device !== head.device || current.seq !== head.seq) return false;
    const writes = entries.map((entry) => tx.objectStore('events').add(entry));
    if (photo) {
      writes.push(tx.objectStore('photos').put(storedPhoto(photo, last.event.at)));
      writes.push(tx.objectStore('photo_bytes').put(photo.bytes, photo.sha256));
    }
    const nextUnsent = head.nextUnsent + entries.length;
    writes.push(meta.put({ device: head.device, seq: last.seq, hash: last.hash, nextUnsent }, 'head'));
    await Promise.all(writes);
    return true;
  });
}

/**
 * @param {Photo} photo
 * @param {number} at
 * @returns {import('./store.js').StoredPhoto}
 */
function storedPhoto({ bytes, mime, sha256 }, at) {
  return { sha256, mime, size: bytes.byteLength, at, unsent: 1 };
}
