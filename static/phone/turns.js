// @ts-check
/**
 * One after the other, in the order in which they came: whatever changes the same thing takes turns.
 */

/** The turns at one thing. */
export class Turns {
  /** @type {Promise<unknown>} */
  #last = Promise.resolve();

  /**
   * Do `work` once everything before it is over, whether that went well or not.
   * @template T
   * @param {() => Promise<T> | T} work
   * @returns {Promise<T>}
   */
  run(work) {
    const turn = this.#last.then(work);
    this.#last = turn.catch(() => undefined);
    return turn;
  }
}
