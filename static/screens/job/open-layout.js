// @ts-check
/**
 * Where the sensors sit: one of the ready layouts, drawn, or positions of one's own.
 */

import { html, nothing } from 'lit-html';

import { ask } from '../frame/ask.js';
import { layoutTile } from '../../shapes/layout-tile.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').LayoutPosition} LayoutPosition */
/** @typedef {import('../../core/views.js').LayoutView} LayoutView */
/** @typedef {import('../../core/views.js').SortView} SortView */
/** @typedef {import('../../core/views.js').VehicleView} VehicleView */

const OWN = 'own';
const AS_BEFORE = 'as-before';

/** What a layout is drawn with, once somebody draws one. @type {typeof import('../rare-pages.js') | null} */
let rare = null;

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Record<string, string>} faults
 */
export function layoutSection(ctx, faults) {
  const { data } = ctx;
  const known = knownVehicle(ctx);
  const layout = chosenLayout(ctx);
  /** @type {LayoutView | undefined} */
  const kept = data.layouts.find((/** @type {LayoutView} */ { id }) => id === layout);
  const tile = (/** @type {string} */ id, /** @type {string} */ name, /** @type {unknown} */ drawing) => html`<label
    class="layout-choice"
  >
    <input
      type="radio"
      name="layout"
      .checked=${layout === id}
      @change=${() => {
        if (id === OWN) return draw(ctx);
        ctx.form.layout = id;
        ctx.redraw();
      }}
    />
    ${drawing}
    <span class="layout-name">${name}</span>
  </label>`;
  return html`<fieldset class="asked ${faults.layout && layout !== OWN ? 'fault-here' : ''}">
      <legend class="asked-words">${say('job-layout-heading')}</legend>
      <div class="layout-choices">
        ${known
          ? tile(AS_BEFORE, say('job-layout-as-before', { count: known.positions.length }), layoutTile(known.positions))
          : nothing}
        ${data.layouts.map((/** @type {LayoutView} */ each) => tile(each.id, each.name, layoutTile(each.positions, each.outline)))}
        ${tile(OWN, say('job-layout-own'), layoutTile([]))}
      </div>
      ${faults.layout && layout !== OWN ? html`<p class="field-fault">${faults.layout}</p>` : nothing}
    </fieldset>
    ${layout === OWN ? ownPositions(ctx, faults) : nothing}
    ${kept?.model ? html`<button class="small-button" type="button" @click=${() => draw(ctx, kept)}>${say('job-draw-change')}</button>` : nothing}`;
}

/**
 * The vehicle on record that was chosen.
 * @param {import('../frame/context.js').Context} ctx
 * @returns {VehicleView | undefined}
 */
export function knownVehicle({ form }) {
  return form.known?.id === form.vehicle ? form.known : undefined;
}

/** @param {import('../frame/context.js').Context} ctx @returns {string | undefined} */
function chosenLayout(ctx) {
  const { layout } = ctx.form;
  if (!knownVehicle(ctx)) return layout === AS_BEFORE ? undefined : layout;
  return layout ?? AS_BEFORE;
}

/**
 * The ready layout that was chosen or that the vehicle had; until then the first one, whose sort comes first.
 * @param {import('../frame/context.js').Context} ctx
 * @returns {LayoutView}
 */
export function chosenReady(ctx) {
  const { layouts } = ctx.data;
  const chosen = chosenLayout(ctx);
  const layout = chosen === AS_BEFORE ? knownVehicle(ctx)?.layout : chosen;
  const sort = layout === OWN ? ctx.form.drawn?.sort : layout?.split('/')[0];
  return layouts.find((/** @type {LayoutView} */ each) => each.id === layout) ?? layouts.find((/** @type {LayoutView} */ each) => each.sort === sort) ?? layouts[0];
}

/**
 * The positions that were chosen, or what stands against them.
 * @param {import('../frame/context.js').Context} ctx
 * @returns {{layout: string, model: string, positions: LayoutPosition[], called: Record<string, string>, fault: string}}
 */
export function chosenPositions(ctx) {
  const layout = chosenLayout(ctx) ?? '';
  const wrong = (/** @type {string} */ fault) => ({ layout, model: '', positions: [], called: {}, fault });
  const known = knownVehicle(ctx);
  if (layout === AS_BEFORE && known) return { layout: known.layout, model: '', positions: known.positions, called: known.called, fault: '' };
  if (layout !== OWN) {
    const found = ctx.data.layouts.find((/** @type {LayoutView} */ { id }) => id === layout);
    return found ? { ...found, fault: '' } : wrong(say('job-layout-fault'));
  }
  if (!ctx.form.drawn?.positions.length) return wrong(say('job-layout-no-names'));
  const answer = askOwn(ctx);
  if (!answer) return wrong(say('job-layout-checking'));
  const { sort, model } = ctx.form.drawn;
  const recorded = ctx.data.sorts.find((/** @type {SortView} */ { id }) => id === sort).layout;
  return answer.fault ? wrong(lineFault(answer.fault)) : { layout: recorded, model: model.trim(), positions: answer.value, called: {}, fault: '' };
}

/**
 * Begin to draw, on what another layout has if one is named.
 * @param {import('../frame/context.js').Context} ctx
 * @param {LayoutView} [from]
 */
function draw({ form, data, redraw }, from) {
  form.layout = OWN;
  if (from) form.drawn = { sort: from.sort, model: from.model, positions: from.drawn, at: -1 };
  form.drawn ??= { sort: data.sorts[0].id, model: '', positions: [], at: -1 };
  redraw();
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Record<string, string>} faults
 */
function ownPositions(ctx, faults) {
  const { form, redraw } = ctx;
  if (!rare) {
    import('../rare-pages.js').then(
      (read) => {
        rare = read;
        redraw();
      },
      () => {
        form.drawnFault = say('frame-screen-missing');
        redraw();
      },
    );
    return html`<p role="status">${form.drawnFault ?? ''}</p>`;
  }
  const answer = form.drawn.positions.length ? askOwn(ctx) : null;
  return rare.layoutEditor(ctx, faults.layout || (answer?.fault ? lineFault(answer.fault) : ''));
}

/** @param {import('../frame/context.js').Context} ctx */
function askOwn(ctx) {
  const { sort, positions } = ctx.form.drawn;
  return ask(ctx, 'drawn_positions', { sort, positions });
}

/**
 * The core counts from 0 inside its list; a person counts from 1.
 * @param {import('../../core/client.js').CoreError} fault
 */
export function lineFault({ field, found, wanted }) {
  const place = /\[(\d+)\]/.exec(field);
  const of = field.replace(/\[\d+\]$/, '').split('.').at(-1) ?? '';
  return place ? say('job-layout-wanted-of', { of, number: Number(place[1]) + 1, found, wanted }) : say('job-layout-wanted', { of, found, wanted });
}
