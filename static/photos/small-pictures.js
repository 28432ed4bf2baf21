// @ts-check
/**
 * Small versions of the pictures that others took, kept on this phone so that each job can be looked through without
 * a network. The server draws them; they lie in a database of their own, and are fetched again where they are lost.
 */

import { SMALL_PICTURES, withSmallPictures } from '../log/small-store.js';
import { withLockIfFree } from '../phone/locks.js';

/** @typedef {import('../log/small-store.js').Small} Small */

/** Of the newest pictures; at about 15 kB each. */
const MOST_KEPT = 4000;
const READ_AT_ONCE = 1000;

/** The small pictures of this phone. */
export class SmallPictures {
  /**
   * @param {import('../log/store.js').Store} store
   * @param {import('../sync/api.js').ServerApi} api
   */
  constructor(store, api) {
    this.#store = store;
    this.#api = api;
  }

  #store;
  #api;

  /**
   * @param {string} sha256
   * @returns {Promise<ArrayBuffer | undefined>}
   */
  async bytes(sha256) {
    const kept = await withSmallPictures((db) => db.get('pictures', sha256));
    return kept?.bytes;
  }

  /**
   * Note the pictures that came since, and fetch what is lacking, the newest first; in one tab at a time. What
   * cannot be had now is fetched another time.
   */
  fetchMissing() {
    return withLockIfFree(SMALL_PICTURES, () => withSmallPictures((db) => this.#fetch(db)));
  }

  /** @param {import('idb').IDBPDatabase<any>} db */
  async #fetch(db) {
    await this.#note(db);
    /** @type {Small[]} */
    const wanted = await db.getAllFromIndex('pictures', 'wanted');
    for (const { sha256, n } of wanted.reverse().slice(0, MOST_KEPT)) {
      const bytes = await this.#api.smallPhoto(sha256);
      if (bytes) await db.put('pictures', { sha256, n, bytes });
    }
    await dropOldest(db);
  }

  /** Note what entries of the server name and is not here whole. @param {import('idb').IDBPDatabase<any>} db */
  async #note(db) {
    const cursor = (await this.#store.getMeta('cursor')) ?? 0;
    let upTo = (await db.get('noted', 'upTo')) ?? 0;
    // The server's numbers begin anew where a backup was put back.
    if (upTo > cursor) upTo = 0;
    for (let more = true; more; ) {
      /** @type {import('../log/store.js').StoredEvent[]} */
      const entries = await this.#store.withDb((log) =>
        log.getAllFromIndex('events', 'n', IDBKeyRange.lowerBound(upTo, true), READ_AT_ONCE),
      );
      more = entries.length === READ_AT_ONCE;
      for (const { n = 0, event } of entries) {
        upTo = n;
        if (event.kind !== 'photo_taken') continue;
        const { sha256 } = event.data;
        const here = await this.#store.withDb((log) => log.getKey('photo_bytes', sha256));
        if (here === undefined && !(await db.get('pictures', sha256))) await db.put('pictures', { sha256, n, wanted: n });
      }
      await db.put('noted', upTo, 'upTo');
    }
  }
}

/** @param {import('idb').IDBPDatabase<any>} db */
async function dropOldest(db) {
  const over = (await db.count('pictures')) - MOST_KEPT;
  if (over <= 0) return;
  for (const sha256 of await db.getAllKeysFromIndex('pictures', 'n', null, over)) await db.delete('pictures', sha256);
}
