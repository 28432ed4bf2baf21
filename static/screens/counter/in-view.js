// @ts-check
/**
 * What the camera has in view just now, and what of it is done with: a label that still lies there after its
 * decision is no new event until it has left the picture.
 */

/** Not seen for this long, nor in so many pictures in a row, a code has left: a busy phone looks at one in seconds. */
const GONE_MS = 1500;
const GONE_PICTURES = 3;
/**
 * How long one look at a part lasts: label and symbol read within it, and no other label between, are of one part.
 * Common practice, no source.
 */
const LOOK_MS = 5000;

/** The codes in view. */
export class InView {
  /** When each was seen last, and in how many pictures since then not. @type {Map<string, {at: number, missed: number}>} */
  #seen = new Map();
  /** @type {Set<string>} */
  #doneWith = new Set();
  /** When the label at hand, or a symbol of its part, was seen last. */
  #lookedAt = -LOOK_MS;
  /** When the screen showed what was read of it last. */
  #shownAt = -LOOK_MS;
  #isToBeShown = false;
  /** The label at hand, then the symbols that were read with it. @type {string[]} */
  #own = [];

  /** @param {string[]} texts  of one picture */
  picture(texts) {
    const now = performance.now();
    for (const seen of this.#seen.values()) seen.missed += 1;
    for (const text of texts) this.#seen.set(text, { at: now, missed: 0 });
    for (const [text, { at, missed }] of this.#seen) {
      if (now - at <= GONE_MS || missed < GONE_PICTURES) continue;
      this.#seen.delete(text);
      this.#doneWith.delete(text);
    }
    if (texts.includes(this.#own[0])) this.#lookedAt = now;
  }

  /** The part at hand was decided on, or put aside; it may stay in view. */
  done() {
    for (const text of this.#own) if (this.#seen.has(text)) this.#doneWith.add(text);
    this.#own = [];
    this.#lookedAt = this.#shownAt = -LOOK_MS;
  }

  /** The camera is opened or closed: whatever it shows next is shown on purpose. */
  forget() {
    this.#seen.clear();
    this.#doneWith.clear();
  }

  /** @param {string} text */
  isDoneWith(text) {
    return this.#doneWith.has(text);
  }

  /**
   * The part at hand is looked at.
   * @param {string} label
   * @param {string[]} symbols  read with it
   * @param {number} at         when, by performance.now(): a slow phone may come to it much later
   */
  look(label, symbols, at) {
    if (this.#own[0] !== label) this.#own = [label];
    this.#own.push(...symbols);
    this.#lookedAt = Math.max(this.#lookedAt, at);
    this.#isToBeShown = true;
  }

  /** The screen shows what was read: on a slow computer whoever waits for that goes on only now. */
  shown() {
    if (this.#isToBeShown) this.#shownAt = performance.now();
    this.#isToBeShown = false;
  }

  /**
   * Whether what was read then belongs to the part whose label was read last. What was read unseen, long after the
   * label and before its proposal, does not.
   * @param {number} at
   */
  isSameLook(at) {
    return at - this.#lookedAt < LOOK_MS || (at >= this.#shownAt && at - this.#shownAt < LOOK_MS);
  }
}
