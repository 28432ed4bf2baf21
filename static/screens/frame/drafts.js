// @ts-check
/**
 * Keeps what is being entered, so that a page that the phone has ended goes on where it was.
 *
 * A form is a plain object. It is written a moment after each change, and at once before a camera opens
 * or the page leaves. A page that is loaded anew does not wait for its last writing: what was not written yet is left
 * with its tab, from which the next page takes it.
 */

import { makingRoom } from '../../log/space.js';
import { ownName } from '../../place.js';

const CALM_MS = 250;
const LEFT = ownName('swaptrail.drafts');

/** @typedef {Record<string, any>} Form */

/** The forms that are open or were left open. */
export class Drafts {
  /** @param {import('../../log/store.js').Store} store */
  constructor(store) {
    this.#store = store;
    for (const [key, form] of takeLeft()) this.touch(key, form);
    document.addEventListener('visibilitychange', () => this.flush());
    addEventListener('pagehide', () => {
      leave([...this.#underWay, ...this.#changed]);
      this.flush();
    });
    // A page that was only put aside has its forms still, and newer ones.
    addEventListener('pageshow', ({ persisted }) => persisted && takeLeft());
  }

  #store;
  /** @type {Map<string, Form>} */
  #changed = new Map();
  /** What is being written. @type {Map<string, Form>} */
  #underWay = new Map();
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
    this.#underWay.delete(key);
    this.#writing = this.#writing.then(() => this.#store.dropDraft(key).catch(() => undefined));
    return this.#writing;
  }

  async #write() {
    for (const [key, form] of [...this.#changed]) {
      this.#changed.delete(key);
      this.#underWay.set(key, form);
      // A phone that is full keeps the form on the screen; what is recorded says so by itself.
      await makingRoom(this.#store, () => this.#store.saveDraft(key, form)).catch(() => undefined);
      this.#underWay.delete(key);
    }
  }
}

/** Leave forms with the tab; a form with a picture is not left, for a tab keeps only text. @param {Array<[string, Form]>} forms */
function leave(forms) {
  try {
    const texts = forms.filter(([, form]) => isText(form));
    sessionStorage.setItem(LEFT, JSON.stringify(texts));
  } catch {
    // Nothing is kept there, or it is full: what was written before is there all the same.
  }
}

/** Take what was left with the tab. @returns {Array<[string, Form]>} */
function takeLeft() {
  try {
    const left = JSON.parse(sessionStorage.getItem(LEFT) ?? '[]');
    sessionStorage.removeItem(LEFT);
    return left;
  } catch {
    return [];
  }
}

/** Whether a value comes out of JSON as it went in. @param {any} value @returns {boolean} */
function isText(value) {
  if (value === null || typeof value !== 'object') return typeof value !== 'bigint';
  if (!Array.isArray(value) && Object.getPrototypeOf(value) !== Object.prototype) return false;
  return Object.values(value).every(isText);
}
