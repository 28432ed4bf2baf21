// @ts-check
/**
 * The arrows of a move on the board: which unit goes where.
 */
import { svg } from "lit-html";

import { DRAWING_WIDTH } from "./vehicle.js";

/** @typedef {import("./board-geometry.js").Spot} Spot */
/** @typedef {{start: string, goal: string}} Arrow  `start` is empty for what comes from elsewhere */

/**
 * Which goes where: a bow from one mark to the next, with its head at the goal.
 * @param {Arrow[]} arrows
 * @param {{spots: Spot[], height: number}} geometry
 * @param {boolean} above  seen from above the bows go through the vehicle, for the numbers stand outside it
 */
export function arrowShapes(arrows, { spots, height }, above) {
  const placed = arrows.flatMap(({ start, goal }) => {
    const to = spots.find(({ id }) => id === goal);
    return to ? [{ from: spots.find(({ id }) => id === start), to }] : [];
  });
  const hub = middleOf(placed.map(({ to }) => to));
  return placed.map(({ from, to }) => {
    const { x1, y1, bend, x2, y2 } = above && from ? bowWithin(from, to, hub, height) : bowOver(from ?? { x: to.x, y: to.y - 70 }, to);
    const turn = Math.round((Math.atan2(y2 - bend.y, x2 - bend.x) * 180) / Math.PI);
    return svg`<g class="board-goes"><path d="M${x1} ${y1} Q${bend.x} ${bend.y} ${x2} ${y2}" />
      <path d="M-9 -6 L0 0 L-9 6" transform="translate(${x2} ${y2}) rotate(${turn})" /></g>`;
  });
}

/** @param {{x: number, y: number}[]} points */
function middleOf(points) {
  const mean = (/** @type {number[]} */ values) => values.reduce((sum, each) => sum + each, 0) / values.length;
  return { x: mean(points.map(({ x }) => x)), y: mean(points.map(({ y }) => y)) };
}

/**
 * A bow over the marks between, higher to the right than to the left: an exchange is two lines.
 * @param {{x: number, y: number}} from
 * @param {Spot} to
 */
function bowOver(from, to) {
  const up = to.size / 2 + 3;
  const along = Math.sign(to.x - from.x) * 5;
  const [x1, y1, x2, y2] = [from.x + along, from.y - up, to.x - along, to.y - up];
  // Never over what stands above the drawing.
  const high = Math.max(6, Math.min(y1, y2) - 18 - Math.abs(x2 - x1) * (along > 0 ? 0.22 : 0.12));
  return { x1, y1, bend: { x: (x1 + x2) / 2, y: high * 2 - (y1 + y2) / 2 }, x2, y2 };
}

/**
 * A bow through the vehicle: inwards along an edge, deeper one way than the other; across it away from the
 * middle of the whole move, so that the lines of a ring do not cross, or to its left where that is on the line.
 * @param {Spot} from
 * @param {Spot} to
 * @param {{x: number, y: number}} hub
 * @param {number} height
 */
function bowWithin(from, to, hub, height) {
  const [across, down] = [to.x - from.x, to.y - from.y];
  const long = Math.hypot(across, down);
  const middle = middleOf([from, to]);
  const left = { x: -down / long, y: across / long };
  /** @param {{x: number, y: number}} point  positive on the left */
  const sideOf = ({ x, y }) => left.x * (x - middle.x) + left.y * (y - middle.y);
  const inwards = Math.sign(sideOf({ x: DRAWING_WIDTH / 2, y: height / 2 }));
  const alongAnEdge = Math.min(Math.abs(across), Math.abs(down)) < to.size;
  const deep = alongAnEdge ? inwards * (inwards > 0 ? 52 : 28) : sideOf(hub) > 1 ? -26 : 26;
  const bend = { x: Math.round(middle.x + left.x * deep), y: Math.round(middle.y + left.y * deep) };
  const [start, end] = [outside(from, bend), outside(to, bend)];
  return { x1: start.x, y1: start.y, bend, x2: end.x, y2: end.y };
}

/**
 * The point beside a mark that faces another point.
 * @param {Spot} spot
 * @param {{x: number, y: number}} towards
 */
function outside(spot, towards) {
  const share = (spot.size / 2 + 4) / Math.hypot(towards.x - spot.x, towards.y - spot.y);
  return { x: Math.round(spot.x + (towards.x - spot.x) * share), y: Math.round(spot.y + (towards.y - spot.y) * share) };
}
