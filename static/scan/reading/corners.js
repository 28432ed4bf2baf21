// @ts-check
/**
 * Draws the hidden one of a QR code's three corner squares anew.
 *
 * Mud or glare on one corner square makes a code unreadable, although the data is all there and its error
 * correction has room to spare. Where two squares are seen, the third can only be in a few places. A square
 * drawn in the wrong place does no harm: the data must still fit its error correction.
 */

import { averaged, cut } from './clearer.js';

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
 * Where the third square may be, and how the sides lie: the two seen may be neighbours or opposite.
 * @param {Square} one
 * @param {Square} other
 * @returns {Array<{third: Spot, axes: Axes}>}
 */
function guesses(one, other) {
  const dx = other.x - one.x;
  const dy = other.y - one.y;
  const result = [];
  for (const axes of axesOf(one, other)) {
    const [a, b] = inAxes(axes, dx, dy);
    const [long, short] = [Math.max(Math.abs(a), Math.abs(b)), Math.min(Math.abs(a), Math.abs(b))];
    const fits = Math.min(...SIDES.map((side) => Math.abs(Math.log(long / (side - SQUARE)))));
    if (fits > 0.3) continue;
    const { u, w } = axes;
    if (short < long * 0.25) {
      const [way, steps] = Math.abs(a) > Math.abs(b) ? [w, a] : [u, b];
      for (const from of [one, other]) {
        for (const far of [steps, -steps]) result.push({ third: { x: from.x + far * way.x, y: from.y + far * way.y }, axes });
      }
    } else if (short > long * 0.7) {
      result.push({ third: { x: one.x + a * u.x, y: one.y + a * u.y }, axes });
      result.push({ third: { x: one.x + b * w.x, y: one.y + b * w.y }, axes });
    }
  }
  return result;
}

/**
 * The ways along the sides, one module long: as the squares' own outlines show them, then as they would be
 * in a label seen from straight ahead, for dirt may touch an outline.
 * @param {Square} one
 * @param {Square} other
 * @returns {Axes[]}
 */
function axesOf(one, other) {
  const shown = [one, other].flatMap(({ axes }) => axes ?? []);
  const outlined = shown.length === 2 ? [averageAxes(shown[0], shown[1])] : shown;
  const angle = Math.atan2(other.y - one.y, other.x - one.x);
  const straight = [angle, angle + Math.PI / 4].map((way) => {
    const [cosine, sine] = [Math.cos(way), Math.sin(way)];
    // A row crosses a turned square on a longer way.
    const module = ((one.module + other.module) / 2) * Math.max(Math.abs(cosine), Math.abs(sine));
    return { u: { x: module * cosine, y: module * sine }, w: { x: -module * sine, y: module * cosine } };
  });
  return [...outlined, ...straight];
}

/**
 * @param {Axes} one
 * @param {Axes} other  its ways may run otherwise round
 * @returns {Axes}
 */
function averageAxes(one, other) {
  /** @param {Spot} way */
  const withNearest = (way) => {
    const ways = [other.u, other.w].flatMap(({ x, y }) => [{ x, y }, { x: -x, y: -y }]);
    const along = (/** @type {Spot} */ { x, y }) => x * way.x + y * way.y;
    const near = ways.reduce((a, b) => (along(b) > along(a) ? b : a));
    return { x: (way.x + near.x) / 2, y: (way.y + near.y) / 2 };
  };
  return { u: withNearest(one.u), w: withNearest(one.w) };
}

/**
 * How many modules along each way a step in the picture is.
 * @param {Axes} axes
 * @param {number} x
 * @param {number} y
 */
function inAxes({ u, w }, x, y) {
  const area = u.x * w.y - u.y * w.x;
  return [(x * w.y - y * w.x) / area, (y * u.x - x * u.y) / area];
}

/**
 * The ways along a square's sides from its outline, or null where something else touches it.
 * @param {Bits} picture
 * @param {Square} square
 * @returns {Axes | null}
 */
function outline({ width, height, dark }, { x, y, module }) {
  const reach = Math.ceil(module * SQUARE);
  const left = Math.max(0, Math.floor(x) - reach);
  const right = Math.min(width - 1, Math.floor(x) + reach);
  const top = Math.max(0, Math.floor(y) - reach);
  const bottom = Math.min(height - 1, Math.floor(y) + reach);
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
  const reach = Math.hypot(ends[0].x - x, ends[0].y - y) + 7 * module;
  const left = Math.max(0, Math.round(x - reach));
  const top = Math.max(0, Math.round(y - reach));
  const part = cut(grey, left, top, x + reach - left, y + reach - top);
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
  const reach = 4.5 * (Math.hypot(axes.u.x, axes.u.y) + Math.hypot(axes.w.x, axes.w.y));
  for (let y = Math.max(0, Math.floor(at.y - reach)); y < Math.min(height, at.y + reach); y += 1) {
    for (let x = Math.max(0, Math.floor(at.x - reach)); x < Math.min(width, at.x + reach); x += 1) {
      const [along, beside] = inAxes(axes, x + 0.5 - at.x, y + 0.5 - at.y);
      const ring = Math.max(Math.abs(along), Math.abs(beside));
      if (ring < 4.5) data[y * width + x] = ring < 1.5 || (ring >= 2.5 && ring < 3.5) ? ink : paper;
    }
  }
}
