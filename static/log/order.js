// @ts-check
/**
 * Reads the log of this phone in its one order: by the server's number, then what has not been sent yet.
 *
 * Numbers only grow, so a place in this order is told by the last number before it and by what follows
 * unsent. Where the order was changed behind such a place all the same, `orderChanged` has noted it.
 */

/** So many entries are in memory at once. */
export const CHUNK = 500;
/** Counts in `meta` how often what was in order came into another one. */
const CHANGES = 'order';

/**
 * @typedef {object} Position   the entries up to here
 * @property {number} changes   of the order, when this was so
 * @property {number} n         the last number of the server; 0 while there is none
 * @property {number} count     how many have a number
 * @property {string} hash      of the entry that has the last number
 * @property {string[]} unsent  the names of those behind it
 *
 * @typedef {[string, number]} Key   device and seq of an entry
 */

/** An entry by device and seq, as one text. @param {Key} key */
export function nameOf([device, seq]) {
  return `${device}/${seq}`;
}

/** @param {string} name @returns {Key} */
function keyOf(name) {
  const at = name.lastIndexOf('/');
  return [name.slice(0, at), Number(name.slice(at + 1))];
}

/** How many entries there are up to a place in the order. @param {Position} position */
export function lengthOf({ count, unsent }) {
  return count + unsent.length;
}

/**
 * Note, in a transaction over `meta`, that entries which had a place in the order have another one now.
 * @param {any} tx
 */
export async function orderChanged(tx) {
  const meta = tx.objectStore('meta');
  await meta.put((await changesIn(tx)) + 1, CHANGES);
}

/**
 * How often the order has changed, in a transaction over `meta`.
 * @param {any} tx
 * @returns {Promise<number>}
 */
async function changesIn(tx) {
  return (await tx.objectStore('meta').get(CHANGES)) ?? 0;
}

/** The log of one store. */
export class LogOrder {
  /** @param {import('./store.js').Store} store */
  constructor(store) {
    this.#store = store;
  }

  #store;

  /**
   * All entries in order.
   * @returns {Promise<import('./store.js').StoredEvent[]>}
   */
  whole() {
    return this.#store.withDb(async (db) => {
      const tx = db.transaction('events');
      const numbered = await tx.store.index('n').getAll();
      return numbered.concat(await tx.store.index('unsent').getAll());
    });
  }

  /**
   * Where the log ends now.
   * @returns {Promise<Position>}
   */
  end() {
    return this.#store.withDb(async (db) => {
      const tx = db.transaction(['meta', 'events']);
      const changes = await changesIn(tx);
      const events = tx.objectStore('events');
      const last = await events.index('n').openCursor(null, 'prev');
      const count = await events.index('n').count();
      const unsent = await events.index('unsent').getAllKeys();
      const { n = 0, hash = '' } = last?.value ?? {};
      return { changes, n, count, hash, unsent: unsent.map(nameOf) };
    });
  }

  /**
   * What follows on the numbered entries of a position; null where the order before it has changed.
   * @param {Position} position
   * @returns {Promise<{numbered: string[], unsent: string[], n: number, hash: string} | null>}
   */
  since({ changes, n, hash }) {
    return this.#store.withDb(async (db) => {
      const tx = db.transaction(['meta', 'events']);
      if ((await changesIn(tx)) !== changes) return null;
      const events = tx.objectStore('events');
      const numbered = await events.index('n').getAllKeys(IDBKeyRange.lowerBound(n, true));
      const unsent = await events.index('unsent').getAllKeys();
      const last = numbered.length ? await events.get(numbered[numbered.length - 1]) : { n, hash };
      return { numbered: numbered.map(nameOf), unsent: unsent.map(nameOf), n: last.n, hash: last.hash };
    });
  }

  /**
   * Whether the numbered entries up to a position are those of then; what was unsent, `since` compares.
   * @param {Position} position
   * @returns {Promise<boolean>}
   */
  holds({ changes, n, count, hash }) {
    return this.#store.withDb(async (db) => {
      const tx = db.transaction(['meta', 'events']);
      if ((await changesIn(tx)) !== changes) return false;
      const numbers = tx.objectStore('events').index('n');
      if ((await numbers.count(IDBKeyRange.upperBound(n))) !== count) return false;
      return n === 0 || (await numbers.get(n))?.hash === hash;
    });
  }

  /**
   * The entries up to a position, some at a time.
   * @param {Position} position
   * @returns {AsyncGenerator<import('./store.js').StoredEvent[]>}
   */
  async *upTo({ n, unsent }) {
    for (let last = 0; last < n; ) {
      const range = IDBKeyRange.bound(last, n, true);
      const entries = await this.#store.withDb((db) => db.getAllFromIndex('events', 'n', range, CHUNK));
      if (!entries.length) break;
      last = entries[entries.length - 1].n;
      yield entries;
    }
    for (let at = 0; at < unsent.length; at += CHUNK) {
      yield await this.named(unsent.slice(at, at + CHUNK));
    }
  }

  /**
   * @param {string[]} names
   * @returns {Promise<import('./store.js').StoredEvent[]>}
   */
  named(names) {
    return this.#store.withDb((db) => {
      const events = db.transaction('events').store;
      return Promise.all(names.map((name) => events.get(keyOf(name))));
    });
  }
}

/**
 * How `wanted` comes from `had`: entries put in at one place, and others behind; null where it is otherwise.
 * @param {string[]} had
 * @param {string[]} wanted
 * @returns {{at: number, inserted: string[], behind: string[]} | null}
 */
export function insertionOf(had, wanted) {
  let at = 0;
  while (at < had.length && had[at] === wanted[at]) at += 1;
  const rest = had.slice(at);
  const again = rest.length ? wanted.indexOf(rest[0], at) : at;
  if (again < 0 || rest.some((name, index) => wanted[again + index] !== name)) return null;
  return { at, inserted: wanted.slice(at, again), behind: wanted.slice(again + rest.length) };
}
