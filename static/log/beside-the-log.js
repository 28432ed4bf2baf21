// @ts-check
/**
 * Tells the core what stands in no entry: what the server said of phones, and which labels it took out of use.
 */

import { peopleOf } from './device.js';

/** @typedef {import('../core/client.js').Ask} Ask */

/**
 * What is said of a phone from one of its entries on (`server/core/facts/whose.py`).
 * @typedef {{device: string, from: number, role: string, name: string, people: string[]}} Phone
 */

/** What one core has been told of it. */
export class BesideTheLog {
  /** @param {import('./store.js').Store} store */
  constructor(store) {
    this.#store = store;
  }

  #store;
  /** Up to where the core knows what is said of phones, and who shares this one. */
  #phones = '';
  /** How many labels that are out of use it knows. */
  #labelsOut = 0;

  /** The core has forgotten all of it. */
  forgotten() {
    this.#phones = '';
    this.#labelsOut = 0;
  }

  /**
   * Let the core begin with nothing but what is said of phones: entries are to follow.
   * @param {Ask} ask
   */
  async beginAnew(ask) {
    const { phones, known } = await this.#said();
    await ask('reset', { more: true, phones });
    this.#phones = known;
  }

  /**
   * Say of phones what is new; that comes before what they recorded.
   * @param {Ask} ask
   */
  async tellPhones(ask) {
    const { phones, known } = await this.#said();
    if (known !== this.#phones) await ask('phones', { phones });
    this.#phones = known;
  }

  /**
   * Say which labels a server took out of use, where it is not said yet: there are only ever more of them.
   * @param {Ask} ask
   */
  async tellLabels(ask) {
    const codes = (await this.#store.getMeta('labels_out')) ?? [];
    if (codes.length !== this.#labelsOut) await ask('labels_out', { codes });
    this.#labelsOut = codes.length;
  }

  /** What is said of phones, and a text that is another one once that has changed; '' while nothing is. */
  async #said() {
    const said = await this.#store.getMeta('phones');
    if (!said) return { phones: [], known: '' };
    const { rows, upto } = said;
    const people = await peopleOf(this.#store);
    const { device } = await this.#store.getMeta('head');
    // The server hears of those with the next exchange.
    const last = rows.findLast((/** @type {Phone} */ row) => row.device === device);
    const phones = rows.map((/** @type {Phone} */ row) => (row === last ? { ...row, people: [...row.people, ...people] } : row));
    return { phones, known: [upto, ...people].join('\n') };
  }
}
