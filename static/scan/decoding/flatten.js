// @ts-check
/**
 * Flattens a label that is wrapped round a sensor.
 *
 * Towards the edges of a round body a code is squeezed together, and the reader, which thinks it flat, looks
 * beside its modules. Where all three corner squares are seen, the code is unrolled as if round a body of
 * about the usual size, for a few ways it may be turned aside. A wrong guess does no harm: the data must
 * still fit its error correction.
 */

import { SIDES, SQUARE } from './corner-squares.js';

/** @typedef {import('./clearer.js').Grey} Grey */
/** @typedef {import('./corner-squares.js').Square} Square */
/** @typedef {import('./corner-squares.js').Spot} Spot */

/** Radius of the body in modules: 11 mm, with modules of 0.5 and 0.6 mm. */
const RADII = [22, 18];
/** How far the middle of the code is turned aside, in degrees: the likely ones first. */
const ASIDE = [0, 12, -12, 24, -24, 36, -36];
const PIXELS_A_MODULE = 6;
/** Round the code: half a square and the light margin. */
const MARGIN = SQUARE / 2 + 4;

/**
 * The code unrolled, once for each guess.
 * @param {Grey} grey
 * @param {Square[]} squares
 * @returns {Generator<Grey>}
 */
export function* flattened(grey, squares) {
  const corner = rightAngle(squares);
  if (!corner) return;
  const [at, along, down] = corner;
  for (const radius of RADII) {
    for (const degrees of ASIDE) {
      // The body may lie along either side of the code.
      for (const [bent, straight] of [[along, down], [down, along]]) {
        const modules = modulesBetween(at, straight);
        const half = modules / radius / 2;
        const middle = (degrees * Math.PI) / 180;
        if (Math.abs(middle) + half > 1.3) continue;
        const flat = unrolled(grey, at, bent, straight, { modules, radius, from: middle - half });
        if (bent === along) yield flat;
        else yield turned(flat);
      }
    }
  }
}

/**
 * Three squares as the corner between the two others, in the order that does not mirror the code; null
 * without three that lie like that.
 * @param {Square[]} squares
 * @returns {Square[] | null}
 */
function rightAngle(squares) {
  const three = squares.slice(0, 3);
  if (three.length < 3) return null;
  for (const at of three) {
    const [a, b] = three.filter((square) => square !== at);
    const [ax, ay, bx, by] = [a.x - at.x, a.y - at.y, b.x - at.x, b.y - at.y];
    const [long, wide] = [Math.hypot(ax, ay), Math.hypot(bx, by)];
    const cosine = Math.abs(ax * bx + ay * by) / (long * wide);
    if (cosine < 0.35 && long < 2 * wide && wide < 2 * long) return ax * by - ay * bx > 0 ? [at, a, b] : [at, b, a];
  }
  return null;
}

/**
 * Modules from one square's middle to the next: what a QR version has that comes nearest.
 * @param {Square} one
 * @param {Square} other
 */
function modulesBetween(one, other) {
  const apart = Math.hypot(other.x - one.x, other.y - one.y);
  const module = (moduleTowards(one, other) + moduleTowards(other, one)) / 2;
  const off = (/** @type {number} */ side) => Math.abs(Math.log(apart / module / (side - SQUARE)));
  return SIDES.reduce((a, b) => (off(b) < off(a) ? b : a)) - SQUARE;
}

/**
 * @param {Square} square
 * @param {Spot} towards
 */
function moduleTowards({ x, y, module, axes }, towards) {
  if (!axes) return module;
  const [dx, dy] = [towards.x - x, towards.y - y];
  const along = (/** @type {Spot} */ way) => Math.abs(way.x * dx + way.y * dy) / Math.hypot(way.x, way.y);
  const way = along(axes.u) > along(axes.w) ? axes.u : axes.w;
  return Math.hypot(way.x, way.y);
}

/**
 * @param {Grey} grey
 * @param {Spot} at        the corner square
 * @param {Spot} bent      the next square on the way round the body
 * @param {Spot} straight  the next square along the body
 * @param {{modules: number, radius: number, from: number}} guess  `from`: angle at which the corner sits
 * @returns {Grey}  left to right round the body
 */
function unrolled(grey, at, bent, straight, { modules, radius, from }) {
  const size = Math.round((modules + 2 * MARGIN) * PIXELS_A_MODULE);
  const data = new Uint8ClampedArray(size * size);
  const whole = Math.sin(from + modules / radius) - Math.sin(from);
  for (let column = 0; column < size; column += 1) {
    const round = ((column + 0.5) / PIXELS_A_MODULE - MARGIN) / radius + from;
    const share = (Math.sin(Math.max(-1.5, Math.min(1.5, round))) - Math.sin(from)) / whole;
    const x = at.x + share * (bent.x - at.x);
    const y = at.y + share * (bent.y - at.y);
    for (let row = 0; row < size; row += 1) {
      const down = ((row + 0.5) / PIXELS_A_MODULE - MARGIN) / modules;
      data[row * size + column] = sample(grey, x + down * (straight.x - at.x), y + down * (straight.y - at.y));
    }
  }
  return { width: size, height: size, data };
}

/**
 * The picture at a spot between its pixels.
 * @param {Grey} grey
 * @param {number} x
 * @param {number} y
 */
export function sample({ width, height, data }, x, y) {
  const left = Math.max(0, Math.min(width - 2, Math.floor(x - 0.5)));
  const top = Math.max(0, Math.min(height - 2, Math.floor(y - 0.5)));
  const right = Math.max(0, Math.min(1, x - 0.5 - left));
  const down = Math.max(0, Math.min(1, y - 0.5 - top));
  const at = top * width + left;
  const above = data[at] * (1 - right) + data[at + 1] * right;
  const below = data[at + width] * (1 - right) + data[at + width + 1] * right;
  return above * (1 - down) + below * down;
}

/**
 * Rows for columns, so that the code is not mirrored.
 * @param {Grey} grey
 * @returns {Grey}
 */
function turned({ width, height, data }) {
  const pixels = new Uint8ClampedArray(data.length);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) pixels[x * height + y] = data[y * width + x];
  }
  return { width: height, height: width, data: pixels };
}
