// @ts-check
/**
 * What this phone knows of the server apart from its data: which formats of events it takes, and how far the
 * two clocks are apart. Kept, for most of the time there is no server to ask.
 */

import { observable } from '../phone/observable.js';

/** The format of the events that this app writes; the core's FORMAT_VERSION. */
export const EVENT_FORMAT = 1;

const SETTING = 'setting.server';
/** A clock is read through a network: less than this is no news. */
const CLOCK_STEP_MS = 5000;

/**
 * @typedef {{format: number, oldest: number, clockAhead: number | null, trustPage?: string}} Standing
 * `trustPage` is where a phone gets to trust a server whose certificate is its own; empty elsewhere.
 */

/** Of one phone; `device.server`. */
export class ServerStanding {
  /** @param {import('./store.js').Store} store */
  constructor(store) {
    this.standing = observable(/** @type {Standing} */ ({ format: EVENT_FORMAT, oldest: EVENT_FORMAT, clockAhead: null }));
    this.#store = store;
  }

  #store;

  /** Read what was kept. */
  async reread() {
    const kept = await this.#store.getMeta(SETTING);
    if (kept) this.standing.set(kept);
  }

  /**
   * Keep what an answer of the server tells. Servers from before there was a second format name none.
   * @param {{now: number, format?: number, oldest_format?: number, trust_page?: string}} session
   * @param {number} asked     this phone's clock when it asked, ms
   * @param {number} answered  and when the answer was here
   */
  async keep({ now, format = 1, oldest_format: oldest = 1, trust_page: trustPage = '' }, asked, answered) {
    const before = this.standing.value;
    const measured = Math.round((asked + answered) / 2 - now);
    const same = before.clockAhead !== null && Math.abs(measured - before.clockAhead) < CLOCK_STEP_MS;
    const old = same && format === before.format && oldest === before.oldest && trustPage === before.trustPage;
    if (old) return;
    const next = { format, oldest, clockAhead: same ? before.clockAhead : measured, trustPage };
    this.standing.set(next);
    // Only for show and measured anew each time: on a full phone it may be lost.
    await this.#store.setMeta(SETTING, next).catch(() => undefined);
  }

  /** Whether the server is older than this app, and may not take all of what it records. */
  get isOlder() {
    return this.standing.value.format < EVENT_FORMAT;
  }
}
