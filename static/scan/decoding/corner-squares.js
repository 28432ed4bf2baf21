// @ts-check
/**
 * Finds the corner squares of QR codes in a picture, and how their sides lie.
 */

import { averaged } from './clearer.js';

/** @typedef {import('./clearer.js').Grey} Grey */
/** @typedef {{x: number, y: number}} Spot */
/** @typedef {{u: Spot, w: Spot}} Axes  one module along either side */
/** @typedef {{width: number, height: number, dark: Uint8Array}} Bits  1 where it is dark */
/**
 * @typedef {object} Square
 * @property {number} x       its middle
 * @property {number} y
 * @property {number} module  pixels
 * @property {number} hits    rows and columns that show it
 * @property {Axes | null} axes  as its outline shows them, null where something touches it
 */

/** Modules a side of QR versions 1 to 5 (ISO/IEC 18004: 17 + 4 times the version). */
export const SIDES = [21, 25, 29, 33, 37];
/** Modules a side of a corner square; from one's middle to the next one's it is the code's side less this. */
export const SQUARE = 7;
const MOST_SQUARES = 4;

/**
 * Find what looks like a corner square: dark and light in the widths 1:1:3:1:1 along a row or a column, and
 * from its middle at least three ways out.
 * @param {Grey} grey
 * @returns {Square[]}  those met most often first
 */
export function cornerSquares({ width, height, data }) {
  const light = averaged(data, width, height, Math.max(12, Math.round(Math.max(width, height) / 24)));
  const dark = new Uint8Array(data.length);
  for (let at = 0; at < data.length; at += 1) dark[at] = data[at] < light[at] ? 1 : 0;
  const picture = { width, height, dark };
  /** @type {Square[]} */
  const found = [];
  for (let y = 0; y < height; y += 1) {
    for (const { middle, module } of fives(dark, y * width, 1, width)) note(found, picture, middle, y + 0.5, module);
  }
  for (let x = 0; x < width; x += 1) {
    for (const { middle, module } of fives(dark, x, width, height)) note(found, picture, x + 0.5, middle, module);
  }
  const often = found.filter(({ hits }) => hits > 1);
  const best = often.sort((a, b) => b.hits - a.hits).slice(0, MOST_SQUARES);
  return best.map((square) => ({ ...square, axes: outline(picture, square) }));
}

/**
 * Where five runs along a line have the widths of a corner square.
 * @param {Uint8Array} dark
 * @param {number} origin  where the line starts
 * @param {number} step    from one pixel of it to the next
 * @param {number} count
 */
function* fives(dark, origin, step, count) {
  const runs = [0, 0, 0, 0, 0];
  for (let i = 0, length = 0; i < count; i += 1) {
    const at = origin + i * step;
    length += 1;
    if (i + 1 < count && dark[at] === dark[at + step]) continue;
    runs.shift();
    runs.push(length);
    length = 0;
    if (!dark[at]) continue;
    const module = (runs[0] + runs[1] + runs[2] + runs[3] + runs[4]) / SQUARE;
    if (runs.every((run, part) => isWide(run, part === 2 ? 3 : 1, module))) {
      yield { middle: i + 1 - runs[4] - runs[3] - runs[2] / 2, module };
    }
  }
}

/**
 * @param {number} run
 * @param {number} modules  how wide it should be
 * @param {number} module
 */
function isWide(run, modules, module) {
  return module >= 1.2 && Math.abs(run - modules * module) < 0.3 * module * (1 + modules);
}

/**
 * Keep a square, or count it once more, if it holds up seen from its middle.
 * @param {Square[]} found
 * @param {Bits} picture
 * @param {number} x
 * @param {number} y
 * @param {number} module
 */
