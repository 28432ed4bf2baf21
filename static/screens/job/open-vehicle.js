// @ts-check
/**
 * Which vehicle: it is typed, those on record that go with it stand below, and else it is a new one.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { ask } from '../frame/ask.js';
import { textField } from '../frame/field.js';
import { knownVehicle } from './open-layout.js';
import { linkTo, to } from '../frame/router.js';

/** @typedef {import('../../core/views.js').VehicleView} VehicleView */

const MOST = 4;

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Record<string, string>} faults
 */
export function vehicleSection(ctx, faults) {
  const known = knownVehicle(ctx);
  return html`
    ${known ? chosenVehicle(ctx, known) : html`${nameField(ctx, faults)} ${knownVehicles(ctx, faults)}`}
    <details class="more" ?open=${Boolean(ctx.form.vin || ctx.form.plate)}>
      <summary>${say(known ? 'job-open-plate' : 'job-open-plate-vin')}</summary>
      ${textField(ctx, 'plate', say('job-open-plate'), { most: 24, capitals: true, initial: known?.plate })}
      ${known
        ? nothing
        : textField(ctx, 'vin', say('job-open-vin'), {
            note: say('job-open-vin-note'),
            most: 24,
            capitals: true,
            wide: true,
            fault: faults.vin,
            answer: vinAnswer(ctx),
          })}
    </details>
  `;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Record<string, string>} faults
 */
function nameField(ctx, faults) {
  // Where no vehicle is on record there is none to be found by its plate.
  const note = ctx.data.latest.length ? say('job-open-vehicle-note') : '';
  return textField(ctx, 'name', say('job-open-vehicle'), { note, fault: faults.name, most: 80 });
}

/**
 * The vehicle on record that the job is on, and the way back from it.
 * @param {import('../frame/context.js').Context} ctx
 * @param {VehicleView} known
 */
function chosenVehicle(ctx, known) {
  const another = () => {
    delete ctx.form.vehicle;
    delete ctx.form.known;
    ctx.redraw();
  };
  return html`<section class="panel chosen-vehicle">
      <p class="panel-kicker">${icon('car')} ${say('job-open-vehicle')}</p>
      <p class="list-title">${known.name}</p>
      <p>${knownNote(known)}</p>
      <button class="small-button" type="button" @click=${another}>${say('job-open-another')}</button>
    </section>
    ${known.open_job
      ? html`<p class="panel panel-ask">
          ${say('job-open-still')} <a class="link-button" href=${linkTo(to.job(known.open_job))}>${say('job-open-still-go')}</a>
        </p>`
      : nothing}`;
}

/**
 * The vehicles on record that go with what was typed, each to be taken by a tap; where a plate or VIN is one's
 * of them, that it is a new one all the same is a tap too.
 * @param {import('../frame/context.js').Context} ctx
 * @param {Record<string, string>} faults
 */
function knownVehicles(ctx, faults) {
  const { form } = ctx;
  const text = (form.name ?? '').trim();
  const same = named(ctx);
  const found = [...new Map([...same, ...matching(ctx, text)].map((each) => [each.id, each])).values()];
  if (!found.length) return nothing;
  return html`<fieldset class="asked ${faults.vehicle ? 'fault-here' : ''}">
    <legend class="field-note">${say('job-open-on-record', { typed: text ? 'yes' : 'no' })}</legend>
    <div class="choices">
      ${found.map(
        (vehicle) => html`<label class="choice">
          <input
            type="radio"
            name="vehicle"
            .checked=${false}
            @change=${() => {
              form.vehicle = vehicle.id;
              form.known = vehicle;
              ctx.redraw();
            }}
          />
          <span class="choice-word">${vehicle.name}</span>
          <span class="choice-note">${knownNote(vehicle)}</span>
        </label>`,
      )}
      ${same.length
        ? html`<label class="choice">
            <input
              type="radio"
              name="vehicle"
              .checked=${!isOnRecord(ctx)}
              @change=${() => {
                form.others = same.map(({ id }) => id);
                ctx.redraw();
              }}
            />
            <span class="choice-word">${say('job-open-new-one')}</span>
          </label>`
        : nothing}
    </div>
    ${faults.vehicle ? html`<p class="field-fault">${faults.vehicle}</p>` : nothing}
  </fieldset>`;
}

/**
 * What the core has found by each text, by the data of the screen, for another log may hold others; null until it came.
 * @type {WeakMap<object, Map<string, {found: VehicleView[] | null, come: Promise<void>}>>}
 */
const answers = new WeakMap();

/**
 * Ask the core, once, what a text finds.
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} text
 */
function asked(ctx, text) {
  const { services, data } = ctx;
  const known = answers.get(data) ?? new Map([['', { found: data.latest, come: Promise.resolve() }]]);
  answers.set(data, known);
  const before = known.get(text);
  if (before) return before;
  const come = services.core.call('vehicles', { text, most: MOST }).then((/** @type {VehicleView[]} */ found) => {
    known.set(text, { found, come });
    if (typed(ctx).includes(text)) ctx.redraw();
  });
  known.set(text, { found: null, come });
  return { found: null, come };
}

/**
 * The vehicles that a text finds; until the core has said so, those of the text before.
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} text
 * @returns {VehicleView[]}
 */
function matching(ctx, text) {
  const { found } = asked(ctx, text);
  const before = [...(answers.get(ctx.data)?.values() ?? [])].map((each) => each.found).filter(Boolean);
  return found ?? before.pop() ?? [];
}

/** Whatever was typed that may be a plate or a VIN. @param {import('../frame/context.js').Context} ctx */
function typed({ form }) {
  return [form.name, form.plate, form.vin].map((text) => (text ?? '').trim()).filter(Boolean);
}

/** The vehicles whose plate or VIN was typed. @param {import('../frame/context.js').Context} ctx */
function named(ctx) {
  return typed(ctx).flatMap((text) => (asked(ctx, text).found ?? []).filter((/** @type {VehicleView} */ vehicle) => vehicle.is_it));
}

/**
 * Whether the plate or VIN that was typed is a known vehicle's, of which nobody said that this is another one.
 * @param {import('../frame/context.js').Context} ctx
 */
export function isOnRecord(ctx) {
  return named(ctx).some(({ id }) => !ctx.form.others?.includes(id));
}

/**
 * Wait until the core has said which vehicles go with what was typed.
 * @param {import('../frame/context.js').Context} ctx
 */
export async function vehiclesAsked(ctx) {
  await Promise.all(typed(ctx).map((text) => asked(ctx, text).come));
}

/** @param {VehicleView} vehicle */
function knownNote({ plate, vin, positions: { length: count } }) {
  return [plate || vin, say('job-open-known', { count })].filter(Boolean).join(' · ');
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
