// @ts-check
/**
 * Keeps the core's folded state from one start to the next, in a database of its own: a cache and no more.
 *
 * The head is a few texts and each closed job another, read when it is asked for. All carry their digest, and the
 * head those of the jobs it goes with; what does not fit is as good as not there, and the log is folded. While the
 * first snapshot of a long log is made, what there is of it is kept under `begun`, so that a phone that is closed
 * in the midst of it goes on where it was.
 */

import { openDB } from 'idb';

import { ownName } from '../place.js';
import { sha256Hex } from './canonical.js';

const DATABASE = ownName('swaptrail-folded');
const VERSION = 1;
const HEAD = 'head';
const BEGUN = 'begun';

/**
 * @typedef {object} Snapshot
 * @property {string} core                        by which core's files it was folded
 * @property {import('./order.js').Position} position   of what
 * @property {string[]} texts                     the head, in parts
 * @property {Record<string, string>} jobs        closed job -> digest of its text
 *
 * @typedef {Omit<Snapshot, 'texts'>} Begun       `jobs` are those that are done
 */

/** The one snapshot of this phone. */
export class Snapshots {
  /** What was read or written last; of `jobs` those that the core need not have in memory. @type {Begun | null} */
  #present = null;
  /** Whether that is a whole snapshot. */
  #whole = false;

  /** Whether there is a whole snapshot, so that the next one shares its jobs. */
  get whole() {
    return this.#whole;
  }

  /**
   * The snapshot that this core made; null where there is none, or it is damaged.
   * @param {string} core
   * @returns {Promise<Snapshot | null>}
   */
  async read(core) {
    const kept = core && (await quietly(() => withDb(leave, (db) => db.get('head', HEAD))));
    this.#whole = kept?.core === core && (await digestOf(kept.texts.join())) === kept.sha256;
    if (!this.#whole) return null;
    const { texts, ...rest } = kept;
    this.#present = rest;
    return kept;
  }

  /**
   * What there is of the first snapshot that this core began to make.
   * @param {string} core
   * @returns {Promise<Begun | null>}
   */
  async begun(core) {
    const kept = core && (await quietly(() => withDb(leave, (db) => db.get('head', BEGUN))));
    return kept?.core === core ? kept : null;
  }

  /** The core has all jobs in memory, but for those of `begun`, if it went on with that. @param {Begun | null} begun */
  goOnWith(begun) {
    this.#present = begun;
  }

  /**
   * The texts of closed jobs; null where one is not there as the head has it.
   * @param {string[]} jobs
   * @returns {Promise<Record<string, string> | null>}
   */
  async jobs(jobs) {
    const known = { ...this.#present?.jobs };
    // Once the core has them they may change.
    for (const job of jobs) delete this.#present?.jobs[job];
    const texts = await quietly(() => withDb(leave, (db) => {
      const pieces = db.transaction('jobs').store;
      return Promise.all(jobs.map((job) => pieces.get(job)));
    }));
    /** @type {Record<string, string>} */
    const found = {};
    for (let at = 0; at < jobs.length; at += 1) {
      const text = texts?.[at];
      if (typeof text !== 'string' || (await digestOf(text)) !== known[jobs[at]]) return null;
      found[jobs[at]] = text;
    }
    return found;
  }

  /**
   * Keep some jobs of a first snapshot; they count once they `haveLeft`, for until then they may change.
   * @param {Record<string, string>} texts  of the jobs
   * @returns {Promise<Record<string, string> | null>} their digests; null where they could not be kept
   */
  async keep(texts) {
    return (await this.#put(texts)) ? digestsOf(texts) : null;
  }

  /**
   * The core has no longer these jobs in memory, all of which are kept.
   * @param {{core: string, position: import('./order.js').Position}} of
   * @param {Record<string, string>} digests
   * @returns {Promise<boolean>} whether that is kept
   */
  haveLeft({ core, position }, digests) {
    this.#present = { core, position, jobs: { ...this.#jobsOf(core), ...digests } };
    return this.#put({}, BEGUN, this.#present);
  }

  /** @param {string} core  digests of other jobs than its own are nothing to it */
  #jobsOf(core) {
    return this.#present?.core === core ? this.#present.jobs : {};
  }

  /**
   * Keep a snapshot in place of the one before, whose other jobs it shares.
   * @param {{core: string, position: import('./order.js').Position, texts: string[]}} head
   * @param {Record<string, string>} jobs  the texts of the jobs that have changed
   * @returns {Promise<boolean>} whether it is kept
   */
  async write({ core, position, texts }, jobs) {
    const digests = { ...this.#jobsOf(core), ...(await digestsOf(jobs)) };
    const head = { core, position, jobs: digests, texts, sha256: await digestOf(texts.join()) };
    this.#whole = await this.#put(jobs, HEAD, head);
    this.#present = this.#whole ? { core, position, jobs: digests } : null;
    return this.#whole;
  }

  /**
   * Write jobs and what says which they are, or nothing. What was begun ends with a whole one.
   * @param {Record<string, string>} jobs
   * @param {string} [key]
   * @param {object} [head]
   * @returns {Promise<boolean>}
   */
  async #put(jobs, key, head) {
    const kept = await quietly(() => withDb(create, async (db) => {
      const tx = db.transaction(['head', 'jobs'], 'readwrite');
      const writes = Object.entries(jobs).map(([job, piece]) => tx.objectStore('jobs').put(piece, job));
      if (key === HEAD) writes.push(tx.objectStore('head').delete(BEGUN));
      if (key) writes.push(tx.objectStore('head').put(head, key));
      await Promise.all(writes);
      await tx.done;
      return true;
    }));
    return kept === true;
  }
}

/** Drop the snapshot: where a phone is full, what it can make again goes first. */
export async function dropSnapshots() {
  await quietly(() => withDb(leave, async (db) => {
    const tx = db.transaction(['head', 'jobs'], 'readwrite');
    await Promise.all([tx.objectStore('head').clear(), tx.objectStore('jobs').clear(), tx.done]);
  }));
}

/** @param {import('idb').IDBPDatabase<any>} fresh */
function create(fresh) {
  fresh.createObjectStore('head');
  fresh.createObjectStore('jobs');
}

/** Where there is no database, there is none afterwards. @type {NonNullable<import('idb').OpenDBCallbacks<any>['upgrade']>} */
function leave(_fresh, _old, _new, tx) {
  tx.done.catch(() => undefined);
  tx.abort();
}

/**
 * Opened for each use: a browser may drop a connection at any time, and nothing here is used often.
 * @template T
 * @param {NonNullable<import('idb').OpenDBCallbacks<any>['upgrade']>} upgrade
 * @param {(db: import('idb').IDBPDatabase<any>) => Promise<T>} work
 */
async function withDb(upgrade, work) {
  const db = await openDB(DATABASE, VERSION, { upgrade });
  try {
    return await work(db);
  } finally {
    db.close();
  }
}

/**
 * What fails here costs time and nothing else.
 * @template T
 * @param {() => Promise<T>} work
 */
async function quietly(work) {
  try {
    return await work();
  } catch {
    return null;
  }
}

/** @param {Record<string, string>} texts @returns {Promise<Record<string, string>>} */
async function digestsOf(texts) {
  /** @type {Record<string, string>} */
  const digests = {};
  for (const [job, text] of Object.entries(texts)) digests[job] = await digestOf(text);
  return digests;
}

/** @param {string} text */
function digestOf(text) {
  return sha256Hex(new TextEncoder().encode(text));
}
