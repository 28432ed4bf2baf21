// @ts-check
/**
 * Where the sensors sit: one of the ready layouts, drawn, or positions of one's own.
 */

import { html, nothing } from 'lit-html';

import { board } from '../../shapes/board.js';
import { ask } from '../frame/ask.js';
import { textField } from '../frame/field.js';
import { layoutTile } from '../../shapes/layout-tile.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').LayoutPosition} LayoutPosition */
/** @typedef {import('../../core/views.js').LayoutView} LayoutView */
/** @typedef {import('../../core/views.js').VehicleView} VehicleView */

const OWN = 'own';
const AS_BEFORE = 'as-before';

const OWN_EDGES = [
    { id: 'rear', says: 'job-edge-rear' },
    { id: 'front', says: 'job-edge-front' },
    { id: 'left', says: 'job-edge-left' },
    { id: 'right', says: 'job-edge-right' },
];

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Record<string, string>} faults
 */
export function layoutSection(ctx, faults) {
  const { data } = ctx;
  const known = knownVehicle(ctx);
  const layout = chosenLayout(ctx);
  const tile = (/** @type {string} */ id, /** @type {string} */ name, /** @type {unknown} */ drawing) => html`<label
    class="layout-choice"
  >
    <input
      type="radio"
      name="layout"
      .checked=${layout === id}
      @change=${() => {
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
    ${layout === OWN ? ownPositions(ctx, faults) : nothing}`;
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
  const layout = chosenLayout(ctx);
  const wanted = layout === AS_BEFORE ? knownVehicle(ctx)?.layout : layout;
  return ctx.data.layouts.find((/** @type {LayoutView} */ { id }) => id === wanted) ?? ctx.data.layouts[0];
}

/**
 * The positions that were chosen, or what stands against them.
 * @param {import('../frame/context.js').Context} ctx
 * @returns {{layout: string, positions: LayoutPosition[], called: Record<string, string>, fault: string}}
 */
export function chosenPositions(ctx) {
  const layout = chosenLayout(ctx) ?? '';
  const wrong = (/** @type {string} */ fault) => ({ layout, positions: [], called: {}, fault });
  const known = knownVehicle(ctx);
  if (layout === AS_BEFORE && known) return { layout: known.layout, positions: known.positions, called: known.called, fault: '' };
  if (layout !== OWN) {
    const found = ctx.data.layouts.find((/** @type {LayoutView} */ { id }) => id === layout);
    return found ? { layout, positions: found.positions, called: found.called, fault: '' } : wrong(say('job-layout-fault'));
  }
  if (!namesOf(ctx).length) return wrong(say('job-layout-no-names'));
  const answer = askOwn(ctx);
  if (!answer) return wrong(say('job-layout-checking'));
  return answer.fault ? wrong(lineFault(answer.fault)) : { layout, positions: answer.value, called: {}, fault: '' };
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Record<string, string>} faults
 */
function ownPositions(ctx, faults) {
  const { form } = ctx;
  const edge = form.edge ?? 'rear';
  const answer = namesOf(ctx).length ? askOwn(ctx) : null;
  return html`<fieldset class="asked">
      <legend class="asked-words">${say('job-layout-edge')}</legend>
      <div class="choices choices-two">
        ${OWN_EDGES.map(
          ({ id, says }) => html`<label class="choice">
            <input
              type="radio"
              name="edge"
              .checked=${edge === id}
              @change=${() => {
                form.edge = id;
                ctx.redraw();
              }}
            />
            <span class="choice-word">${say(says)}</span>
          </label>`,
        )}
      </div>
    </fieldset>
    ${textField(ctx, 'names', say('job-layout-names'), {
      note: say('job-layout-names-note'),
      lines: 5,
      most: 1200,
      fault: faults.layout || (answer?.fault ? lineFault(answer.fault) : ''),
    })}
    ${answer?.value ? board(asBoard(answer.value, edge)) : nothing}`;
}

/** @param {import('../frame/context.js').Context} ctx @returns {string[]} */
function namesOf({ form }) {
  return (form.names ?? '')
    .split('\n')
    .map((/** @type {string} */ line) => line.trim())
    .filter(Boolean);
}

/** @param {import('../frame/context.js').Context} ctx */
function askOwn(ctx) {
  return ask(ctx, 'own_positions', { names: namesOf(ctx), edge: ctx.form.edge ?? 'rear' });
}

/**
 * The core counts from 0 inside its list; a person counts from 1.
 * @param {import('../../core/client.js').CoreError} fault
 */
function lineFault({ field, found, wanted }) {
  const place = /\[(\d+)\]/.exec(field);
  if (!place) return say('job-layout-wanted', { wanted });
  return say('job-layout-wanted-of', { number: Number(place[1]) + 1, found, wanted });
}

/**
 * @param {LayoutPosition[]} positions
 * @param {string} edge
 */
function asBoard(positions, edge) {
  return {
    kind: /** @type {'rear' | 'front' | 'around'} */ (edge === 'rear' || edge === 'front' ? edge : 'around'),
    positions: positions.map((position, index) => ({
      ...position,
      index,
      count_on_edge: positions.length,
      mark: 'untested',
      word: say('job-layout-untested'),
      unit: null,
      photo: '',
    })),
  };
}
