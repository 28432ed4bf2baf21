// @ts-check
/**
 * Takes in the file of another phone: its entries join this phone's log at once, also without a network, and go
 * to the server with this phone's own where there is one.
 *
 * They stay what they are, entries of that phone under its identity and hashes; the other phone may still
 * send them itself, and twice is harmless.
 */

import { LOG_LOCK, withLock } from '../phone/locks.js';
import { keepProofs } from './proofs.js';
import { makingRoom } from './space.js';
import { UnsentFileProblem } from './unsent-file-problem.js';
import { partsOf } from './unsent-file-reader.js';
import { say } from '../words/words.js';

/**
 * @typedef {object} TakenIn
 * @property {number} entries   new on this phone
 * @property {number} photos    new on this phone
 * @property {number} known     entries that were here already
 * @property {{entries: number, photos: number} | null} cutOff  what is missing of a file that was cut off
 */

/**
 * @typedef {object} Hooks
 * @property {(entries: import('./unsent-file-reader.js').Entry[]) => Promise<void>} [before]
 *     sees what is in the file before anything of it is kept; throws UnsentFileProblem to refuse it
 * @property {(done: number, all: number) => void} [onPhoto]  hears how many photos were gone through
 */

/** So many entries are asked about at once. */
const AT_ONCE = 500;

/**
 * Refuse what no phone could show, as a server does; a phone whose core does not run takes it as it is.
 * @param {import('../core/client.js').Core} core
 * @param {import('./unsent-file-reader.js').Entry[]} entries
 */
export async function holdInBounds(core, entries) {
  for (let from = 0; core.available && from < entries.length; from += AT_ONCE) {
    const envelopes = entries.slice(from, from + AT_ONCE).map(({ event }) => event);
    const outside = await core.call('outside', { envelopes });
    if (outside) throw new UnsentFileProblem(say('troubles-outside'), say('troubles-outside-do', { ...outside, seq: String(outside.seq) }));
  }
}

/**
 * Take a file in, all of it or nothing; throws UnsentFileProblem where it may not be.
 * @param {import('./store.js').Store} store
 * @param {Blob} file
 * @param {Hooks} [hooks]
 * @returns {Promise<TakenIn>}
 */
export async function takeIn(store, file, { before = async () => undefined, onPhoto = () => undefined } = {}) {
  /** @type {import('./unsent-file-reader.js').Entry[]} */
  const entries = [];
  /** @type {Set<string>} */
  const named = new Set();
  let cutOff = null;
  /** @type {import('./proofs.js').Proofs} */
  let proofs = {};
  // The first time through only looks: what turns out altered at its end must leave nothing behind.
  for await (const part of partsOf(file)) {
    if (part.kind === 'start') ({ proofs } = part);
    else if (part.kind === 'entry') entries.push(part.entry);
    else if (part.kind === 'photo') named.add(part.sha256);
    else if (!part.whole) cutOff = { entries: part.entries - entries.length, photos: part.photos - named.size };
  }
  await before(entries);
  const photos = await takePhotos(store, file, (done) => onPhoto(done, named.size));
  try {
    const fresh = await withLock(LOG_LOCK, async () => {
      const missing = await unknown(store, entries);
      await makingRoom(store, () => takeEntries(store, missing, proofs));
      return missing;
    });
    return { entries: fresh.length, photos: photos.length, known: entries.length - fresh.length, cutOff };
  } catch (error) {
    await dropPhotos(store, photos);
    throw error;
  }
}

/**
 * The entries that this phone does not have; refuses where it has others under the same identity, or where
 * its own log would get a hole.
 * @param {import('./store.js').Store} store
 * @param {import('./unsent-file-reader.js').Entry[]} entries
 */
function unknown(store, entries) {
  return store.withDb(async (db) => {
    const tx = db.transaction(['meta', 'events']);
    const head = await tx.objectStore('meta').get('head');
    let { seq, hash: last } = head;
    const fresh = [];
    for (const entry of entries) {
      const { event, hash } = entry;
      const kept = await tx.objectStore('events').get([event.device, event.seq]);
      if (kept && kept.hash !== hash) throw elsewhere(event);
      if (kept) continue;
      if (event.device === head.device) {
        if (event.seq !== seq + 1 || event.prev !== last) throw elsewhere(event);
        ({ seq } = event);
        last = hash;
      }
      fresh.push(entry);
    }
    return fresh;
  });
}

/**
 * @param {import('./store.js').Store} store
 * @param {import('./unsent-file-reader.js').Entry[]} entries
 * @param {import('./proofs.js').Proofs} proofs
 */
function takeEntries(store, entries, proofs) {
  return store.write(['meta', 'events'], async (tx) => {
    const meta = tx.objectStore('meta');
    await keepProofs(meta, proofs);
    let head = await meta.get('head');
    for (const { event, hash } of entries) {
      const { device, seq, job } = event;
      /** @type {import('./store.js').StoredEvent} */
      const entry = { device, seq, hash, event, unsent: head.nextUnsent };
      if (job !== null) entry.job = job;
      head = { ...head, nextUnsent: head.nextUnsent + 1 };
      // This phone's own, from before it was put back to an older state.
      if (device === head.device) {
        entry.own = 1;
        head = { ...head, seq, hash };
      }
      await tx.objectStore('events').add(entry);
    }
    await meta.put(head, 'head');
  });
}

/**
 * Keep the photos of a file that are not here, one at a time.
 * @param {import('./store.js').Store} store
 * @param {Blob} file
 * @param {(done: number) => void} onPhoto
 * @returns {Promise<string[]>} those that are new
 */
async function takePhotos(store, file, onPhoto) {
  /** @type {string[]} */
  const taken = [];
  try {
    let done = 0;
    for await (const part of partsOf(file)) {
      if (part.kind !== 'photo') continue;
      if (!(await store.photo(part.sha256))) {
        await makingRoom(store, () => keepPhoto(store, part));
        taken.push(part.sha256);
      }
      done += 1;
      onPhoto(done);
    }
  } catch (error) {
    await dropPhotos(store, taken);
    throw error;
  }
  return taken;
}

/**
 * @param {import('./store.js').Store} store
 * @param {{sha256: string, bytes: ArrayBuffer}} photo
 */
function keepPhoto(store, { sha256, bytes }) {
  /** @type {import('./store.js').StoredPhoto} */
  const photo = { sha256, mime: 'image/jpeg', size: bytes.byteLength, at: Date.now(), unsent: 1 };
  return store.write(['photos', 'photo_bytes'], async (tx) => {
    await tx.objectStore('photo_bytes').put(bytes, sha256);
    await tx.objectStore('photos').put(photo);
  });
}

/**
 * @param {import('./store.js').Store} store
 * @param {string[]} photos
 */
function dropPhotos(store, photos) {
  return store.write(['photos', 'photo_bytes'], async (tx) => {
    for (const sha256 of photos) {
      await tx.objectStore('photos').delete(sha256);
      await tx.objectStore('photo_bytes').delete(sha256);
    }
  });
}

/** @param {import('./store.js').Envelope} event */
function elsewhere({ device, seq }) {
  return new UnsentFileProblem(say('troubles-elsewhere'), say('troubles-elsewhere-do', { seq: String(seq), device }));
}
