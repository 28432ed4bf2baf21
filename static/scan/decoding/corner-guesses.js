// @ts-check
/**
 * Where the third corner square of a QR code may be, of which two are seen.
 */

import { SIDES, SQUARE } from './corner-squares.js';

/** @typedef {import('./corner-squares.js').Axes} Axes */
/** @typedef {import('./corner-squares.js').Spot} Spot */
/** @typedef {import('./corner-squares.js').Square} Square */

/**
 * Where the third square may be, and how the sides lie: the two seen may be neighbours or opposite.
 * @param {Square} one
 * @param {Square} other
 * @returns {Array<{third: Spot, axes: Axes}>}
 */
export function guesses(one, other) {
  const dx = other.x - one.x;
  const dy = other.y - one.y;
  const places = [];
  for (const axes of axesOf(one, other)) {
    const [a, b] = inAxes(axes, dx, dy);
    const [long, short] = [Math.max(Math.abs(a), Math.abs(b)), Math.min(Math.abs(a), Math.abs(b))];
    const fits = Math.min(...SIDES.map((side) => Math.abs(Math.log(long / (side - SQUARE)))));
    if (fits > 0.3) continue;
    const { u, w } = axes;
    if (short < long * 0.25) {
      const [way, steps] = Math.abs(a) > Math.abs(b) ? [w, a] : [u, b];
      for (const from of [one, other]) {
        for (const far of [steps, -steps]) places.push({ third: { x: from.x + far * way.x, y: from.y + far * way.y }, axes });
      }
    } else if (short > long * 0.7) {
      places.push({ third: { x: one.x + a * u.x, y: one.y + a * u.y }, axes });
      places.push({ third: { x: one.x + b * w.x, y: one.y + b * w.y }, axes });
    }
  }
  return places;
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
export function inAxes({ u, w }, x, y) {
  const area = u.x * w.y - u.y * w.x;
  return [(x * w.y - y * w.x) / area, (y * u.x - x * u.y) / area];
}
