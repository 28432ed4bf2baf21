// @ts-check
/**
 * Who else is at the job on the screen, in one line that the core words. Nothing of it is on record.
 */

import { observable } from '../../phone/observable.js';

/** @typedef {import('../../core/views.js').JobView} JobView */
/** @typedef {import('../../sync/news.js').Place} Place */

/** The line about the others. */
export class OthersLine {
  /** @param {{core: import('../../core/client.js').Core, sync: import('../../sync/sync.js').Syncing}} parts */
  constructor({ core, sync }) {
    this.#core = core;
    this.#sync = sync;
  }

  #core;
  #sync;
  /** Empty where nobody else is there. */
  line = observable('');
  /** @type {Place | null} */
  #place = null;

  /** Hear of others from now on. */
  start() {
    this.#sync.others.subscribe((others) => this.#word(others));
  }

  /**
   * Say which job this screen shows. A page beside the step leaves whoever looks at it where they were.
   * @param {string} job  empty for none
   * @param {Partial<JobView> | null} shown  what the screen has of it
   */
  show(job, shown) {
    const doing = shown?.id === job ? shown.doing : undefined;
    if (!job) this.#place = null;
    else if (doing) this.#place = { job, doing: doing.what, positions: doing.positions };
    else if (this.#place?.job !== job) this.#place = { job, doing: '', positions: [] };
    this.#sync.at(this.#place);
  }

  /** @param {import('../../sync/news.js').Others} others */
  async #word({ job, people }) {
    const said = people.length && this.#core.available ? await this.#core.call('others', { job, people }).catch(() => '') : '';
    if (job === this.#sync.others.value.job && said !== this.line.value) this.line.set(said);
  }
}
