// @ts-check
/**
 * Records what a person enters, one tap at a time, and keeps what stands against it: a rule's refusal, or
 * a phone that could not save.
 */

import { SaveError } from '../../log/save-error.js';
import { say } from '../../words/words.js';
import { sayNow } from './aloud.js';

const BUSY_SHOWS_AFTER_MS = 250;
/** For so long the last entry can be taken back by one tap. */
const UNDO_MS = 15_000;
/** Once that is done, so can the one before, if it is no older: what one hand did in one go. */
const FRESH_MS = 60_000;
/** The second tap of a double tap takes nothing more back. */
const DOUBLE_TAP_MS = 500;
/** The reason of such a correction, as a code that the core has words for. */
export const SLIP = 'slip';
/** What is no slip, or cannot be taken back. */
const STAYS = new Set(['corrected', 'put_right', 'job_opened', 'mixup_stopped', 'caution_acknowledged']);

/**
 * @typedef {object} ActOptions
 * @property {import('../../log/log.js').Photo} [photo]  saved in the same transaction
 * @property {() => unknown} [after]              once it is recorded and the screen has loaded again
 * @property {import('../../log/log.js').Draft[]} [otherwise]  the same facts in another order, tried where a rule stands against this one
 * @property {string | null} [job]                the job of the drafts; that of the screen when left out
 * @property {boolean} [takesBack]                the drafts take back the last entry
 *
 * @typedef {object} Fresh  an entry of the last minute
 * @property {import('../../log/log.js').Draft[]} corrections  what takes it back
 * @property {number} at                          when it was recorded, by the clock that only goes forward
 *
 * @typedef {object} StandingRefusal
 * @property {import('../../log/log.js').Refusal} refusal
 * @property {(reason: string) => Promise<boolean>} override  record it all the same, with a reason
 * @property {() => void} close
 */

/** The recorder of the app. */
export class Recorder {
  /**
   * @param {object} parts
   * @param {import('../../log/log.js').EventLog} parts.log
   * @param {() => string | null} parts.job             the job of the present screen
   * @param {() => import('../../core/client.js').Question | null} parts.following  what the screen asks after a record
   * @param {() => string} parts.place                  tells the present screen from others
   * @param {() => Promise<void>} parts.loaded          the load that a record has set off
   * @param {() => void} parts.redraw
   */
  constructor({ log, job, following, place, loaded, redraw }) {
    /** @type {StandingRefusal | null} */
    this.refusal = null;
    /** Recording has taken long enough to say so. */
    this.busy = false;
    /** Takes the last entry back, for a while after it. @type {import('./frame.js').Button | null} */
    this.undo = null;
    /** Tries again what could not be saved. @type {(() => Promise<boolean>) | null} */
    this.saveAgain = null;
    this.#log = log;
    this.#job = job;
    this.#following = following;
    this.#place = place;
    this.#loaded = loaded;
    this.#redraw = redraw;
  }

  #log;
  #job;
  #following;
  #place;
  /** What `saveAgain` is about: the same entry, tapped again, takes its place. */
  #unsaved = '';
  #loaded;
  #redraw;
  #acting = false;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #undoEnds;
  /** The entries that can be taken back, the last one last. @type {Fresh[]} */
  #fresh = [];
  /** Their job. @type {string | null} */
  #undoOf = null;

