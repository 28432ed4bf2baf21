// @ts-check
/**
 * Drawing a layout of one's own: positions are tapped onto the plan and dragged to their places; whatever a finger
 * does there, the numbers and arrows below it do as well. Read late, like all that is opened rarely.
 */

import { html, nothing, svg } from 'lit-html';
import { live } from 'lit-html/directives/live.js';

import { saveFile } from '../../phone/save-file.js';
import { planGeometry } from '../../shapes/board-geometry.js';
import { icon } from '../../shapes/icons.js';
import { DRAWING_WIDTH, engineAbove, vehicleAbove } from '../../shapes/vehicle.js';
import { say } from '../../words/words.js';
import { oneOf } from '../frame/one-of.js';
import { reachStepper } from './reach.js';
import { lineFault } from './open-layout.js';

/** @typedef {import('../../core/views.js').DrawnPosition} DrawnPosition */
/** @typedef {import('../../core/views.js').SortView} SortView */
/** @typedef {{sort: string, model: string, positions: DrawnPosition[], at: number, fault?: string}} Drawing  `at` is the chosen one */

const FAR_END = 1000;
const MOST = 24;
const AN_ARROW = 20;
/** Where one that is added by the button may come to lie, on both sides of the plan. */
const APART = 200;
const PLACES = [100, 300, 500, 700, 900];
/** In units of the drawing: as near as this, a finger means the position that is there. */
const NEAR = 16;
/** Nearer than this, one number covers the other. */
const COVERED = 10;
const MOST_FILE = 100_000;
const GROUPS = { front: 'shapes-edge-front', rear: 'shapes-edge-rear', left: 'shapes-edge-left', right: 'shapes-edge-right' };
const ARROWS = [
  { way: 'left', x: -1, y: 0 },
  { way: 'up', x: 0, y: -1 },
  { way: 'down', x: 0, y: 1 },
  { way: 'right', x: 1, y: 0 },
];

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} fault  what stands against the layout as it is
 */
export function layoutEditor(ctx, fault) {
  /** @type {Drawing} */
  const drawing = ctx.form.drawn;
  const chosen = drawing.positions[drawing.at];
  const { outline } = ctx.data.sorts.find((/** @type {SortView} */ { id }) => id === drawing.sort);
  return html`<section class="screen-stack">
    ${oneOf({
      name: 'sort',
      label: say('job-layout-heading'),
      options: ctx.data.sorts.map((/** @type {SortView} */ { id }) => ({ id, words: say('job-draw-sort', { sort: id }) })),
      chosen: drawing.sort,
      pick: (id) => change(ctx, { sort: id }),
    })}
    <p>${say('job-draw-lead')}</p>
    ${plan(ctx, drawing, outline)} ${numbers(ctx, drawing)}
    ${fault ? html`<p class="field-fault" role="alert">${fault}</p>` : nothing}
    ${chosen ? details(ctx, drawing, chosen) : nothing}
    ${typed(say('job-draw-model'), drawing.model, (model) => change(ctx, { model }), say('job-draw-model-note'))}
    ${files(ctx, drawing)}
  </section>`;
}

/** @param {import('../frame/context.js').Context} ctx @param {Partial<Drawing>} what */
function change(ctx, what) {
  Object.assign(ctx.form.drawn, what);
  ctx.redraw();
}

/** @param {import('../frame/context.js').Context} ctx @param {Partial<DrawnPosition>} what */
function changeChosen(ctx, what) {
  Object.assign(ctx.form.drawn.positions[ctx.form.drawn.at], what);
  ctx.redraw();
}

/**
 * Move the chosen position; it shares its supply with those of its new place, unless somebody said otherwise.
 * @param {import('../frame/context.js').Context} ctx
 * @param {{x: number, y: number}} place
 */
function moveChosen(ctx, place) {
  const chosen = ctx.form.drawn.positions[ctx.form.drawn.at];
  changeChosen(ctx, chosen.group === groupAt(chosen) ? { ...place, group: groupAt(place) } : place);
}

/** Which group a place mostly belongs to. @param {{x: number, y: number}} place */
function groupAt({ x, y }) {
  if (y < FAR_END / 3) return 'front';
  if (y > (FAR_END * 2) / 3) return 'rear';
  return x < FAR_END / 2 ? 'left' : 'right';
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Drawing} drawing
 * @param {'vehicle' | 'engine'} outline
 */
