// @ts-check
/**
 * The form that draws a layout of one's own: its plan, and what is to be said of each position. Read late, like all
 * that is opened rarely.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { typedField } from '../frame/field.js';
import { oneOf } from '../frame/one-of.js';
import { numbers, plan } from './drawn-plan.js';
import { change, changeChosen } from './layout-drawing.js';
import { files } from './layout-file.js';
import { reachStepper } from './reach.js';

/** @typedef {import('../../core/views.js').DrawnPosition} DrawnPosition */
/** @typedef {import('../../core/views.js').SortView} SortView */
/** @typedef {import('./layout-drawing.js').Drawing} Drawing */

/** Characters, as the core takes them (`server/core/parts/layouts.py`). */
const MOST_NAME = 40;
const MOST_NOTED = 80;
const GROUPS = { front: 'shapes-edge-front', rear: 'shapes-edge-rear', left: 'shapes-edge-left', right: 'shapes-edge-right' };

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
    ${typedField(say('job-draw-model'), drawing.model, (model) => change(ctx, { model }), { note: say('job-draw-model-note'), most: MOST_NOTED })}
    ${files(ctx, drawing)}
  </section>`;
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
    ${typedField(say('job-draw-name'), chosen.name, (name) => changeChosen(ctx, { name }), { most: MOST_NAME })}
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
    ${typedField(say('job-draw-part'), chosen.part, (part) => changeChosen(ctx, { part }), { most: MOST_NOTED })}
    ${typedField(say('job-draw-pins'), chosen.pins, (pins) => changeChosen(ctx, { pins }), { note: say('job-draw-pins-note'), most: MOST_NOTED })}
    <button class="small-button" type="button" @click=${remove}>${icon('cross')} ${say('job-draw-remove')}</button>
  </section>`;
}
