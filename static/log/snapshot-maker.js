// @ts-check
/**
 * Makes a snapshot of the core's state now and then, while nobody waits for the core.
 */

import { lengthOf } from './order.js';

/** From so many entries on, folding them at the next start would be felt. */
const WORTH_ENTRIES = 300;
const QUIET_MS = 3000;
/** So many jobs are asked for at once: between two questions a tap may come. */
const JOBS_AT_ONCE = 20;
/** A log of so many entries leaves a worker that takes much more memory than what it has to know. */
const MUCH_MEMORY = 2000;

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
    const { position, fresh } = this.#feed.standing;
    if (!position) return false;
    const { jobs: closed } = await this.#core.call('closed_jobs');
    /** @type {Record<string, string>} */
    const texts = {};
    for (let at = 0; at < closed.length; at += JOBS_AT_ONCE) {
      const { jobs } = await this.#core.call('job_pieces', { jobs: closed.slice(at, at + JOBS_AT_ONCE) });
      for (const [job, piece] of Object.entries(jobs)) texts[job] = JSON.stringify(piece);
    }
    const head = await this.#head();
    if (this.#feed.standing.position !== position || head.count !== lengthOf(position)) return false;
    const text = JSON.stringify(head);
    const core = this.#core.digest;
    if (!(await this.#feed.snapshots.write({ core, position, text }, texts))) return false;
    this.#feed.noteSnapshot(position);
    if (fresh >= MUCH_MEMORY) await this.#core.renew();
    else await this.#core.call('unload_jobs', { jobs: closed, count: head.count });
    return true;
  }

  /**
   * The head of a snapshot, put together of its parts.
   * @returns {Promise<Record<string, any>>}
   */
  async #head() {
    /** @type {Record<string, any>} */
    const head = {};
    for (let part = 0, of = 1; part < of; part += 1) {
      const answer = await this.#core.call('snapshot', { part });
      ({ of } = answer);
      for (const [field, some] of Object.entries(answer.head)) {
        head[field] = field in head ? Object.assign(head[field], some) : some;
      }
    }
    return head;
  }
}
