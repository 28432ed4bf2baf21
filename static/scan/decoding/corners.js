// @ts-check
/**
 * Draws the hidden one of a QR code's three corner squares anew.
 *
 * Mud or glare on one corner square makes a code unreadable, although the data is all there and its error
 * correction has room to spare. Where two squares are seen, the third can only be in a few places. A square
 * drawn in the wrong place does no harm: the data must still fit its error correction.
 */

import { cut } from './clearer.js';
import { guesses, inAxes } from './corner-guesses.js';

/** @typedef {import('./clearer.js').Grey} Grey */
/** @typedef {import('./corner-squares.js').Axes} Axes */
/** @typedef {import('./corner-squares.js').Spot} Spot */
/** @typedef {import('./corner-squares.js').Square} Square */

/** Cuts handed over for one picture: a guess that has not come true by then costs more than the next picture. */
const MOST_CUTS = 48;

/**
 * Cuts of a picture, in each of which a third square was drawn.
 * @param {Grey[]} versions  the same picture, sharpened and as it is
 * @param {Square[]} squares
 * @returns {Generator<Grey>}
 */
export function* repaired(versions, squares) {
  let left = MOST_CUTS;
  for (let i = 0; i < squares.length; i += 1) {
    for (let j = i + 1; j < squares.length; j += 1) {
      const pair = [squares[i], squares[j]];
      const ratio = pair[0].module / pair[1].module;
      if (ratio < 0.6 || ratio > 1.67) continue;
      for (const guess of guesses(pair[0], pair[1])) {
        for (const grey of versions) {
          if (left === 0) return;
          left -= 1;
          yield drawn(grey, pair, { third: nearest(squares, guess.third, pair) ?? guess.third, axes: guess.axes });
        }
      }
    }
  }
}

/**
 * The square seen about where one is guessed: seen from aslant, a guess is some modules off.
 * @param {Square[]} squares
 * @param {Spot} guess
 * @param {Square[]} pair
 */
function nearest(squares, guess, pair) {
  return squares.find(
    (square) => !pair.includes(square) && Math.hypot(square.x - guess.x, square.y - guess.y) < 3 * square.module,
  );
}

/**
 * @param {Grey} grey
 * @param {Square[]} pair
 * @param {{third: Spot, axes: Axes}} guess
 * @returns {Grey}
 */
function drawn(grey, pair, { third, axes }) {
  const module = Math.max(Math.hypot(axes.u.x, axes.u.y), Math.hypot(axes.w.x, axes.w.y));
  // The middle between the two squares farthest apart is the middle of the code.
  const ends = farthest([...pair, third]);
  const x = (ends[0].x + ends[1].x) / 2;
  const y = (ends[0].y + ends[1].y) / 2;
  const radius = Math.hypot(ends[0].x - x, ends[0].y - y) + 7 * module;
  const left = Math.max(0, Math.round(x - radius));
  const top = Math.max(0, Math.round(y - radius));
  const part = cut(grey, left, top, x + radius - left, y + radius - top);
  for (const hidden of [third, ...pair.filter((square) => !square.axes)]) {
    drawSquare(part, { x: hidden.x - left, y: hidden.y - top }, axes);
  }
  return part;
}

/** @param {Spot[]} spots */
function farthest(spots) {
  const pairs = spots.flatMap((a, i) => spots.slice(i + 1).map((b) => [a, b]));
  const length = (/** @type {Spot[]} */ [a, b]) => Math.hypot(a.x - b.x, a.y - b.y);
  return pairs.reduce((a, b) => (length(b) > length(a) ? b : a));
}

/**
 * Draw a corner square with its light border in the ink and paper around it.
 * @param {Grey} part
 * @param {Spot} at
 * @param {Axes} axes
 */
function drawSquare({ width, height, data }, at, axes) {
  const levels = Uint8ClampedArray.from(data).sort();
  const ink = levels[Math.floor(levels.length * 0.05)];
  const paper = levels[Math.floor(levels.length * 0.85)];
  const radius = 4.5 * (Math.hypot(axes.u.x, axes.u.y) + Math.hypot(axes.w.x, axes.w.y));
  for (let y = Math.max(0, Math.floor(at.y - radius)); y < Math.min(height, at.y + radius); y += 1) {
    for (let x = Math.max(0, Math.floor(at.x - radius)); x < Math.min(width, at.x + radius); x += 1) {
      const [along, beside] = inAxes(axes, x + 0.5 - at.x, y + 0.5 - at.y);
      const ring = Math.max(Math.abs(along), Math.abs(beside));
      if (ring < 4.5) data[y * width + x] = ring < 1.5 || (ring >= 2.5 && ring < 3.5) ? ink : paper;
    }
  }
}
