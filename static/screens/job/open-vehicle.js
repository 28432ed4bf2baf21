// @ts-check
/**
 * Which vehicle: one that is on record, or a new one with its name and its number.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { ask } from '../frame/ask.js';
import { textField } from '../frame/field.js';
import { knownVehicle } from './open-layout.js';
import { linkTo, to } from '../frame/router.js';

/** @typedef {import('../../core/views.js').VehicleView} VehicleView */

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Record<string, string>} faults
 */
export function vehicleSection(ctx, faults) {
  const { data } = ctx;
  return html`
    ${data.vehicles.length ? knownVehicles(ctx) : nothing}
    ${knownVehicle(ctx)
      ? nothing
      : html`${textField(ctx, 'name', say('job-open-vehicle'), {
          fault: faults.name,
          most: 80,
        })}
        <details class="more" ?open=${Boolean(ctx.form.vin)}>
          <summary>${say('job-open-vin')}</summary>
          ${textField(ctx, 'vin', say('job-open-vin'), {
            note: say('job-open-vin-note'),
            most: 24,
            capitals: true,
            wide: true,
            fault: faults.vin,
            answer: vinAnswer(ctx),
          })}
        </details>`}
  `;
}

/** @param {import('../frame/context.js').Context} ctx */
function knownVehicles(ctx) {
  const { form, data } = ctx;
  const choice = (/** @type {string} */ id, /** @type {string} */ words, /** @type {string} */ note) => html`<label
    class="choice"
  >
    <input
      type="radio"
      name="vehicle"
      .checked=${(form.vehicle ?? '') === id}
      @change=${() => {
        form.vehicle = id;
        ctx.redraw();
      }}
    />
    <span class="choice-word">${words}</span>
    ${note ? html`<span class="choice-note">${note}</span>` : nothing}
  </label>`;
  const chosen = knownVehicle(ctx);
  return html`<fieldset class="asked">
    <legend class="asked-words">${say('job-open-which')}</legend>
    <div class="choices">
      ${choice('', say('job-open-new'), '')}
      ${data.vehicles.map((/** @type {VehicleView} */ vehicle) =>
        choice(vehicle.id, vehicle.name, knownNote(vehicle)),
      )}
    </div>
    ${chosen?.open_job
      ? html`<p class="panel panel-ask">
          ${say('job-open-still')} <a class="link-button" href=${linkTo(to.job(chosen.open_job))}>${say('job-open-still-go')}</a>
        </p>`
      : nothing}
  </fieldset>`;
}

/** @param {VehicleView} vehicle */
function knownNote({ positions: { length: count }, vin }) {
  return vin ? say('job-open-known-vin', { count, vin }) : say('job-open-known', { count });
}

/**
 * How the number stands while it is typed: how far, which character cannot be, whether its digit fits.
 * @param {import('../frame/context.js').Context} ctx
 */
function vinAnswer(ctx) {
  const typed = (ctx.form.vin ?? '').trim();
  if (!typed) return nothing;
  const answer = ask(ctx, 'vin', { vin: typed })?.value;
  const signs = { fits: 'tick', does_not_fit: 'ask', wrong_character: 'cross', incomplete: 'keys' };
  const state = /** @type {keyof typeof signs | undefined} */ (answer?.state);
  return html`<p class="vin-answer" data-state=${state ?? 'incomplete'} role="status">
    ${state && state in signs ? icon(signs[state]) : nothing}
    <span>${answer?.sentence ?? ''}</span>
  </p>`;
}
