// @ts-check
/**
 * The event log of this phone: asks the core, chains, saves, and keeps the core's state in step.
 *
 * An event is saved once its transaction has been committed, together with its photo; nothing is changed
 * or deleted afterwards. Two tabs may record at once: a lock orders them, and where a browser has no lock the head
 * of the chain, read and written in the same transaction, does.
 */

import { CoreError } from '../core/client.js';
import { appended, chain } from './append.js';
import { NotCanonical } from './canonical.js';
import { CoreFeed } from './core-feed.js';
import { LOG_LOCK, withLock } from '../phone/locks.js';
import { observable } from '../phone/observable.js';
import { SaveError } from './save-error.js';
import { SnapshotMaker } from './snapshot-maker.js';
import { isQuotaError, makingRoom } from './space.js';
import { say } from '../words/words.js';

/**
 * @typedef {object} Draft
 * @property {string} kind
 * @property {Record<string, any>} data
 * @property {string | null} [job]
 *
 * @typedef {object} Refusal      as the core's `check` gives it
 * @property {string} rule
 * @property {string} title
 * @property {string} sentence
 * @property {string} do
 * @property {boolean} override
 * @property {number} draft
 * @property {{field: string, found: string, wanted: string, message: string}} [fault]   where one field is wrong
 *
 * @typedef {object} Photo        as `preparePhoto` gives it
 * @property {ArrayBuffer} bytes
 * @property {string} mime
 * @property {string} sha256
 * @property {number} width
 * @property {number} height
 *
 * @typedef {object} Recorded
 * @property {import('./store.js').StoredEvent[]} events
 * @property {any[]} conflicts
 * @property {boolean} unchecked  saved although the core could not be asked

 */

