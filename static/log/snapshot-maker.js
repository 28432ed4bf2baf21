// @ts-check
/**
 * Makes a snapshot of the core's state now and then, while nobody waits for the core.
 */

import { compactText } from '../core/compact.js';
import { lengthOf } from './order.js';

/** From so many entries on, folding them at the next start would be felt. */
const WORTH_ENTRIES = 300;
const QUIET_MS = 3000;
/** So many jobs are asked for at once: between two questions a tap may come. */
const JOBS_AT_ONCE = 20;
/** So long nobody may have asked the core before it is asked for more of a long log, */
const CALM_MS = 500;
/** but it is all the same after so long. */
const LONGEST_WAIT_MS = 5000;
/** A log of so many entries leaves a worker that takes much more memory than what it has to know. */
const MUCH_MEMORY = 2000;

const QUIETLY = { nobodyWaits: true };

/** Of one core and what feeds it. */
export class SnapshotMaker {
  /**
   * @param {import('../core/client.js').Core} core
   * @param {import('./core-feed.js').CoreFeed} feed
   * @param {{quietMs?: number}} [options]
   */
  constructor(core, feed, { quietMs = QUIET_MS } = {}) {
    this.#core = core;
    this.#feed = feed;
    this.#quietMs = quietMs;
  }

  #core;
  #feed;
  #quietMs;
  #timer = 0;

  /** The log may have grown: make one once it is quiet, if it is worth it. */
  consider() {
    clearTimeout(this.#timer);
    if (this.#feed.standing.fresh < WORTH_ENTRIES || !this.#core.available || !this.#core.digest) return;
    this.#timer = setTimeout(() => this.make().catch(() => undefined), this.#quietMs);
  }

  /**
   * Make one now.
   * @returns {Promise<boolean>} false where the log moved on meanwhile, or it could not be kept
   */
  async make() {
    // A little is kept in one, which leaves what there is a whole snapshot of as it is.
    if (this.#mostIsFresh() && !(await this.#keepMost())) return false;
    const { position, fresh } = this.#feed.standing;
    if (!position) return false;
    const { jobs: closed } = await this.#core.call('closed_jobs');
    /** @type {Record<string, string>} */
    const jobs = {};
    for (let at = 0; at < closed.length; at += JOBS_AT_ONCE) {
      Object.assign(jobs, await this.#pieces(closed.slice(at, at + JOBS_AT_ONCE)));
    }
    const { texts, count } = await this.#head();
    if (this.#feed.standing.position !== position || count !== lengthOf(position)) return false;
    const core = this.#core.digest;
    if (!(await this.#feed.snapshots.write({ core, position, texts }, jobs))) return false;
    this.#feed.noteSnapshot(position);
    if (fresh >= MUCH_MEMORY) await this.#core.renew();
    else await this.#core.call('unload_jobs', { jobs: closed, count });
    return true;
  }

  #mostIsFresh() {
    const { position, fresh } = this.#feed.standing;
    return position !== null && (!this.#feed.snapshots.whole || fresh * 2 > lengthOf(position));
  }

  /**
   * Keep the closed jobs, some at a time, until only a few are in the core's memory: all of a long log take long,
   * and what is done stays done, whatever comes in meanwhile and should the app be closed.
   * @returns {Promise<boolean>} false where the log moved on meanwhile, or they could not be kept
   */
  async #keepMost() {
    for (;;) {
      await this.#letOthersAsk();
      const { position } = this.#feed.standing;
      if (!position) return false;
      const { jobs: closed } = await this.#core.call('closed_jobs', {}, QUIETLY);
      if (closed.length <= JOBS_AT_ONCE) return true;
      const jobs = closed.slice(0, JOBS_AT_ONCE);
      const texts = await this.#pieces(jobs);
      if (this.#feed.standing.position !== position) return false;
      const digests = await this.#feed.snapshots.keep(texts);
      if (!digests) return false;
      const { unloaded } = await this.#core.call('unload_jobs', { jobs, count: lengthOf(position) }, QUIETLY);
      if (!unloaded) return false;
      if (!(await this.#feed.snapshots.haveLeft({ core: this.#core.digest, position }, digests))) return false;
    }
  }

  async #letOthersAsk() {
    for (const begun = performance.now(); performance.now() - begun < LONGEST_WAIT_MS; ) {
      const left = this.#core.waitedAt + CALM_MS - performance.now();
      if (left <= 0) return;
      await new Promise((resolve) => setTimeout(resolve, left));
    }
  }

  /**
   * Some jobs, as texts.
   * @param {string[]} jobs
   * @returns {Promise<Record<string, string>>}
   */
  async #pieces(jobs) {
    const answer = await this.#core.call('job_pieces', { jobs }, QUIETLY);
    return Object.fromEntries(Object.entries(answer.jobs).map(([job, piece]) => [job, JSON.stringify(piece)]));
  }

  /**
   * The head of a snapshot in parts, as the core takes them back, and of how many entries it is.
   * @returns {Promise<{texts: string[], count: number}>}
   */
  async #head() {
    const texts = [];
    let count = 0;
    for (let part = 0, of = 1; part < of; part += 1) {
      const answer = await this.#core.call('snapshot', { part });
      if (part && answer.count !== count) return { texts: [], count: 0 };
      ({ of, count } = answer);
      texts.push(compactText({ head: answer.head }));
    }
    return { texts, count };
  }
}
