// @ts-check
/**
 * The event log of this phone: asks the core, chains, saves, and keeps the core's state in step.
 *
 * An event is saved once its transaction has been committed, together with its photo; nothing is changed
 * or deleted afterwards. Two tabs may record at once: a lock orders them, and where a browser has no lock the head
 * of the chain, read and written in the same transaction, does.
 */

import { eventHash } from './canonical.js';
import { CoreError } from '../core/client.js';
import { CoreFeed } from './core-feed.js';
import { LOG_LOCK, withLock } from '../phone/locks.js';
import { observable } from '../phone/observable.js';
import { PLACE_WORDS } from '../phone/place-words.js';
import { EVENT_FORMAT } from './server-standing.js';
import { SnapshotMaker } from './snapshot-maker.js';
import { isQuotaError, makingRoom } from './space.js';

const TRIES = 20;

/**
 * @typedef {object} Draft
 * @property {string} kind
 * @property {Record<string, any>} data
 * @property {string | null} [job]
 *
 * @typedef {object} Refusal      as the core's `check` gives it
 * @property {string} rule
 * @property {string} title
 * @property {string} sentence
 * @property {string} do
 * @property {boolean} override
 * @property {number} draft
 *
 * @typedef {object} Photo        as `preparePhoto` gives it
 * @property {ArrayBuffer} bytes
 * @property {string} mime
 * @property {string} sha256
 * @property {number} width
 * @property {number} height
 *
 * @typedef {object} Recorded
 * @property {import('./store.js').EventRecord[]} events
 * @property {any[]} conflicts
 * @property {boolean} unchecked  saved although the core could not be asked
 *
 * @typedef {object} Chained      entries as they continue the chain at `head`
 * @property {number} at
 * @property {import('./device.js').Head} head
 * @property {import('./store.js').EventRecord[]} records
 */

/** Something could not be saved; `entered` is what the person gave, kept for another try. */
export class SaveError extends Error {
  /**
   * @param {'full' | 'storage'} reason
   * @param {{drafts: Draft[], photo?: Photo}} entered
   */
  constructor(reason, entered) {
    super(SAVE_PROBLEMS[reason].sentence);
    this.name = 'SaveError';
    this.reason = reason;
    this.title = SAVE_PROBLEMS[reason].title;
    this.sentence = SAVE_PROBLEMS[reason].sentence;
    this.entered = entered;
  }
}

const SAVE_PROBLEMS = {
  full: {
    title: 'Not saved: this phone is full',
    sentence: `What you entered is still here. ${PLACE_WORDS.freeSpace}, then save again.`,
  },
  storage: {
    title: 'Not saved: this phone could not write',
    sentence: 'What you entered is still here. Save again; if it fails again, close the app and open it.',
  },
};