  /**
   * Record facts that belong together.
   * @param {import('../../log/log.js').Draft[]} drafts
   * @param {ActOptions} [options]
   * @returns {Promise<boolean>} true when they are on record
   */
  act = async (drafts, options = {}) => {
    // A second tap while the first is being recorded means the same thing.
    if (this.#acting) return false;
    const entry = [this.#place(), ...drafts.map(({ kind }) => kind)].join(' ');
    // Another entry must not push out what could not be saved before it: that one goes first.
    if (this.saveAgain && entry !== this.#unsaved && !(await this.saveAgain())) return false;
    return this.#recordOnce(drafts, options, entry);
  };

  /**
   * @param {import('../../log/log.js').Draft[]} drafts
   * @param {ActOptions} options
   * @param {string} entry
   */
  async #recordOnce(drafts, options, entry) {
    this.#acting = true;
    const late = setTimeout(() => this.#setBusy(true), BUSY_SHOWS_AFTER_MS);
    try {
      return await this.#record(drafts, options, entry);
    } finally {
      clearTimeout(late);
      this.#acting = false;
      this.#setBusy(false);
    }
  }

  /** @param {boolean} busy */
  #setBusy(busy) {
    if (busy === this.busy) return;
    this.busy = busy;
    this.#redraw();
  }

  /**
   * @param {import('../../log/log.js').Draft[]} drafts
   * @param {ActOptions} options
   * @param {string} entry
   */
  async #record(drafts, options, entry) {
    const { photo, after, otherwise, job = this.#job() } = options;
    // Saved again from another screen it is still of the job of this one.
    const again = { ...options, job };
    this.refusal = null;
    this.saveAgain = null;
    try {
      const record = (/** @type {import('../../log/log.js').Draft[]} */ tried) => {
        const inJob = tried.map(({ kind, data }) => ({ kind, data, job }));
        return this.#log.record(inJob, { photo, following: this.#following() });
      };
      let outcome = await record(drafts);
      if ('refusal' in outcome && otherwise) outcome = await record(otherwise);
      if ('refusal' in outcome) {
        this.#refuse(outcome.refusal, drafts, again);
        return false;
      }
      this.#keepFresh(outcome.events, job, options.takesBack ?? false);
    } catch (error) {
      if (!(error instanceof SaveError)) throw error;
      this.#unsaved = entry;
      this.saveAgain = async () => {
        if (this.#acting) return false;
        this.#log.giveUp();
        return this.#recordOnce(drafts, again, entry);
      };
      this.#redraw();
      return false;
    }
    await this.#loaded();
    after?.();
    return true;
  }

  /**
   * Offer to take back what was just recorded, all of one tap at once; after that the one before it.
   * @param {import('../../log/store.js').StoredEvent[]} events
   * @param {string | null} job
   * @param {boolean} takesBack
   */
  #keepFresh(events, job, takesBack) {
    const now = performance.now();
    const earlier = job === this.#undoOf ? this.#fresh : [];
    const taken = events.filter(({ event }) => !STAYS.has(event.kind));
    const corrections = taken.map(({ device, seq }) => ({ kind: 'corrected', data: { device, seq, reason: SLIP, over: [] }, job }));
    const last = taken.length ? [...earlier, { corrections, at: now }] : [];
    this.#undoOf = job;
    this.#fresh = (takesBack ? earlier.slice(0, -1) : last).filter(({ at }) => now - at < FRESH_MS);
    clearTimeout(this.#undoEnds);
    const entry = job === null ? undefined : this.#fresh.at(-1);
    this.undo = entry ? { words: say('frame-undo'), run: () => this.#takeBack(entry), disabled: takesBack } : null;
    this.#undoEnds = takesBack && entry ? setTimeout(() => this.#offer(), DOUBLE_TAP_MS) : this.#forgetLater();
  }

  #offer() {
    if (this.undo) this.undo.disabled = false;
    this.#undoEnds = this.#forgetLater();
    this.#redraw();
  }

  #forgetLater() {
    return setTimeout(() => this.forgetUndo(), UNDO_MS);
  }

  /** Another screen is opened: on one of the same job the entry can still be taken back. @param {string | undefined} job */
  arrive = (job) => {
    if (job !== this.#undoOf) this.forgetUndo();
  };

  /** What was recorded stays; a correction goes by the history from now on. */
  forgetUndo = () => {
    clearTimeout(this.#undoEnds);
    this.#fresh = [];
    if (!this.undo) return;
    this.undo = null;
    this.#redraw();
  };

  /**
   * What hangs together is taken back in the order in which that leaves no contradiction: either it was
   * recorded in, or the other way round.
   * @param {Fresh} entry
   */
  async #takeBack({ corrections }) {
    if (this.#acting) return;
    const options = { job: this.#undoOf, takesBack: true, otherwise: [...corrections].reverse() };
    if (!(await this.act(corrections, options)) && !this.saveAgain) this.forgetUndo();
  }

  /**
   * @param {import('../../log/log.js').Refusal} refusal
   * @param {import('../../log/log.js').Draft[]} drafts
   * @param {ActOptions} options
   */
  #refuse(refusal, drafts, options) {
    const withReason = (/** @type {string} */ reason) =>
      drafts.map((draft, n) =>
        n === refusal.draft ? { ...draft, data: { ...draft.data, override: reason } } : draft,
      );
    this.refusal = {
      refusal,
      override: (reason) => this.act(withReason(reason), options),
      close: () => {
        this.refusal = null;
        this.#redraw();
      },
    };
    sayNow([refusal.title, refusal.sentence, refusal.do]);
    this.#redraw();
    document.querySelector('.refusal')?.scrollIntoView({ block: 'nearest' });
  }
}
