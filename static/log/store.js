// @ts-check
/**
 * Everything this phone keeps, in IndexedDB: settings, events, photos and drafts.
 *
 * A browser may drop the connection at any time (Safari does after a lock), so all access goes through
 * `withDb`, which opens again and tries once more. Only IndexedDB requests are awaited inside a
 * transaction: any other await would commit it early.
 */

import { openDB } from 'idb';

import { observable } from '../phone/observable.js';
import { ownName } from '../place.js';
import { isQuotaError, keepReserve } from './space.js';
import { say } from '../words/words.js';

export const DATABASE = ownName('swaptrail');
const VERSION = 1;

/** Errors that mean 'the connection is gone', after which a fresh one works. */
const CONNECTION_LOST = new Set(['UnknownError', 'InvalidStateError', 'AbortError']);

/**
 * @typedef {object} StoredEvent   one event as kept here
 * @property {string} device
 * @property {number} seq
 * @property {string} hash
 * @property {Envelope} event
 * @property {number} [n]          the server's receipt number; there once the server has it
 * @property {number} [received_at]
 * @property {string} [job]
 * @property {number} [unsent]     place among the events to be sent; gone once the server has it
 * @property {1} [own]             recorded here; others came from the server, or from a file of another phone
 * @property {1} [unchecked]       saved without asking the core
 * @property {{reason: string, code: string}} [refused]  what the server said against it
 *
 * @typedef {object} Envelope
 * @property {string} device
 * @property {number} seq
 * @property {string} prev
 * @property {number} v
 * @property {number} at
 * @property {string} actor
 * @property {string | null} job
 * @property {string} kind
 * @property {Record<string, any>} data
 *
 * @typedef {object} StoredPhoto   what is known of a photo; its bytes lie apart in `photo_bytes`
 * @property {string} sha256
 * @property {string} mime
 * @property {number} size
 * @property {number} at           when it was saved
 * @property {1} [unsent]          gone once the server has confirmed it by hash
 * @property {string} [problem]    why the server does not take it
 * @property {1} [left_out]        a person has decided that it is not sent; its bytes stay
 */

/** The version ladder: each step only adds, and runs once. */
const LADDER = [
  (/** @type {import('idb').IDBPDatabase<any>} */ db) => {
    db.createObjectStore('meta');
    const events = db.createObjectStore('events', { keyPath: ['device', 'seq'] });
    events.createIndex('n', 'n');
    events.createIndex('job', 'job');
    events.createIndex('unsent', 'unsent');
    // Facts and bytes apart: counting loads no picture, and noting that one was sent writes none.
    db.createObjectStore('photos', { keyPath: 'sha256' }).createIndex('unsent', 'unsent');
    // Each an ArrayBuffer, not a Blob: Safari loses Blobs in IndexedDB.
    db.createObjectStore('photo_bytes');
    db.createObjectStore('drafts');
    db.createObjectStore('set_aside', { autoIncrement: true });
  },
];

/**
 * @typedef {object} StoreTrouble
 * @property {'none' | 'reload' | 'blocked'} state
 * @property {string} sentence
 */

/** The store. Open it with `openStore`. */
export class Store {
  constructor() {
    this.trouble = observable(/** @type {StoreTrouble} */ ({ state: 'none', sentence: '' }));
  }

  /** @type {Promise<import('idb').IDBPDatabase<any>> | null} */
  #opening = null;

