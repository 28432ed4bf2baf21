// @ts-check
/**
 * Tries that have a direction: against a hand that moved, and a label that leans far away. Nobody knows which way,
 * so the picture is turned a few ways, and each is mended along its rows or columns. A wrong way does no harm: the
 * data must still fit its error correction.
 */

import { doubled } from './clearer.js';
import { sample } from './flatten.js';

/** @typedef {import('./clearer.js').Grey} Grey */

/** Degrees: a hand's path that is up to half a step beside one of these is mended still. */
const PATHS = [0, 30, 60, 90, 120, 150];
/** Degrees: a label that leans so is squeezed to a half or less, and a stretched one is squeezed less. */
const LEANS = [0, 45, 90, 135];
/** Pixels that the picture moved: what is shorter is crisp enough by the tries against blur. */
const MOVED = 6.5;
/** How much of a picture is noise, by power: less would be mended more crisply and raise noise to print. */
const NOISE = 0.03;
const REACH = 20; // pixels to both sides by which one is mended
const GAMMA = 2.2; // of a camera's picture (IEC 61966-2-1, about): light adds up along a path, grey levels do not

/** What each neighbour along the path counts (Wiener's filter of an even movement), the middle first. */
const COUNTS = Array.from({ length: REACH + 1 }, (_, away) => {
  const waves = 256;
  let sum = 0;
  for (let wave = 0; wave < waves; wave += 1) {
    const turn = Math.PI * MOVED * (wave / waves - 0.5);
    const left = turn === 0 ? 1 : Math.sin(turn) / turn;
    sum += (left / (left * left + NOISE)) * Math.cos(2 * Math.PI * (wave / waves - 0.5) * away);
  }
  return sum / waves;
});
const LIGHT = Float32Array.from({ length: 256 }, (_, level) => (level / 255) ** GAMMA * 255);

/**
 * The picture as if the hand had held still, once for each way it may have moved.
 * @param {Grey} grey
 * @param {number} round  of the tries: a camera's picture leaves no time for all ways, so each begins further on
 * @returns {Generator<Grey>}
 */
export function* heldStill(grey, round) {
  for (let n = 0; n < PATHS.length; n += 1) {
    const across = turned(grey, PATHS[(2 * round + n) % PATHS.length], 1);
    yield doubled(mended(across));
  }
}

/**
 * The picture stretched, once for each way a label may lean.
 * @param {Grey} grey
 * @returns {Generator<Grey>}
 */
export function* stretched(grey) {
  const large = doubled(grey);
  for (const degrees of LEANS) yield turned(large, degrees, 2);
}

/**
 * @param {Grey} grey
 * @param {number} degrees
 * @param {number} narrower  so many times less wide
 * @returns {Grey}
 */
function turned(grey, degrees, narrower) {
  const angle = (degrees * Math.PI) / 180;
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  const width = Math.round(grey.width / narrower);
  const { height } = grey;
  const data = new Uint8ClampedArray(width * height);
  for (let row = 0; row < height; row += 1) {
    const down = row + 0.5 - height / 2;
    for (let column = 0; column < width; column += 1) {
      const along = (column + 0.5 - width / 2) * narrower;
      const x = grey.width / 2 + along * cosine - down * sine;
      data[row * width + column] = sample(grey, x, height / 2 + along * sine + down * cosine);
    }
  }
  return { width, height, data };
}

/**
 * Mend what moved along the rows.
 * @param {Grey} grey
 * @returns {Grey}  its levels are those of light
 */
function mended({ width, height, data }) {
  const pixels = new Uint8ClampedArray(data.length);
  const light = new Float32Array(width + 2 * REACH);
  for (let start = 0; start < data.length; start += width) {
    for (let at = 0; at < light.length; at += 1) {
      light[at] = LIGHT[data[start + Math.max(0, Math.min(width - 1, at - REACH))]];
    }
    for (let column = 0; column < width; column += 1) {
      const at = column + REACH;
      let sum = COUNTS[0] * light[at];
      for (let away = 1; away <= REACH; away += 1) sum += COUNTS[away] * (light[at - away] + light[at + away]);
      pixels[start + column] = sum;
    }
  }
  return { width, height, data: pixels };
}
