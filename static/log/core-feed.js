// @ts-check
/**
 * Keeps the core's state in step with the stored log: hands over what it has not folded, puts in what came before
 * the unsent end, and gives a new worker its state back, from a snapshot where one holds.
 */

import { CoreError } from '../core/client.js';
import { compactText } from '../core/compact.js';
import { BesideTheLog } from './beside-the-log.js';
import { CHUNK, insertionOf, LogOrder, lengthOf, nameOf } from './order.js';
import { Snapshots } from './snapshots.js';
import { say } from '../words/words.js';

const TRIES = 20;
const CHECK_SECONDS = 10; // a person stands there with a part in hand
/** For so many entries a call may take a second more: a long log is folded in one. */
const ENTRIES_A_SECOND = 500;
const REFILL_SECONDS = 30;

/** Feeds one core from one store. */
export class CoreFeed {
  /**
   * @param {import('./store.js').Store} store
   * @param {import('../core/client.js').Core} core
   */
  constructor(store, core) {
    this.snapshots = new Snapshots();
    this.#core = core;
    this.#order = new LogOrder(store);
    this.#beside = new BesideTheLog(store);
    core.keptBy({
      refill: (ask) => this.#refill(ask),
      supply: (missing, ask) => this.#supply(missing, ask),
    });
  }

  #core;
  #order;
  #beside;
  /** Up to where the core has folded; a new object for each change. @type {import('./order.js').Position | null} */
  #folded = null;
  /** Whether the core has only what follows on a snapshot in memory, and of that the state. */
  #inPart = false;
  /** How much of it came from no snapshot. */
  #fresh = 0;
  /** What the core has taken and the store not yet. @type {{names: string[], restarts: number} | null} */
  #taken = null;