  /**
   * Run `work` with the open database; where the connection turns out to be lost, once more with a new one.
   * @template T
   * @param {(db: import('idb').IDBPDatabase<any>) => Promise<T>} work
   * @returns {Promise<T>}
   */
  async withDb(work) {
    try {
      return await work(await this.#open());
    } catch (error) {
      if (!isConnectionLost(error)) throw error;
      await this.#drop();
    }
    try {
      return await work(await this.#open());
    } catch (error) {
      if (isConnectionLost(error)) {
        this.trouble.set(troubleOf('reload', 'troubles-storage-lost'));
      }
      throw error;
    }
  }

  /**
   * Read a value of `meta`.
   * @param {string} key
   * @returns {Promise<any>}
   */
  getMeta(key) {
    return this.withDb((db) => db.get('meta', key));
  }

  /**
   * @param {string} key
   * @param {unknown} value
   */
  async setMeta(key, value) {
    await this.write(['meta'], (tx) => tx.objectStore('meta').put(value, key));
  }

  /**
   * Keep what is being entered, so that a killed page can go on where it was.
   * @param {string} key
   * @param {unknown} value
   */
  async saveDraft(key, value) {
    const draft = { value, at: Date.now() };
    await this.write(['drafts'], (tx) => tx.objectStore('drafts').put(draft, key));
  }

  /**
   * @param {string} key
   * @returns {Promise<any>} the draft, or undefined
   */
  async draft(key) {
    return (await this.withDb((db) => db.get('drafts', key)))?.value;
  }

  /** @param {string} key */
  async dropDraft(key) {
    await this.write(['drafts'], (tx) => tx.objectStore('drafts').delete(key));
  }

  /**
   * @param {string} sha256
   * @returns {Promise<StoredPhoto | undefined>}
   */
  photo(sha256) {
    return this.withDb((db) => db.get('photos', sha256));
  }

  /**
   * The bytes of a picture; none where the browser has lost them for good, which it says by this error alone
   * (Indexed Database API 3.0, 3.5): the other pictures are as they were.
   * @param {string} sha256
   * @returns {Promise<ArrayBuffer | undefined>}
   */
  photoBytes(sha256) {
    return this.withDb((db) => db.get('photo_bytes', sha256)).catch((error) => {
      if (error.name !== 'NotReadableError') throw error;
    });
  }

  /** Touch the database, so that a connection lost in the background is found before it is needed. */
  async probe() {
    await this.withDb((db) => db.getKey('meta', 'device'));
  }

  /** Close the connection; the next access opens it again. */
  async close() {
    await this.#drop();
  }

  /**
   * Write in one transaction and come back only after it has been committed. A write can be accepted
   * and fail at the commit for want of space; that error is the one thrown then.
   * @template T
   * @param {string[]} tables
   * @param {(tx: any) => Promise<T>} work  may await nothing but requests of this transaction
   * @returns {Promise<T>}
   */
  write(tables, work) {
    return this.withDb(async (db) => {
      // Strict: otherwise a commit may be lost when the battery is.
      const tx = db.transaction(tables, 'readwrite', { durability: 'strict' });
      const done = tx.done.then(
        () => null,
        (error) => error,
      );
      let value;
      try {
        value = await work(tx);
      } catch (error) {
        abort(tx);
        const failure = await done;
        throw isQuotaError(failure) ? failure : error;
      }
      const failure = await done;
      if (failure) throw failure;
      return value;
    });
  }

  #open() {
    this.#opening ??= openDB(DATABASE, VERSION, {
      upgrade: (db, oldVersion) => LADDER.slice(oldVersion).forEach((step) => step(db)),
      blocked: () =>
        this.trouble.set(troubleOf('blocked', 'troubles-older-tab')),
      blocking: () => {
        this.#drop();
        this.trouble.set(troubleOf('reload', 'troubles-newer-tab'));
      },
      terminated: () => {
        this.#opening = null;
      },
    });
    this.#opening.then(
      () => {
        if (this.trouble.value.state === 'blocked') this.trouble.set({ state: 'none', sentence: '' });
      },
      () => {
        this.#opening = null;
      },
    );
    return this.#opening;
  }

  async #drop() {
    const opening = this.#opening;
    this.#opening = null;
    (await opening?.catch(() => null))?.close();
  }
}

/**
 * Open the store and watch its connection.
 * @param {Store} [store]
 * @returns {Promise<Store>}
 */
export async function openStore(store = new Store()) {
  await store.probe();
  await keepReserve(store);
  const wake = () => {
    if (document.visibilityState === 'visible') store.probe().catch(() => undefined);
  };
  document.addEventListener('visibilitychange', wake);
  for (const name of ['pageshow', 'focus']) addEventListener(name, wake);
  return store;
}

/**
 * @param {any} tx
 */
function abort(tx) {
  try {
    tx.abort();
  } catch {
    // It has already ended, which is what was wanted.
  }
}

/**
 * What a person is told of it, said when it is read: the store is opened before the words have come.
 * @param {'blocked' | 'reload'} state
 * @param {string} message
 */
function troubleOf(state, message) {
  return {
    state,
    get sentence() {
      return say(message);
    },
  };
}

/** @param {unknown} error */
function isConnectionLost(error) {
  return error instanceof DOMException && CONNECTION_LOST.has(error.name);
}
