// @ts-check
/**
 * Keeps the core's folded state from one start to the next, in a database of its own: a cache and no more.
 *
 * The head is one text and each closed job another, read when it is asked for. All carry their digest, and the
 * head those of the jobs it goes with; what does not fit is as good as not there, and the log is folded.
 */

import { openDB } from 'idb';

import { ownName } from '../place.js';
import { sha256Hex } from './canonical.js';

const DATABASE = ownName('swaptrail-folded');
const VERSION = 1;
const HEAD = 'head';

/**
 * @typedef {object} Snapshot
 * @property {string} core                        by which core's files it was folded
 * @property {import('./order.js').Position} position   of what
 * @property {string} text                        the head
 * @property {Record<string, string>} jobs        closed job -> digest of its text
 */

/** The one snapshot of this phone. */
export class Snapshots {
  /** What was read or written last, without its text. @type {Omit<Snapshot, 'text'> | null} */
  #present = null;

  /**
   * The snapshot that this core made; null where there is none, or it is damaged.
   * @param {string} core
   * @returns {Promise<Snapshot | null>}
   */
  async read(core) {
    const kept = core && (await quietly(() => withDb(leave, (db) => db.get('head', HEAD))));
    if (!kept || kept.core !== core || (await digestOf(kept.text)) !== kept.sha256) return null;
    const { text, ...rest } = kept;
    this.#present = rest;
    return kept;
  }

  /**
   * The texts of closed jobs; null where one is not there as the head has it.
   * @param {string[]} jobs
   * @returns {Promise<Record<string, string> | null>}
   */
  async jobs(jobs) {
    const known = this.#present?.jobs ?? {};
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
   * Keep a snapshot in place of the one before, whose other jobs it shares.
   * @param {{core: string, position: import('./order.js').Position, text: string}} head
   * @param {Record<string, string>} jobs  the texts of the jobs that have changed
   * @returns {Promise<boolean>} whether it is kept
   */
  async write({ core, position, text }, jobs) {
    const digests = this.#present?.core === core ? { ...this.#present.jobs } : {};
    for (const [job, piece] of Object.entries(jobs)) digests[job] = await digestOf(piece);
    const head = { core, position, jobs: digests, text, sha256: await digestOf(text) };
    const kept = await quietly(() => withDb(create, async (db) => {
      const tx = db.transaction(['head', 'jobs'], 'readwrite');
      const writes = Object.entries(jobs).map(([job, piece]) => tx.objectStore('jobs').put(piece, job));
      writes.push(tx.objectStore('head').put(head, HEAD));
      await Promise.all(writes);
      await tx.done;
      return true;
    }));
    this.#present = kept ? { core, position, jobs: digests } : null;
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

/** @param {string} text */
function digestOf(text) {
  return sha256Hex(new TextEncoder().encode(text));
}