/** The log. Open it with `openLog`. */
export class EventLog {
  /** @param {{store: import('./store.js').Store, core: import('../core/client.js').Core, device: import('./device.js').Device}} parts */
  constructor({ store, core, device }) {
    /** Counts up whenever the core's state may have changed; draw again then. */
    this.changes = observable(0);
    /** What could not be saved, until `retry` or `giveUp`. */
    this.unsaved = observable(/** @type {SaveError | null} */ (null));
    this.#store = store;
    this.#core = core;
    this.#device = device;
    this.#channel = new BroadcastChannel(LOG_LOCK);
    this.#channel.onmessage = () => this.#hearOtherTab();
    this.#feed = new CoreFeed(store, core);
    /** Makes the next start quick. */
    this.snapshotMaker = new SnapshotMaker(core, this.#feed);
  }

  #store;
  #core;
  #device;
  #feed;
  #channel;
  #catchingUp = false;

  /**
   * Record facts that belong together: all of them are saved, with the photo, or none.
   * @param {Draft[]} drafts
   * @param {{photo?: Photo, following?: import('../core/client.js').Question | null}} [options]
   *     following: what the screen will ask of the core then, to be answered in the same trip
   * @returns {Promise<{refusal: Refusal} | Recorded>}  throws SaveError when it could not be saved
   */
  async record(drafts, { photo, following = null } = {}) {
    const result = await withLock(LOG_LOCK, async () => {
      await this.#feed.bringUpToDate();
      return this.#record(drafts, photo, following);
    });
    if ('events' in result) this.#tell();
    return result;
  }

  /** Try again to record what could not be saved. */
  async retry() {
    const unsaved = this.unsaved.value;
    if (!unsaved) return null;
    const { drafts, photo } = unsaved.entered;
    const result = await this.record(drafts, { photo });
    this.unsaved.set(null);
    return result;
  }

  /** Let go of what could not be saved; only on a person's word. */
  giveUp() {
    this.unsaved.set(null);
  }

  /**
   * Bring the core in step with the store, after a sync or another tab changed it.
   */
  async catchUp() {
    await withLock(LOG_LOCK, () => this.#feed.bringUpToDate());
    this.#tell();
  }

  /**
   * All events in order: by the server's number, then this phone's unsent ones.
   * @returns {Promise<import('./store.js').EventRecord[]>}
   */
  ordered() {
    return this.#feed.ordered();
  }

  /**
   * Chain, ask the core and save, in this order: only what is checked is saved, and one question does for all.
   * @param {Draft[]} drafts
   * @param {Photo | undefined} photo
   * @param {import('../core/client.js').Question | null} following
   * @returns {Promise<{refusal: Refusal} | Recorded>}
   */
  async #record(drafts, photo, following) {
    const at = Date.now();
    const head = await this.#store.getMeta('head');
    const records = await chain(drafts, head, this.#device.actor, at, false);
    const { refusal, conflicts, unchecked } = await this.#check(drafts, records, following);
    if (refusal) return { refusal };
    try {
      const events = await this.#save(drafts, photo, unchecked, { at, head, records });
      this.#feed.saved(events);
      // What could not be checked may be folded all the same, once the core runs again.
      const more = unchecked ? await this.#feed.bringUpToDate() : [];
      return { events, conflicts: conflicts.concat(more), unchecked };
    } catch (error) {
      this.#feed.notSaved();
      await this.#feed.bringUpToDate().catch(() => undefined);
      throw error;
    }
  }

  /**
   * Ask the core whether a rule stands against the drafts, and to fold them where none does. A core that hangs must
   * not lose a fact.
   * @param {Draft[]} drafts
   * @param {import('./store.js').EventRecord[]} records
   * @param {import('../core/client.js').Question | null} following
   * @returns {Promise<{refusal: Refusal | null, conflicts: any[], unchecked: boolean}>}
   */
  async #check(drafts, records, following) {
    const { id: device, actor } = this.#device;
    const role = this.#device.role.value;
    const { oldest } = this.#device.server.standing.value;
    const asked = drafts.map(({ kind, data, job = null }) => ({ kind, data, job, actor, device, role, oldest }));
    for (let tried = 0; tried < 2 && this.#core.available; tried += 1) {
      try {
        return { ...(await this.#feed.record(asked, records, following)), unchecked: false };
      } catch (error) {
        if (!(error instanceof CoreError && error.broken)) throw error;
      }
    }
    return { refusal: null, conflicts: [], unchecked: true };
  }

  /**
   * @param {Draft[]} drafts
   * @param {Photo | undefined} photo
   * @param {boolean} unchecked
   * @param {Chained} chained
   */
  async #save(drafts, photo, unchecked, chained) {
    try {
      return await makingRoom(this.#store, () => this.#append(drafts, photo, unchecked, chained));
    } catch (error) {
      const unsaved = new SaveError(isQuotaError(error) ? 'full' : 'storage', { drafts, photo });
      unsaved.cause = error;
      this.unsaved.set(unsaved);
      throw unsaved;
    }
  }

  /**
   * Save; when another tab was faster, chain again on what it left.
   * @param {Draft[]} drafts
   * @param {Photo | undefined} photo
   * @param {boolean} unchecked
   * @param {Chained} chained
   */
  async #append(drafts, photo, unchecked, { at, head, records }) {
    for (let tried = 0; tried < TRIES; tried += 1) {
      if (await this.#alreadySaved(records)) return records;
      if (unchecked) for (const record of records) record.unchecked = 1;
      if (await this.#commit(records, photo, head)) return records;
      head = await this.#store.getMeta('head');
      records = await chain(drafts, head, this.#device.actor, at, unchecked);
    }
    throw new Error(`the head of the chain moved ${TRIES} times in a row`);
  }

  /**
   * After a connection lost at the commit, the first try may have been saved all the same.
   * @param {import('./store.js').EventRecord[]} records
   */
  async #alreadySaved(records) {
    const { device, seq, hash } = records[0];
    const saved = await this.#store.withDb((db) => db.get('events', [device, seq]));
    return saved?.hash === hash;
  }

  /**
   * @param {import('./store.js').EventRecord[]} records
   * @param {Photo | undefined} photo
   * @param {import('./device.js').Head} head  what `records` continue
   * @returns {Promise<boolean>} false when the head has moved since
   */
  #commit(records, photo, head) {
    const last = records[records.length - 1];
    return this.#store.write(['meta', 'events', 'photos', 'photo_bytes'], async (tx) => {
      const meta = tx.objectStore('meta');
      const current = await meta.get('head');
      if (current.device !== head.device || current.seq !== head.seq) return false;
      const writes = records.map((record) => tx.objectStore('events').add(record));
      if (photo) {
        writes.push(tx.objectStore('photos').put(photoRecord(photo, last.event.at)));
        writes.push(tx.objectStore('photo_bytes').put(photo.bytes, photo.sha256));
      }
      const nextUnsent = head.nextUnsent + records.length;
      writes.push(meta.put({ device: head.device, seq: last.seq, hash: last.hash, nextUnsent }, 'head'));
      await Promise.all(writes);
      return true;
    });
  }

  #tell() {
    this.#channel.postMessage('changed');
    this.snapshotMaker.consider();
    this.changes.set(this.changes.value + 1);
  }

