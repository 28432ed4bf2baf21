// @ts-check
/**
 * Keeps what is being entered, so that a page that the phone has ended goes on where it was.
 *
 * A form is a plain object. It is written a moment after each change, and at once before a camera opens
 * or the page leaves.
 */

import { makingRoom } from '../../log/space.js';

const CALM_MS = 250;

/** @typedef {Record<string, any>} Form */

/** The forms that are open or were left open. */
export class Drafts {
  /** @param {import('../../log/store.js').Store} store */
  constructor(store) {
    this.#store = store;
    document.addEventListener('visibilitychange', () => this.flush());
    addEventListener('pagehide', () => this.flush());
  }

  #store;
  /** @type {Map<string, Form>} */
  #changed = new Map();
  #timer = 0;
  /** @type {Promise<void>} */
  #writing = Promise.resolve();

  /**
   * The form that was left open under this key, or an empty one.
   * @param {string} key
   * @returns {Promise<Form>}
   */
  async open(key) {
    await this.flush();
    return (await this.#store.draft(key).catch(() => undefined)) ?? {};
  }

  /**
   * Write a form a moment from now.
   * @param {string} key
   * @param {Form} form
   */
  touch(key, form) {
    this.#changed.set(key, form);
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.flush(), CALM_MS);
  }

  /** Write at once what has changed; comes back when it is kept. */
  flush() {
    clearTimeout(this.#timer);
    this.#writing = this.#writing.then(() => this.#write());
    return this.#writing;
  }

  /**
   * Forget a form: what it held is on record now, or no longer wanted.
   * @param {string} key
   */
  drop(key) {
    this.#changed.delete(key);
    this.#writing = this.#writing.then(() => this.#store.dropDraft(key).catch(() => undefined));
    return this.#writing;
  }

  async #write() {
    for (const [key, form] of [...this.#changed]) {
      this.#changed.delete(key);
      // A phone that is full keeps the form on the screen; what is recorded says so by itself.
      await makingRoom(this.#store, () => this.#store.saveDraft(key, form)).catch(() => undefined);
    }
  }
}