function plan(ctx, drawing, outline) {
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

/** A whole number on the plan. @param {number} place */
function within(place) {
  return Math.round(Math.min(FAR_END, Math.max(0, place)));
}

/**
 * The place nearest to the middle that no position covers: there are more of them than positions may be.
 * @param {DrawnPosition[]} positions
 */
function freePlace(positions) {
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
function add(ctx, { x, y }) {
  const { positions } = ctx.form.drawn;
  if (positions.length === MOST) return;
  const taken = positions.map((/** @type {DrawnPosition} */ { name }) => name);
  const name = Array.from({ length: MOST + 1 }, (_, n) => String(n + 1)).find((each) => !taken.includes(each)) ?? '';
  change(ctx, { positions: [...positions, { name, group: groupAt({ x, y }), reach_minutes: 3, x, y, part: '', pins: '' }], at: positions.length });
}

/**
 * The positions by their numbers, and the arrows that move the chosen one: for a keyboard, and for fingers that shake.
 * @param {import('../frame/context.js').Context} ctx
 * @param {Drawing} drawing
 */
function numbers(ctx, drawing) {
  const chosen = drawing.positions[drawing.at];
  return html`<div class="plan-row" role="group" aria-label=${say('job-draw-positions')}>
      ${drawing.positions.map(
        ({ name }, n) => html`<button class="small-button" type="button" aria-label=${name} aria-pressed=${n === drawing.at ? 'true' : 'false'}
          @click=${() => change(ctx, { at: n })}>${n + 1}</button>`,
      )}
      <button class="small-button" type="button" ?disabled=${drawing.positions.length === MOST}
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

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Drawing} drawing
 * @param {DrawnPosition} chosen
 */
function details(ctx, drawing, chosen) {
  const remove = () => change(ctx, { positions: drawing.positions.filter((each) => each !== chosen), at: -1 });
  return html`<section class="card">
    <h2>${say('job-draw-chosen', { number: drawing.at + 1 })}</h2>
    ${typed(say('job-draw-name'), chosen.name, (name) => changeChosen(ctx, { name }), '', 40)}
    <p class="field-name">${say('job-draw-group')}</p>
    ${oneOf({
      name: 'group',
      label: say('job-draw-group'),
      options: Object.entries(GROUPS).map(([id, says]) => ({ id, words: say(says) })),
      chosen: chosen.group,
      pick: (group) => changeChosen(ctx, { group }),
      two: true,
    })}
    <p class="field-name">${say('job-position-reach')}</p>
    ${reachStepper({ name: chosen.name, minutes: chosen.reach_minutes, set: (minutes) => changeChosen(ctx, { reach_minutes: minutes }) })}
    ${typed(say('job-draw-part'), chosen.part, (part) => changeChosen(ctx, { part }))}
    ${typed(say('job-draw-pins'), chosen.pins, (pins) => changeChosen(ctx, { pins }), say('job-draw-pins-note'))}
    <button class="small-button" type="button" @click=${remove}>${icon('cross')} ${say('job-draw-remove')}</button>
  </section>`;
}

/**
 * @param {string} words
 * @param {string} value
 * @param {(value: string) => void} set
 * @param {string} [note]
 * @param {number} [most]
 */
function typed(words, value, set, note = '', most = 80) {
  return html`<label class="field">
    <span class="field-name">${words}</span>
    ${note ? html`<span class="field-note">${note}</span>` : nothing}
    <input type="text" maxlength=${most} autocomplete="off" .value=${live(value)}
      @input=${(/** @type {{target: HTMLInputElement}} */ { target }) => set(target.value)} />
  </label>`;
}

/**
 * Another program may have written a letter beyond the first 65,536 as two halves, which the core's reader leaves apart.
 * @param {string} text
 */
function asWritten(text) {
  if (!/\\ud[89ab]/i.test(text)) return text;
  try {
    return JSON.stringify(JSON.parse(text));
  } catch {
    return text; // damaged: the core says how
  }
}

/**
 * The layout as a file, for another phone.
 * @param {import('../frame/context.js').Context} ctx
 * @param {Drawing} drawing
 */
function files(ctx, drawing) {
  const { core } = ctx.services;
  const or = async (/** @type {() => Promise<void>} */ task) => {
    drawing.fault = '';
    await task().catch((fault) => change(ctx, { fault: fault.field ? lineFault(fault) : String(fault.message) }));
  };
  const save = () => or(async () => {
    const { sort, model, positions } = drawing;
    const { text } = await core.call('layout_file', { sort, model, positions });
    saveFile(new File([text], 'layout.json', { type: 'application/json' }));
  });
  const read = (/** @type {{target: HTMLInputElement}} */ { target }) => or(async () => {
    const file = target.files?.[0];
    target.value = '';
    // Longer than any layout: the core says so of its first part.
    if (file) change(ctx, { ...(await core.call('read_layout', { text: asWritten(await file.slice(0, MOST_FILE * 4 + 4).text()) })), at: -1 });
  });
  return html`<div class="plan-row">
      <button class="small-button" type="button" ?disabled=${!drawing.positions.length} @click=${save}>${icon('out')} ${say('job-draw-save')}</button>
      <label class="small-button file-button">${icon('in')} ${say('job-draw-read')}
        <input class="aloud" type="file" accept=".json,application/json" @change=${read} /></label>
    </div>
    ${drawing.fault ? html`<p class="field-fault" role="alert">${drawing.fault}</p>` : nothing}`;
}
