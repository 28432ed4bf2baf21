// @ts-check
/**
 * What this phone holds that is in no file yet, where a file is all that can outlive the phone.
 *
 * The last file is what the person confirmed: a share that was handed on, a download that began, or the file
 * that an empty phone was set up from. Whether it still exists nobody here can know.
 */

import { observable } from '../phone/observable.js';
import { ownName } from '../place.js';
import { makingRoom } from '../log/space.js';

const FILE = 'setting.file';
const SINCE = 'setting.file_since';
/** Outlives a lost database in the same browser, so that the person can be told which file to look for. */
const MARKER = ownName('swaptrail.file');

/**
 * @typedef {object} LastFile
 * @property {string} name
 * @property {number} at               when it left this phone, or was taken in; this phone's clock, ms
 * @property {'shared' | 'downloaded' | 'taken in'} how
 * @property {number} upTo             place in this phone's order of the first entry that is not in it
 * @property {number} entries          held when it was made
 * @property {number} photos           held when it was made
 *
 * @typedef {object} Standing
 * @property {boolean} counted         false until the store was looked at
 * @property {number} entries          that are in no file
 * @property {number} photos           that are in no file
 * @property {number | null} since     when the first of them was noticed; this phone's clock, ms
 * @property {{entries: number, photos: number}} held  all there is
 * @property {LastFile | null} last
 */

/** @type {Standing} */
const NOT_YET = { counted: false, entries: 0, photos: 0, since: null, held: { entries: 0, photos: 0 }, last: null };

/** Keeps count; `start` lets it follow the log. */
export class Saved {
  /** @param {import('../log/store.js').Store} store */
  constructor(store) {
    this.standing = observable(NOT_YET);
    this.#store = store;
  }

  #store;

  /**
   * @param {import('../log/log.js').EventLog} log
   * @returns {Promise<void>}  settles once it was counted for the first time
   */
  start(log) {
    log.changes.subscribe(() => this.count());
    // Another tab may have saved the file.
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible') this.count();
    });
    return this.count();
  }

  /** Count again what is in no file. */
  async count() {
    const counted = await this.#look();
    const something = counted.entries + counted.photos > 0;
    if (something && counted.since === null) {
      counted.since = Date.now();
      // Only for the reminder: on a full phone it may be lost.
      await this.#store.setMeta(SINCE, counted.since).catch(() => undefined);
    }
    this.standing.set(something ? counted : { ...counted, since: null });
  }

  /**
   * The person has the file: what was made up to then counts as saved.
   * @param {LastFile | null} file  null: there is none after all
   * @param {number | null} [since]  since when something was in no file, where this one turned out not to be there
   */
  async note(file, since = null) {
    await makingRoom(this.#store, () =>
      this.#store.write(['meta'], async (tx) => {
        const meta = tx.objectStore('meta');
        await (file ? meta.put(file, FILE) : meta.delete(FILE));
        await (since === null ? meta.delete(SINCE) : meta.put(since, SINCE));
      }),
    );
    remember(file);
    await this.count();
  }

  /** @returns {Promise<Standing>} */
  #look() {
    return this.#store.withDb(async (db) => {
      const tx = db.transaction(['meta', 'events', 'photo_bytes']);
      const meta = tx.objectStore('meta');
      /** @type {LastFile | null} */
      const last = (await meta.get(FILE)) ?? null;
      const since = (await meta.get(SINCE)) ?? null;
      const events = tx.objectStore('events');
      const after = last ? await events.index('unsent').count(IDBKeyRange.lowerBound(last.upTo)) : await events.count();
      const held = { entries: await events.count(), photos: await tx.objectStore('photo_bytes').count() };
      // Nothing is ever deleted here, so the number tells which are new.
      const photos = Math.max(0, held.photos - (last?.photos ?? 0));
      return { counted: true, entries: after, photos, since, held, last };
    });
  }
}

/**
 * The last file that a phone whose data is gone had saved.
 * @returns {{name: string, at: number, entries: number, photos: number} | null}
 */
export function lastFileOfLostData() {
  try {
    const kept = JSON.parse(localStorage.getItem(MARKER) ?? 'null');
    return kept && typeof kept.name === 'string' && Number.isSafeInteger(kept.at) ? kept : null;
  } catch {
    return null;
  }
}

/** @param {LastFile | null} file */
function remember(file) {
  try {
    if (file) localStorage.setItem(MARKER, JSON.stringify(file));
    else localStorage.removeItem(MARKER);
  } catch {
    // Without it a phone that lost its data cannot name the file; the advice is the same.
  }
}
