// @ts-check
/**
 * Where each position of a board lies on the drawing, and whether its name fits under it.
 *
 * Plain numbers in the units of vehicle.js, so that the board cannot collide by accident: every
 * size follows from the number of positions.
 */
import { DRAWING_WIDTH } from "./vehicle.js";

/**
 * @typedef {{id: string, name: string, edge: "rear"|"front"|"left"|"right", index: number,
 *   x?: number, y?: number, mark: string, word: string, unit: {id: string, shown: string, part?: string}|null,
 *   photo?: string}} Position
 * @typedef {Omit<Position, "x" | "y"> & {number: number, x: number, y: number, size: number,
 *   numberX: number, numberY: number, anchor: "start"|"middle"|"end"}} Spot
 */

/** Reading order of the edges of a whole vehicle. */
export const EDGES = /** @type {const} */ (["front", "left", "right", "rear"]);

const BUMPER_MIDDLE = 125;
const MOST_IN_ONE_ROW = 12;
const MOST_IN_COLUMNS = 8;

/**
 * The positions of one edge in the order in which the eye meets them. Positions are counted from
 * the vehicle's left, so the front, seen from the front, runs the other way.
 * @param {Position[]} positions
 * @param {string} edge
 * @param {boolean} mirrored
 */
function along(positions, edge, mirrored) {
  const found = positions.filter((position) => position.edge === edge);
  found.sort((a, b) => a.index - b.index);
  return mirrored ? found.reverse() : found;
}

/**
 * Spreads an edge that runs across the picture; many positions take two rows.
 * @param {Position[]} positions
 * @param {{left: number, right: number, y: number, outward: 1|-1, first: number,
 *   rowAt: number, largest: number, spare: number}} edge `outward` is the side on which numbers
 *   stand; `spare` is kept free between two marks
 * @returns {Spot[]}
 */
function across(positions, { left, right, y, outward, first, rowAt, largest, spare }) {
  const pitch = (right - left) / positions.length;
  const rows = positions.length > rowAt ? 2 : 1;
  const size = rows === 1 ? Math.min(largest, pitch - spare) : Math.min(22, pitch * 2 - 2);
  return positions.map((position, n) => {
    const inner = rows === 2 && n % 2 === 0;
    const x = left + pitch * (n + 0.5);
    const markY = inner ? y - outward * (size + 6) : y;
    const away = (inner ? -outward : outward) * (size / 2 + 4);
    return {
      ...position, number: first + n, x, y: markY, size,
      numberX: x, numberY: markY + away + (away > 0 ? 11 : 0), anchor: "middle",
    };
  });
}

/**
 * @param {Position[]} positions
 * @param {{x: number, top: number, bottom: number, outward: 1|-1, first: number}} edge
 * @returns {Spot[]}
 */
function down(positions, { x, top, bottom, outward, first }) {
  const pitch = (bottom - top) / positions.length;
  const size = Math.min(30, pitch - 3);
  return positions.map((position, n) => {
    const y = top + pitch * (n + 0.5);
    return {
      ...position, number: first + n, x, y, size,
      numberX: x + outward * (size / 2 + 6), numberY: y + 5,
      anchor: outward < 0 ? "end" : "start",
    };
  });
}

/**
 * One end of the vehicle.
 * @param {Position[]} positions
 * @param {"rear"|"front"} end
 */
export function endGeometry(positions, end) {
  const ordered = along(positions, end, end === "front");
  const two = ordered.length > MOST_IN_ONE_ROW;
  // Up to eight may have their names in columns below, which take the whole width.
  const inset = ordered.length > MOST_IN_COLUMNS ? 12 : 0;
  const spots = across(ordered, {
    left: inset, right: DRAWING_WIDTH - inset, y: two ? 160 : BUMPER_MIDDLE, outward: 1, first: 1,
    rowAt: MOST_IN_ONE_ROW, largest: 34, spare: inset ? 2 : 9,
  });
  const bottom = two ? 174 : 146;
  return { spots, bottom, height: bottom + 24 };
}

/**
 * The whole vehicle from above, as long as its sides need.
 * @param {Position[]} positions
 */
