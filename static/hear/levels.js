// @ts-check
/**
 * How loud a sound is in each millisecond, as far as ticks go: what is low is taken out first, for wind, voices
 * and engines lie there. It remembers where it stands, so a sound may come in pieces.
 */

/** Where the filter begins, in hertz. */
const LOW = 2500;
const PASSES = 2;

export class Levels {
  #filters;
  #each;
  #sum = 0;
  #count = 0;
  #left;

  /** @param {number} rate  samples a second */
  constructor(rate) {
    this.#each = rate / 1000;
    this.#left = this.#each;
    this.#filters = Array.from({ length: PASSES }, () => highPass(LOW, rate));
  }

  /**
   * The levels that these samples complete.
   * @param {Float32Array} samples
   * @returns {number[]}
   */
  of(samples) {
    const levels = [];
    for (const sample of samples) {
      let heard = sample;
      for (const filter of this.#filters) heard = filter(heard);
      this.#sum += heard * heard;
      this.#count += 1;
      this.#left -= 1;
      if (this.#left <= 0) {
        levels.push(Math.sqrt(this.#sum / this.#count));
        this.#sum = this.#count = 0;
        this.#left += this.#each;
      }
    }
    return levels;
  }
}

/**
 * A Butterworth filter of the second order, by the bilinear transform.
 * @param {number} hertz
 * @param {number} rate
 */
function highPass(hertz, rate) {
  const angle = (2 * Math.PI * hertz) / rate;
  const slope = Math.sin(angle) / Math.SQRT2;
  const cosine = Math.cos(angle);
  const whole = 1 + slope;
  const outer = (1 + cosine) / 2 / whole;
  const [one, two] = [(-2 * cosine) / whole, (1 - slope) / whole];
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  return (/** @type {number} */ x) => {
    const y = outer * (x - 2 * x1 + x2) - one * y1 - two * y2;
    [x2, x1, y2, y1] = [x1, x, y1, y];
    return y;
  };
}
