// @ts-check
/**
 * What is in view of the scanner's camera, and what of it is news.
 */

/** A code that left the picture for this long counts as shown again when it comes back. */
const GONE_MS = 1500;
/** Symbols of bars alone have a weak check: one counts when two pictures in a row say the same. */
const LINEAR = new Set(['code_128']);

/** Tells each set of codes once, however many frames it stays in view. */
export class Sighting {
  /**
   * @param {(texts: string[]) => void} onTexts
   * @param {(texts: string[]) => void} [onPicture]
   */
  constructor(onTexts, onPicture) {
    this.#onTexts = onTexts;
    this.#onPicture = onPicture;
  }

  #onTexts;
  #onPicture;
  #last = '';
  #lastAt = 0;
  /** Whether a picture since then showed none: a busy phone looks at one in seconds. */
  #missed = false;
  /** What symbols of bars alone said in the picture before. @type {Set<string>} */
  #linear = new Set();

  forget() {
    this.#last = '';
  }

  /** @param {import('./decoding/code-reader.js').Found[]} found */
  report(found) {
    this.#onPicture?.(found.map(({ text }) => text));
    const now = performance.now();
    if (now - this.#lastAt > GONE_MS && this.#missed) this.forget();
    const before = this.#linear;
    const linear = found.filter(({ format }) => LINEAR.has(format)).map(({ text }) => text);
    this.#linear = new Set(linear);
    const sure = found.filter(({ text, format }) => !LINEAR.has(format) || before.has(text));
    const texts = [...new Set(sure.map(({ text }) => text))];
    this.#missed = !texts.length;
    if (!texts.length) return;
    this.#lastAt = now;
    const key = JSON.stringify([...texts].sort());
    if (key === this.#last) return;
    this.#last = key;
    this.#onTexts(texts);
  }
}