  /** Up to where the core has folded, and how many of these entries no snapshot has. */
  get standing() {
    return { position: this.#folded, fresh: this.#fresh };
  }

  /** A snapshot was made of this position. @param {import('./order.js').Position} position */
  noteSnapshot(position) {
    if (this.#folded) this.#fresh = lengthOf(this.#folded) - lengthOf(position);
  }

  /**
   * All entries in order.
   * @returns {Promise<import('./store.js').StoredEvent[]>}
   */
  ordered() {
    return this.#order.whole();
  }

  /**
   * Bring the core up to date; call it under the log's lock.
   * @returns {Promise<any[]>} conflicts that new entries brought
   */
  async bringUpToDate() {
    for (let tried = 0; tried < TRIES && this.#core.available; tried += 1) {
      const { restarts } = this.#core;
      /** @type {import('../core/client.js').Ask} */
      const ask = (op, args, options) => this.#core.call(op, args, { ...options, onlyAfterRestarts: restarts });
      try {
        if (!this.#folded) await this.#fill(ask);
        await this.#beside.tellPhones(ask);
        await this.#beside.tellLabels(ask);
        return await this.#follow(ask);
      } catch (error) {
        if (!(error instanceof CoreError)) throw error;
        // A restart has read the log again by itself; look once more what is missing.
        if (error.broken) continue;
        this.#core.giveUp(say('troubles-log-not-read', { error: String(error) }));
      }
    }
    return [];
  }

  /**
   * Let the core check drafts and, where no rule stands against them, fold them as these entries. They have to be
   * `saved` next, or `notSaved`. Call it under the log's lock, with the core up to date.
   * @param {object[]} drafts  as the core's `check` wants them
   * @param {import('./store.js').StoredEvent[]} entries
   * @param {import('../core/client.js').Question | null} following  what the screen will ask then
   * @returns {Promise<{refusal: any, conflicts: any[]}>}
   */
  async record(drafts, entries, following) {
    const { restarts } = this.#core;
    const envelopes = entries.map(({ event }) => ({ event }));
    const options = { onlyAfterRestarts: restarts, seconds: CHECK_SECONDS, following };
    const answer = await this.#core.call('check_and_add', { events: drafts, envelopes }, options);
    if (!answer.refusal) this.#taken = { names: namesOf(entries), restarts };
    return { refusal: answer.refusal, conflicts: answer.conflicts ?? [] };
  }

  /**
   * What was recorded is stored.
   * @param {import('./store.js').StoredEvent[]} entries  as they are stored
   */
  saved(entries) {
    const taken = this.#taken;
    this.#taken = null;
    // A worker that was started meanwhile has read the store, perhaps before these were in it.
    if (!taken || !this.#folded || taken.restarts !== this.#core.restarts) return;
    if (taken.names.join() !== namesOf(entries).join()) {
      this.#folded = null;
      return;
    }
    this.#folded = { ...this.#folded, unsent: [...this.#folded.unsent, ...taken.names] };
    this.#fresh += taken.names.length;
  }

  /** It is not: the core knows what is in no log, and has to forget it. */
  notSaved() {
    if (this.#taken) this.#folded = null;
    this.#taken = null;
  }

  /**
   * Hand over what follows on what the core has.
   * @param {import('../core/client.js').Ask} ask
   * @param {boolean} [again]  the core has just got its snapshot back
   * @returns {Promise<any[]>}
   */
  async #follow(ask, again = false) {
    const before = /** @type {import('./order.js').Position} */ (this.#folded);
    const now = await this.#order.since(before);
    const place = now && insertionOf(before.unsent, now.numbered.concat(now.unsent));
    if (!now || !place) {
      await this.#giveWhole(ask);
      return [];
    }
    const { at, inserted, behind } = place;
    // Most of it is new: folded in one, and given in parts.
    if (behind.length > Math.max(CHUNK, lengthOf(before))) {
      await this.#giveWhole(ask);
      return [];
    }
    // Folded back to the snapshot and on from there it needs no log; but what is unsent may be in the snapshot.
    if (inserted.length && this.#inPart && !again) {
      await this.#fill(ask);
      return this.#follow(ask, true);
    }
    const conflicts = [];
    if (inserted.length) {
      const events = await this.#events(inserted);
      conflicts.push(...(await ask('insert', { events, at: before.count + at })).conflicts);
    }
    if (behind.length) conflicts.push(...(await ask('add', { events: await this.#events(behind) })).conflicts);
    if (!now.numbered.length && !inserted.length && !behind.length) return conflicts;
    const { n, hash } = now;
    this.#folded = { ...before, n, hash, count: before.count + now.numbered.length, unsent: now.unsent };
    this.#fresh += inserted.length + behind.length;
    return conflicts;
  }

  /**
   * Give a core that was started again its state back, and what came after the snapshot: what is asked next is about
   * all of the log.
   * @param {import('../core/client.js').Ask} ask
   */
  async #refill(ask) {
    await this.#fill(ask);
    await this.#beside.tellLabels(ask);
    await this.#follow(ask);
  }

  /**
   * Give a core that knows nothing its state back, up to where a snapshot was made.
   * @param {import('../core/client.js').Ask} ask
   */
  async #fill(ask) {
    this.#folded = null;
    this.#taken = null;
    this.#beside.forgotten();
    const kept = await this.snapshots.read(this.#core.digest);
    const begun = await this.snapshots.begun(this.#core.digest);
    // One that was begun has more than twice of what a whole one has.
    if (begun && (await this.#order.holds(begun.position))) {
      await this.#give(ask, begun.position);
      const jobs = Object.keys(begun.jobs);
      const { unloaded } = await ask('unload_jobs', { jobs, count: lengthOf(begun.position) });
      if (unloaded) this.snapshots.goOnWith(begun);
      this.#folded = begun.position;
      this.#fresh = lengthOf(begun.position);
      return;
    }
    if (kept && (await this.#order.holds(kept.position))) {
      const last = kept.texts.length - 1;
      for (const [at, compact] of kept.texts.entries()) await ask('restore', { more: at < last }, { raw: { compact } });
      await this.#beside.tellPhones(ask);
      this.#folded = kept.position;
      this.#inPart = true;
      this.#fresh = 0;
      return;
    }
    await this.#giveWhole(ask);
  }

  /** @param {import('../core/client.js').Ask} ask */
  async #giveWhole(ask) {
    this.#folded = null;
    const position = await this.#order.end();
    await this.#give(ask, position);
    this.#folded = position;
    this.#fresh = lengthOf(position);
  }

  /**
   * Give all entries up to a position, some at a time, so that none of them is in memory twice.
   * @param {import('../core/client.js').Ask} ask
   * @param {import('./order.js').Position} position
   */
  async #give(ask, position) {
    const seconds = REFILL_SECONDS + lengthOf(position) / ENTRIES_A_SECOND;
    await this.#beside.beginAnew(ask);
    for await (const entries of this.#order.upTo(position)) {
      const compact = compactText({ envelopes: entries.map(({ event }) => event) });
      await ask('append', { more: true }, { raw: { compact } });
    }
    await ask('append', {}, { seconds });
    this.#inPart = false;
    this.snapshots.goOnWith(null);
  }

  /**
   * @param {import('../core/client.js').Missing} missing
   * @param {import('../core/client.js').Ask} ask
   */
  async #supply({ jobs }, ask) {
    const texts = jobs ? await this.snapshots.jobs(jobs) : null;
    if (texts) {
      const pieces = Object.entries(texts).map(([job, text]) => `${JSON.stringify(job)}:${text}`);
      await ask('load_jobs', {}, { raw: { jobs: `{${pieces.join(',')}}` } });
      return;
    }
    if (this.#folded) await this.#give(ask, this.#folded);
    this.#fresh = this.#folded ? lengthOf(this.#folded) : 0;
  }

  /** @param {string[]} names */
  async #events(names) {
    return (await this.#order.named(names)).map(({ event }) => ({ event }));
  }
}

/** @param {import('./store.js').StoredEvent[]} entries */
function namesOf(entries) {
  return entries.map(({ device, seq }) => nameOf([device, seq]));
}
