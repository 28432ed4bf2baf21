// @ts-check
/**
 * Keeps the core's state in step with the stored log: folds what it has not seen, or all of it afresh
 * when the order has changed.
 *
 * Order is everywhere the same: by the server's number, then what this phone has not sent yet.
 */

import { CoreError } from '../core/client.js';

const TRIES = 20;

/** Feeds one core from one store. */
export class CoreFeed {
  /**
   * @param {import('./store.js').Store} store
   * @param {import('../core/client.js').Core} core
   */
  constructor(store, core) {
    this.#store = store;
    this.#core = core;
    core.setReplay(() => this.#replay());
  }

  #store;
  #core;
  /** What the core has folded, as `device/seq`, in order. @type {string[]} */
  #applied = [];

  /**
   * All events in order.
   * @returns {Promise<import('./store.js').EventRecord[]>}
   */
  ordered() {
    return this.#store.withDb(async (db) => {
      const tx = db.transaction('events');
      const numbered = await tx.store.index('n').getAll();
      return numbered.concat(await tx.store.index('unsent').getAll());
    });
  }

  /**
   * Bring the core up to date; call it under the log's lock.
   * @returns {Promise<any[]>} conflicts that new events brought
   */
  async bringUpToDate() {
    for (let tried = 0; tried < TRIES && this.#core.available; tried += 1) {
      const { restarts } = this.#core;
      const keys = await this.#orderedKeys();
      const wanted = keys.map(name);
      const appends = startsWith(wanted, this.#applied);
      if (appends && wanted.length === this.#applied.length) return [];
      const missing = appends ? keys.slice(this.#applied.length) : keys;
      const events = (await this.#read(missing)).map(({ event }) => ({ event }));
      try {
        const op = appends ? 'add' : 'reset';
        const value = await this.#core.call(op, { events }, { onlyAfterRestarts: restarts });
        this.#applied = wanted;
        return value.conflicts ?? [];
      } catch (error) {
        // A restart has read the log again by itself; look once more what is missing.
        if (error instanceof CoreError && error.broken) continue;
        this.#core.giveUp(`The checks could not read the log: ${error}.`);
      }
    }
    return [];
  }

  /** @returns {Promise<Array<[string, number]>>} */
  #orderedKeys() {
    return this.#store.withDb(async (db) => {
      const tx = db.transaction('events');
      const numbered = await tx.store.index('n').getAllKeys();
      return numbered.concat(await tx.store.index('unsent').getAllKeys());
    });
  }

  /**
   * @param {Array<[string, number]>} keys
   * @returns {Promise<import('./store.js').EventRecord[]>}
   */
  #read(keys) {
    return this.#store.withDb((db) => {
      const events = db.transaction('events').store;
      return Promise.all(keys.map((key) => events.get(key)));
    });
  }

  async #replay() {
    const records = await this.ordered();
    this.#applied = records.map(({ device, seq }) => name([device, seq]));
    return records.map(({ event }) => ({ event }));
  }
}

/** @param {[string, number]} key */
function name([device, seq]) {
  return `${device}/${seq}`;
}

/**
 * @param {string[]} list
 * @param {string[]} start
 */
function startsWith(list, start) {
  return start.length <= list.length && start.every((item, index) => item === list[index]);
}