export function aroundGeometry(positions) {
  const [front, left, right, rear] = EDGES.map((edge) => along(positions, edge, false));
  const ends = { rowAt: 6, largest: 30, spare: 3 };
  // A second row of marks reaches into the vehicle: the sides keep clear of it.
  const twoRows = Math.max(front.length, rear.length) > ends.rowAt;
  const corner = twoRows ? 80 : 46;
  const sides = Math.max(left.length, right.length);
  const length = Math.max(twoRows ? 300 : 236, sides * 26 + corner * 2);
  const box = { left: 52, right: DRAWING_WIDTH - 52, top: 44, bottom: 44 + length };
  /** @param {number} count */
  const extent = (count) => (count > MOST_IN_ONE_ROW
    ? { left: 2, right: DRAWING_WIDTH - 2 } : { left: box.left + 2, right: box.right - 2 });
  const side = { top: box.top + corner, bottom: box.bottom - corner };
  let first = 1;
  const spots = across(front, { ...extent(front.length), ...ends, y: box.top + 4, outward: -1, first });
  first += front.length;
  spots.push(...down(left, { ...side, x: box.left + 2, outward: -1, first }));
  first += left.length;
  spots.push(...down(right, { ...side, x: box.right - 2, outward: 1, first }));
  first += right.length;
  spots.push(...across(rear, { ...extent(rear.length), ...ends, y: box.bottom - 4, outward: 1, first }));
  return { spots, box, height: box.bottom + 36 };
}

/** What positions with a place are drawn on, in the units of the drawing. */
const PLANS = {
  vehicle: { left: 52, right: DRAWING_WIDTH - 52, top: 44, bottom: 280 },
  engine: { left: 14, right: DRAWING_WIDTH - 14, top: 24, bottom: 128 },
};

/**
 * A plan on which each position lies where it was put, in thousandths of its box.
 * @param {Position[]} positions
 * @param {"vehicle" | "engine"} outline
 */
export function planGeometry(positions, outline) {
  const box = PLANS[outline];
  const placed = positions.map((position) => ({
    x: box.left + ((box.right - box.left) * (position.x ?? 0)) / 1000,
    y: box.top + ((box.bottom - box.top) * (position.y ?? 0)) / 1000,
  }));
  const apart = placed.flatMap((one, n) => placed.slice(0, n).map(({ x, y }) => Math.hypot(one.x - x, one.y - y)));
  const size = Math.max(14, Math.min(30, ...apart.map((each) => each - 4)));
  /** @type {Spot[]} */
  const spots = positions.map((position, n) => ({
    ...position, ...placed[n], number: n + 1, size,
    numberX: placed[n].x, numberY: placed[n].y + size / 2 + 14, anchor: "middle",
  }));
  return { spots, box, height: box.bottom + 36 };
}

/** Widths of letters in a wide, bold face, in parts of its size: never below the real ones. */
const LETTERS = [[/[fijlrt.,:;'|!()\- ]/, 0.5], [/[mwMW@%]/, 1.08], [/[A-Z]/, 0.82]];
const LABEL_SIZE = 14;
const ROOT_SIZE = 18;
const CODE_WIDTH = 54;
/** The widths (in rem) that board.css switches at. */
const STEPS = [16, 19.75, 24, 30];

/** @param {string} word */
function wordWidth(word) {
  let width = 0;
  for (const letter of word) {
    width += Number((LETTERS.find(([kind]) => /** @type {RegExp} */ (kind).test(letter)) ?? [0, 0.72])[1]);
  }
  return width * LABEL_SIZE;
}

/**
 * From which width on (in rem) every name fits under its own mark; 0 where it never does and the
 * names stand in a numbered list instead.
 * @param {Position[]} positions
 */
export function namesFitFrom(positions) {
  if (positions.length > MOST_IN_COLUMNS || positions.some((position) => position.name.length > 24)) {
    return 0;
  }
  const words = positions.flatMap((position) => `${position.name} ${position.word}`.split(/\s+/));
  const widest = Math.max(CODE_WIDTH, ...words.map(wordWidth)) + 4;
  const needed = (widest * positions.length) / ROOT_SIZE;
  return STEPS.find((step) => step >= needed) ?? 0;
}
