// @ts-check
/**
 * How sending stands, as the screens say it: what waits, whether a run is on, and what stands against it.
 */

import { isQuotaError } from '../log/space.js';
import { observable } from '../phone/observable.js';
import { ApiError } from './request.js';
import { countUnsent, firstRefusal } from './unsent.js';
import { render, say } from '../words/words.js';

/**
 * @typedef {'sent' | 'not sent' | 'sending' | 'not paired' | 'server unreachable' | 'server in trouble' | 'refused'
 *   | 'no server'} SyncState  the last: alone/no-server.js
 *
 * @typedef {object} SyncStatus
 * @property {SyncState} state
 * @property {number} unsentEvents
 * @property {number} unsentJobs          that unsent entries belong to
 * @property {number} unsentLoose         unsent entries that belong to no job
 * @property {number} unsentPhotos
 * @property {number} unsentBytes         of the unsent photos
 * @property {number | null} oldestUnsentAt  this phone's clock, ms
 * @property {number | null} lastSyncAt      this phone's clock, ms
 * @property {number | null} nextTryAt       when it is tried again by itself after a failure; this phone's clock
 * @property {import('./received.js').LostPhoto[]} lostPhotos  that the server had and has not any more
 * @property {boolean} moreToCome         the server has entries that are not here, or not in the views yet
 * @property {{events: number, photos: number} | null} toSend  what the present run has to send in all
 * @property {string} sentence            what stands against sending; empty when nothing does
 */

/** Before anything was looked at. @type {SyncStatus} */
export const NOT_YET = {
  state: 'not sent',
  unsentEvents: 0,
  unsentJobs: 0,
  unsentLoose: 0,
  unsentPhotos: 0,
  unsentBytes: 0,
  oldestUnsentAt: null,
  lastSyncAt: null,
  nextTryAt: null,
  lostPhotos: [],
  moreToCome: false,
  toSend: null,
  sentence: '',
};

/** The status of one phone. */
export class Status {
  /**
   * @param {import('../log/store.js').Store} store
   * @param {import('../log/device.js').Device} device
   */
  constructor(store, device) {
    this.observed = observable(NOT_YET);
    this.#store = store;
    this.#device = device;
  }

  #store;
  #device;

  get state() {
    return this.observed.value.state;
  }

  /** Count again what waits; 'sent' and 'not sent' follow from it, in whichever tab it was sent. */
  async count() {
    const waiting = await countUnsent(this.#store);
    const something = waiting.unsentEvents + waiting.unsentPhotos > 0;
    const { state } = this.observed.value;
    const counted = something ? 'not sent' : 'sent';
    const next = state === 'sent' || state === 'not sent' ? counted : state;
    // What the last page brought counts as here only after its run, which folds it.
    const moreToCome = this.observed.value.moreToCome || ((await this.#store.getMeta('more_to_come')) ?? false);
    this.set({ ...waiting, state: next, moreToCome });
    return something;
  }

  /** Count again after a photo was sent. @param {string} sha256 */
  photoSent(sha256) {
    this.set({ lostPhotos: this.observed.value.lostPhotos.filter((lost) => lost.sha256 !== sha256) });
    return this.count();
  }

  /**
   * Change the status; `toSend` follows from it.
   * @param {Partial<SyncStatus>} change
   */
  set(change) {
    const next = { ...this.observed.value, ...change };
    const { events, photos } = next.toSend ?? { events: 0, photos: 0 };
    const toSend = { events: Math.max(events, next.unsentEvents), photos: Math.max(photos, next.unsentPhotos) };
    this.observed.set({ ...next, toSend: next.state === 'sending' ? toSend : null });
  }

  /** Say how a run ended that nothing stood against. */
  async sayOutcome() {
    this.set({ moreToCome: false });
    const something = await this.count();
    const refusal = something ? await firstRefusal(this.#store) : '';
    const older = this.#device.server.isOlder ? say('troubles-older-server') : '';
    if (refusal) this.say('refused', render({ figure: 'sentences', of: [older, refusal] }));
    else this.say(something ? 'not sent' : 'sent', '');
    this.set({ lastSyncAt: Date.now() });
  }

  /** Say what a run ended with. @param {unknown} error */
  sayFailure(error) {
    if (isQuotaError(error)) {
      this.say('not sent', say('troubles-full-noting'));
    } else if (!(error instanceof ApiError)) {
      this.say('not sent', say('troubles-not-finished', { error: String(error) }));
    } else if (error.kind === 'in trouble') {
      this.say('server in trouble', error.sentence);
    } else if (error.kind === 'not paired' || error.kind === 'refused') {
      this.say(error.kind, error.sentence);
    } else {
      this.say('server unreachable', error.sentence);
    }
  }

  /**
   * @param {SyncState} state
   * @param {string} sentence
   */
  say(state, sentence) {
    this.set({ state, sentence });
  }
}