  async #hearOtherTab() {
    if (this.#catchingUp) return;
    this.#catchingUp = true;
    try {
      await this.#device.reread();
      await withLock(LOG_LOCK, () => {
        this.#catchingUp = false;
        return this.#feed.bringUpToDate();
      });
      this.changes.set(this.changes.value + 1);
    } finally {
      this.#catchingUp = false;
    }
  }
}

/**
 * Open the log and fold what is stored.
 * @param {{store: import('./store.js').Store, core: import('../core/client.js').Core, device: import('./device.js').Device}} parts
 * @returns {Promise<EventLog>}
 */
export async function openLog(parts) {
  const log = new EventLog(parts);
  await log.catchUp();
  return log;
}

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
  /** @type {import('./store.js').EventRecord[]} */
  const records = [];
  for (const { kind, data, job = null } of drafts) {
    seq += 1;
    const event = { device, seq, prev: hash, v: EVENT_FORMAT, at, actor, job, kind, data };
    hash = await eventHash(event);
    /** @type {import('./store.js').EventRecord} */
    const record = { device, seq, hash, event, own: 1, unsent: nextUnsent };
    if (job !== null) record.job = job;
    if (unchecked) record.unchecked = 1;
    records.push(record);
    nextUnsent += 1;
  }
  return records;
}

/**
 * @param {Photo} photo
 * @param {number} at
 * @returns {import('./store.js').PhotoRecord}
 */
function photoRecord({ bytes, mime, sha256 }, at) {
  return { sha256, mime, size: bytes.byteLength, at, unsent: 1 };
}