function note(found, picture, x, y, module) {
  const column = Math.floor(x);
  const row = Math.floor(y);
  const [left, right] = [waysOut(picture, column, row, -1, 0, module), waysOut(picture, column, row, 1, 0, module)];
  const [up, down] = [waysOut(picture, column, row, 0, -1, module), waysOut(picture, column, row, 0, 1, module)];
  const good = [left, right, up, down].filter(Boolean).length;
  if (good < 3) return;
  const here = {
    x: left && right ? column + 0.5 + (right - left) / 2 : x,
    y: up && down ? row + 0.5 + (down - up) / 2 : y,
    module,
    hits: 1,
    axes: null,
  };
  const same = found.find((other) => Math.hypot(other.x - here.x, other.y - here.y) < 2 * module);
  if (!same) {
    found.push(here);
    return;
  }
  same.hits += 1;
  for (const key of /** @type {const} */ (['x', 'y', 'module'])) same[key] += (here[key] - same[key]) / same.hits;
}

/**
 * How far the dark core goes one way from its middle, or 0 where no light and dark ring of the right widths
 * follow.
 * @param {Bits} picture
 * @param {number} x
 * @param {number} y
 * @param {number} dx
 * @param {number} dy
 * @param {number} module
 */
function waysOut({ width, height, dark }, x, y, dx, dy, module) {
  const runs = [0, 0, 0];
  for (let part = 0; part < 3; part += 1) {
    while (x >= 0 && x < width && y >= 0 && y < height && dark[y * width + x] === (part === 1 ? 0 : 1)) {
      runs[part] += 1;
      x += dx;
      y += dy;
    }
  }
  // Seen aslant, a square is narrower one way than the other.
  const own = (runs[0] + runs[1] + runs[2]) / 3.5;
  if (own > 2 * module || module > 2 * own) return 0;
  return isWide(runs[0], 1.5, own) && isWide(runs[1], 1, own) && isWide(runs[2], 1, own) ? runs[0] : 0;
}

/**
 * The ways along a square's sides from its outline, or null where something else touches it.
 * @param {Bits} picture
 * @param {Square} square
 * @returns {Axes | null}
 */
function outline({ width, height, dark }, { x, y, module }) {
  const radius = Math.ceil(module * SQUARE);
  const left = Math.max(0, Math.floor(x) - radius);
  const right = Math.min(width - 1, Math.floor(x) + radius);
  const top = Math.max(0, Math.floor(y) - radius);
  const bottom = Math.min(height - 1, Math.floor(y) + radius);
  let start = Math.floor(y) * width + Math.floor(x);
  // Out of the core and over the light ring into the dark one.
  for (let colour = 1; colour >= 0; colour -= 1) {
    while (dark[start] === colour && start % width < right) start += 1;
  }
  if (!dark[start]) return null;
  const met = new Set([start]);
  for (const at of met) {
    const column = at % width;
    const row = (at - column) / width;
    if (column === left || column === right || row === top || row === bottom) return null;
    for (const next of [at - 1, at + 1, at - width, at + width]) if (dark[next]) met.add(next);
  }
  const spots = Array.from(met, (at) => ({ x: (at % width) + 0.5, y: Math.floor(at / width) + 0.5 }));
  const most = (/** @type {(spot: Spot) => number} */ score) => spots.reduce((a, b) => (score(b) > score(a) ? b : a));
  const a = most((spot) => Math.hypot(spot.x - x, spot.y - y));
  const c = most((spot) => Math.hypot(spot.x - a.x, spot.y - a.y));
  const beside = (/** @type {Spot} */ spot) => (c.x - a.x) * (spot.y - a.y) - (c.y - a.y) * (spot.x - a.x);
  const b = most(beside);
  const d = most((spot) => -beside(spot));
  /** One module along two opposite sides. @param {Spot[]} sides */
  const way = ([p, q, r, s]) => ({ x: (q.x - p.x + s.x - r.x) / 2 / SQUARE, y: (q.y - p.y + s.y - r.y) / 2 / SQUARE });
  const axes = { u: way([a, b, d, c]), w: way([a, d, b, c]) };
  const area = Math.abs(axes.u.x * axes.w.y - axes.u.y * axes.w.x);
  // Four corners of a square hold 33 dark modules less the core and the light ring: 24.
  return area > 0 && met.size < 33 * area && met.size > 17 * area ? axes : null;
}