/** The log. Open it with `openLog`. */
export class EventLog {
  /** @param {{store: import('./store.js').Store, core: import('../core/client.js').Core, device: import('./device.js').Device}} parts */
  constructor({ store, core, device }) {
    /** Counts up whenever the core's state may have changed; draw again then. */
    this.changes = observable(0);
    /** What could not be saved, until `retry` or `giveUp`. */
    this.unsaved = observable(/** @type {SaveError | null} */ (null));
    this.#store = store;
    this.#core = core;
    this.#device = device;
    this.#channel = new BroadcastChannel(LOG_LOCK);
    this.#channel.onmessage = () => this.#hearOtherTab();
    this.#feed = new CoreFeed(store, core);
    /** Makes the next start quick. */
    this.snapshotMaker = new SnapshotMaker(core, this.#feed);
  }

  #store;
  #core;
  #device;
  #feed;
  #channel;
  #catchingUp = false;

  /**
   * Record facts that belong together: all of them are saved, with the photo, or none.
   * @param {Draft[]} drafts
   * @param {{photo?: Photo, following?: import('../core/client.js').Question | null}} [options]
   *     following: what the screen will ask of the core then, to be answered in the same trip
   * @returns {Promise<{refusal: Refusal} | Recorded>}  throws SaveError when it could not be saved
   */
  async record(drafts, { photo, following = null } = {}) {
    if (!drafts.length) return { events: [], conflicts: [], unchecked: false };
    const outcome = await withLock(LOG_LOCK, async () => {
      await this.#feed.bringUpToDate();
      return this.#record(drafts, photo, following);
    });
    if ('events' in outcome) this.#tell();
    return outcome;
  }

  /** Try again to record what could not be saved. */
  async retry() {
    const unsaved = this.unsaved.value;
    if (!unsaved) return null;
    const { drafts, photo } = unsaved.entered;
    const outcome = await this.record(drafts, { photo });
    this.unsaved.set(null);
    return outcome;
  }

  /** Let go of what could not be saved; only on a person's word. */
  giveUp() {
    this.unsaved.set(null);
  }

  /**
   * Bring the core in step with the store, after a sync or another tab changed it.
   */
  async catchUp() {
    await withLock(LOG_LOCK, () => this.#feed.bringUpToDate());
    this.#tell();
  }

  /**
   * All events in order: by the server's number, then this phone's unsent ones.
   * @returns {Promise<import('./store.js').StoredEvent[]>}
   */
  ordered() {
    return this.#feed.ordered();
  }

  /**
   * Chain, ask the core and save, in this order: only what is checked is saved, and one question does for all.
   * @param {Draft[]} drafts
   * @param {Photo | undefined} photo
   * @param {import('../core/client.js').Question | null} following
   * @returns {Promise<{refusal: Refusal} | Recorded>}
   */
  async #record(drafts, photo, following) {
    const at = Date.now();
    const head = await this.#store.getMeta('head');
    const entries = await chain(drafts, head, this.#device.actor, at, false).catch(refusalOf);
    if ('refusal' in entries) return entries;
    const { refusal, conflicts, unchecked } = await this.#check(drafts, entries, following);
    if (refusal) return { refusal };
    try {
      const events = await this.#save(drafts, photo, unchecked, { at, head, entries });
      this.#feed.saved(events);
      // What could not be checked may be folded all the same, once the core runs again.
      const more = unchecked ? await this.#feed.bringUpToDate() : [];
      return { events, conflicts: conflicts.concat(more), unchecked };
    } catch (error) {
      this.#feed.notSaved();
      await this.#feed.bringUpToDate().catch(() => undefined);
      throw error;
    }
  }

  /**
   * Ask the core whether a rule stands against the drafts, and to fold them where none does. A core that hangs must
   * not lose a fact.
   * @param {Draft[]} drafts
   * @param {import('./store.js').StoredEvent[]} entries
   * @param {import('../core/client.js').Question | null} following
   * @returns {Promise<{refusal: Refusal | null, conflicts: any[], unchecked: boolean}>}
   */
  async #check(drafts, entries, following) {
    const { id: device, actor } = this.#device;
    const role = this.#device.role.value;
    const { oldest } = this.#device.server.standing.value;
    const asked = drafts.map(({ kind, data, job = null }) => ({ kind, data, job, actor, device, role, oldest }));
    for (let tried = 0; tried < 2 && this.#core.available; tried += 1) {
      try {
        return { ...(await this.#feed.record(asked, entries, following)), unchecked: false };
      } catch (error) {
        if (!(error instanceof CoreError && error.broken)) throw error;
      }
    }
    return { refusal: null, conflicts: [], unchecked: true };
  }

  /**
   * @param {Draft[]} drafts
   * @param {Photo | undefined} photo
   * @param {boolean} unchecked
   * @param {import('./append.js').Chained} chained
   */
  async #save(drafts, photo, unchecked, chained) {
    try {
      return await makingRoom(this.#store, () => appended(this.#store, chained, drafts, { photo, unchecked, actor: this.#device.actor }));
    } catch (error) {
      const unsaved = new SaveError(isQuotaError(error) ? 'full' : 'storage', { drafts, photo });
      unsaved.cause = error;
      this.unsaved.set(unsaved);
      throw unsaved;
    }
  }

  #tell() {
    this.#channel.postMessage('changed');
    this.snapshotMaker.consider();
    this.changes.set(this.changes.value + 1);
  }

  async #hearOtherTab() {
    if (this.#catchingUp) return;
    this.#catchingUp = true;
    try {
      await this.#device.reread();
      await withLock(LOG_LOCK, () => {
        this.#catchingUp = false;
        return this.#feed.bringUpToDate();
      });
      this.changes.set(this.changes.value + 1);
    } finally {
      this.#catchingUp = false;
    }
  }
}

/**
 * What cannot be chained because of how it was typed, refused in the core's words: it runs behind the chain, or not at all.
 * @param {unknown} error
 * @returns {{refusal: Refusal}}
 */
function refusalOf(error) {
  if (!(error instanceof NotCanonical && error.typed)) throw error;
  const fault = { field: error.path, found: say('refusals-found-half-pair'), wanted: say('refusals-whole-characters') };
  const message = say('refusals-bad-input', fault);
  const words = { title: say('rules-not-recorded-title'), sentence: message, do: say('rules-form-do') };
  return { refusal: { rule: 'bounds', ...words, override: false, draft: 0, fault: { ...fault, message } } };
}

/**
 * Open the log and fold what is stored.
 * @param {{store: import('./store.js').Store, core: import('../core/client.js').Core, device: import('./device.js').Device}} parts
 * @returns {Promise<EventLog>}
 */
export async function openLog(parts) {
  const log = new EventLog(parts);
  await log.catchUp();
  return log;
}
