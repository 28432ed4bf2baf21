// @ts-check
/**
 * A layout that is being drawn, and what changes it: it lies in `ctx.form.drawn`, so that it outlives the page.
 */

/** @typedef {import('../../core/views.js').DrawnPosition} DrawnPosition */
/** @typedef {{sort: string, model: string, positions: DrawnPosition[], at: number, fault?: string}} Drawing  `at` is the chosen one */

/** The plan is so wide and so long. */
export const FAR_END = 1000;
/** As many positions as the core takes. */
export const MOST_POSITIONS = 24;
/** Where one that is added by the button may come to lie, on both sides of the plan. */
const APART = 200;
const PLACES = [100, 300, 500, 700, 900];

/** @param {import('../frame/context.js').Context} ctx @param {Partial<Drawing>} what */
export function change(ctx, what) {
  Object.assign(ctx.form.drawn, what);
  ctx.redraw();
}

/** @param {import('../frame/context.js').Context} ctx @param {Partial<DrawnPosition>} what */
export function changeChosen(ctx, what) {
  Object.assign(ctx.form.drawn.positions[ctx.form.drawn.at], what);
  ctx.redraw();
}

/**
 * Move the chosen position; it shares its supply with those of its new place, unless somebody said otherwise.
 * @param {import('../frame/context.js').Context} ctx
 * @param {{x: number, y: number}} place
 */
export function moveChosen(ctx, place) {
  const chosen = ctx.form.drawn.positions[ctx.form.drawn.at];
  changeChosen(ctx, chosen.group === groupAt(chosen) ? { ...place, group: groupAt(place) } : place);
}

/** Which group a place mostly belongs to. @param {{x: number, y: number}} place */
function groupAt({ x, y }) {
  if (y < FAR_END / 3) return 'front';
  if (y > (FAR_END * 2) / 3) return 'rear';
  return x < FAR_END / 2 ? 'left' : 'right';
}

/** A whole number on the plan. @param {number} place */
export function within(place) {
  return Math.round(Math.min(FAR_END, Math.max(0, place)));
}

/**
 * The place nearest to the middle that no position covers: there are more of them than positions may be.
 * @param {DrawnPosition[]} positions
 */
export function freePlace(positions) {
  const fromMiddle = (/** @type {{x: number, y: number}} */ { x, y }) => Math.hypot(x - FAR_END / 2, y - FAR_END / 2);
  const isFree = (/** @type {{x: number, y: number}} */ spot) =>
    positions.every(({ x, y }) => Math.max(Math.abs(x - spot.x), Math.abs(y - spot.y)) >= APART / 2);
  const [nearest] = PLACES.flatMap((y) => PLACES.map((x) => ({ x, y })))
    .filter(isFree)
    .sort((one, other) => fromMiddle(one) - fromMiddle(other));
  return nearest;
}

/**
 * Put one more position on the plan; it is the chosen one.
 * @param {import('../frame/context.js').Context} ctx
 * @param {{x: number, y: number}} place
 */
export function add(ctx, { x, y }) {
  const { positions } = ctx.form.drawn;
  if (positions.length === MOST_POSITIONS) return;
  const taken = positions.map((/** @type {DrawnPosition} */ { name }) => name);
  const name = Array.from({ length: MOST_POSITIONS + 1 }, (_, n) => String(n + 1)).find((each) => !taken.includes(each)) ?? '';
  change(ctx, { positions: [...positions, { name, group: groupAt({ x, y }), reach_minutes: 3, x, y, part: '', pins: '' }], at: positions.length });
}
