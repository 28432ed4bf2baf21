// @ts-check
/**
 * Hears at once of what others do while somebody looks at this screen: of new entries, which are then fetched, and
 * of who else is at the job that is shown.
 *
 * One question stands with the server all the while, which keeps its answer back until there is something to tell
 * (server/news/). It costs less than asking every minute, and nothing while the screen is hidden or the phone is
 * offline: then there is no question.
 */

import { observable } from '../phone/observable.js';
import { retryAfter } from './backoff.js';
import { ApiError } from './request.js';

/** Least time between two questions: a step often changes twice in a moment. */
const LEAST_PAUSE_MS = 300;

/**
 * @typedef {object} Place     where this phone is: at a step of a job, in the words of the core's `doing`
 * @property {string} job
 * @property {string} doing
 * @property {string[]} positions
 *
 * @typedef {object} Person    somebody else who is there
 * @property {string} name
 * @property {string} doing
 * @property {string[]} positions
 *
 * @typedef {object} Others
 * @property {string} job      which they are at; empty for none
 * @property {Person[]} people
 */

/** @type {Others} */
export const NOBODY = { job: '', people: [] };

/** What is new at the server. */
export class News {
  /**
   * @param {object} parts
   * @param {import('../log/store.js').Store} parts.store
   * @param {import('./api.js').ServerApi} parts.api
   * @param {() => Promise<void>} parts.sync  fetches what is new; begins listening anew when it succeeds
   */
  constructor({ store, api, sync }) {
    this.#store = store;
    this.#api = api;
    this.#sync = sync;
    /** Who else is at the job on this screen. */
    this.others = observable(NOBODY);
    // Two pages of one phone each have a question of their own.
    this.#window = crypto.randomUUID().slice(0, 8);
  }

  #store;
  #api;
  #sync;
  #window;
  /** @type {Place | null} */
  #place = null;
  #stamp = '';
  #askedAt = 0;
  /** In a row, without an answer. */
  #failures = 0;
  /** In a row, after which the log of this phone went no further. */
  #fruitless = 0;
  /** The server is older than the question. */
  #unknown = false;
  /** @type {Promise<void> | null} */
  #listening = null;
  /** The question that stands, or the pause until the next. @type {AbortController | null} */
  #standing = null;

  /** Whether a question stands, so that nobody has to ask by the clock. */
  get isListening() {
    return this.#listening !== null && !this.#failures;
  }

  /** Hear of whatever ends listening. */
  start() {
    document.addEventListener('visibilitychange', () => this.#interrupt());
    addEventListener('offline', () => this.#interrupt());
  }

  /** Listen from now on, once the server has answered; does nothing while it listens. */
  listen() {
    if (this.#unknown) return;
    this.#listening ??= this.#listen().finally(() => {
      this.#listening = null;
      this.#forget();
    });
  }

  /** Say where this phone is; null while it is at no job. @param {Place | null} place */
  at(place) {
    if (JSON.stringify(place) === JSON.stringify(this.#place)) return;
    this.#place = place;
    const job = place?.job ?? '';
    if (job !== this.others.value.job) {
      this.#stamp = '';
      this.others.set({ job, people: [] });
    }
    this.#interrupt();
  }

  async #listen() {
    while (mayAsk() && !this.#unknown) {
      const standing = new AbortController();
      this.#standing = standing;
      try {
        await this.#ask(standing.signal);
        this.#failures = 0;
      } catch (error) {
        if (standing.signal.aborted) continue;
        await this.#failed(error);
        return;
      }
    }
  }

  /** Ask once, take the answer, and pause as it says. @param {AbortSignal} signal */
  async #ask(signal) {
    await pause(this.#askedAt + LEAST_PAUSE_MS - Date.now(), signal);
    this.#askedAt = Date.now();
    const cursor = await this.#cursor();
    const place = this.#place;
    const reply = await this.#api.news({ v: 1, window: this.#window, at: place, cursor, stamp: this.#stamp }, signal);
    if (place === this.#place) {
      this.#stamp = reply.stamp;
      this.others.set({ job: place?.job ?? '', people: reply.others });
    }
    const known = await this.#cursor();
    // What came in while the question stood may have been fetched by now.
    if (reply.entries > known || reply.entries < cursor) await this.#fetch(known);
    await pause(Math.max(reply.pause * 1000, this.#fruitless && retryAfter(this.#fruitless)), signal);
  }

  /** @param {number} before  where the log stood */
  async #fetch(before) {
    await this.#sync();
    const moved = (await this.#cursor()) !== before;
    this.#fruitless = moved ? 0 : this.#fruitless + 1;
  }

  /** Whether the server can be reached, the next sync will say, and listening goes on with it. @param {unknown} error */
  async #failed(error) {
    const refused = error instanceof ApiError && error.kind === 'refused';
    if (refused && error.status === 404) this.#unknown = true;
    this.#failures += 1;
    setTimeout(() => {
      if (mayAsk()) this.#sync();
    }, retryAfter(this.#failures));
  }

  /** Nobody says any more who is there. */
  #forget() {
    this.#stamp = '';
    this.others.set({ ...this.others.value, people: [] });
  }

  #interrupt() {
    this.#standing?.abort();
  }

  async #cursor() {
    return (await this.#store.getMeta('cursor')) ?? 0;
  }
}

/** Only while somebody can see what is new. */
function mayAsk() {
  return document.visibilityState === 'visible' && navigator.onLine;
}

/**
 * @param {number} ms
 * @param {AbortSignal} signal  ends it
 * @returns {Promise<void>}
 */
function pause(ms, signal) {
  return new Promise((resolve) => {
    if (!(ms > 0) || signal.aborted) {
      resolve();
      return;
    }
    const timer = setTimeout(resolve, ms);
    signal.addEventListener('abort', () => {
      clearTimeout(timer);
      resolve();
    });
  });
}
