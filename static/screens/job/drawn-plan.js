// @ts-check
/**
 * The plan of a layout that is being drawn: positions are tapped onto it and dragged to their places; whatever a finger
 * does there, the numbers and arrows below it do as well.
 */

import { html, nothing, svg } from 'lit-html';

import { planGeometry } from '../../shapes/board-geometry.js';
import { icon } from '../../shapes/icons.js';
import { DRAWING_WIDTH, engineAbove, vehicleAbove } from '../../shapes/vehicle.js';
import { say } from '../../words/words.js';
import { add, change, FAR_END, freePlace, MOST_POSITIONS, moveChosen, within } from './layout-drawing.js';

/** @typedef {import('./layout-drawing.js').Drawing} Drawing */

const AN_ARROW = 20;
/** In units of the drawing: as near as this, a finger means the position that is there. */
const NEAR = 16;
/** Nearer than this, one number covers the other. */
const COVERED = 10;
const ARROWS = [
  { way: 'left', x: -1, y: 0 },
  { way: 'up', x: 0, y: -1 },
  { way: 'down', x: 0, y: 1 },
  { way: 'right', x: 1, y: 0 },
];

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Drawing} drawing
 * @param {'vehicle' | 'engine'} outline
 */
export function plan(ctx, drawing, outline) {
  const placed = drawing.positions.map(({ x, y }, n) => ({
    id: String(n), name: '', edge: /** @type {const} */ ('rear'), index: n, mark: 'untested', word: '', unit: null, x, y,
  }));
  const { spots, box, height } = planGeometry(placed, outline);
  /** Where a finger is, in units of the drawing. @param {PointerEvent} event */
  const under = (event) => {
    const seen = /** @type {SVGElement} */ (event.currentTarget).getBoundingClientRect();
    const scale = DRAWING_WIDTH / seen.width;
    return { x: (event.clientX - seen.left) * scale, y: (event.clientY - seen.top) * scale };
  };
  const onPlan = (/** @type {{x: number, y: number}} */ { x, y }) => ({
    x: within(((x - box.left) / (box.right - box.left)) * FAR_END),
    y: within(((y - box.top) / (box.bottom - box.top)) * FAR_END),
  });
  const down = (/** @type {PointerEvent} */ event) => {
    const point = under(event);
    const [nearest] = spots
      .map((spot, n) => ({ n, far: Math.hypot(spot.x - point.x, spot.y - point.y) }))
      .sort((one, other) => one.far - other.far);
    /** @type {Element} */ (event.currentTarget).setPointerCapture(event.pointerId);
    if (nearest?.far <= NEAR) change(ctx, { at: nearest.n });
    else add(ctx, onPlan(point));
  };
  const move = (/** @type {PointerEvent} */ event) => {
    const held = /** @type {Element} */ (event.currentTarget).hasPointerCapture(event.pointerId);
    if (held && ctx.form.drawn.at >= 0) moveChosen(ctx, onPlan(under(event)));
  };
  return html`<svg class="plan" viewBox="0 0 ${DRAWING_WIDTH} ${height}" aria-hidden="true" @pointerdown=${down} @pointermove=${move}>
    ${outline === 'engine' ? engineAbove(box) : vehicleAbove(box)}
    ${spots.map(
      (spot, n) => svg`<circle class=${n === drawing.at ? 'plan-spot plan-chosen' : 'plan-spot'} cx=${spot.x} cy=${spot.y} r=${Math.max(11, spot.size / 2)} />
        <text class="plan-number" x=${spot.x} y=${spot.y + 5} text-anchor="middle">${n + 1}</text>`,
    )}
  </svg>
  ${covered(spots)}`;
}

/**
 * Which position nobody sees, because another lies on it.
 * @param {Array<{x: number, y: number}>} spots
 */
function covered(spots) {
  const near = (/** @type {number} */ n) => spots.some((spot, m) => m !== n && Math.hypot(spot.x - spots[n].x, spot.y - spots[n].y) < COVERED);
  const numbers = spots.flatMap((_, n) => (near(n) ? [String(n + 1)] : []));
  return numbers.length ? html`<p class="field-fault" role="status">${say('job-draw-covered', { numbers: { figure: 'and', of: numbers } })}</p>` : nothing;
}

/**
 * The positions by their numbers, and the arrows that move the chosen one: for a keyboard, and for fingers that shake.
 * @param {import('../frame/context.js').Context} ctx
 * @param {Drawing} drawing
 */
export function numbers(ctx, drawing) {
  const chosen = drawing.positions[drawing.at];
  return html`<div class="plan-row" role="group" aria-label=${say('job-draw-positions')}>
      ${drawing.positions.map(
        ({ name }, n) => html`<button class="small-button" type="button" aria-label=${name} aria-pressed=${n === drawing.at ? 'true' : 'false'}
          @click=${() => change(ctx, { at: n })}>${n + 1}</button>`,
      )}
      <button class="small-button" type="button" ?disabled=${drawing.positions.length === MOST_POSITIONS}
        @click=${() => add(ctx, freePlace(drawing.positions))}>${icon('plus')} ${say('job-draw-add')}</button>
    </div>
    ${chosen
      ? html`<div class="plan-row" role="group" aria-label=${say('job-draw-move')}>
          ${ARROWS.map(
            ({ way, x, y }) => html`<button class="small-button plan-arrow" type="button" data-way=${way} aria-label=${say('job-draw-way', { way })}
              @click=${() => moveChosen(ctx, { x: within(chosen.x + x * AN_ARROW), y: within(chosen.y + y * AN_ARROW) })}>
              ${icon('forward')}
            </button>`,
          )}
        </div>`
      : nothing}`;
}
