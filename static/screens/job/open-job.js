// @ts-check
/**
 * Opening a job: who, which vehicle, what is wrong, where its sensors sit. One page, nothing recorded
 * before the button at its end, nothing typed lost before that.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../words/words.js';
import { ask } from '../frame/ask.js';
import { textField } from '../frame/field.js';
import { oneOf } from '../frame/one-of.js';
import { chosenPositions, chosenReady, knownVehicle, layoutSection } from './open-layout.js';
import { isOnRecord, vehicleSection, vehiclesAsked } from './open-vehicle.js';
import { reachSection, withReach } from './reach.js';
import { to } from '../frame/router.js';

const LONGEST_NAME = 80;
/** Vehicles that stand there before anything is typed. */
const LATEST = 3;

export const openJobPage = {
  /** @param {import('../frame/context.js').Services} services */
  load: async ({ core, device }) => ({
    layouts: await core.call('layouts'),
    sorts: await core.call('sorts'),
    latest: await core.call('vehicles', { most: LATEST }),
    actor: device.actor,
  }),

  formKey: () => 'open-job',

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { form, data } = ctx;
    const faults = form.tried ? faultsOf(ctx) : {};
    const count = Object.keys(faults).length;
    return {
      title: say('job-list-open-one'),
      titled: true,
      back: to.jobs(),
      body: html`
        ${count
          ? html`<p class="notice notice-fault" role="alert">
              ${say('job-open-faults', { count })}
            </p>`
          : nothing}
        ${data.actor
          ? nothing
          : textField(ctx, 'actor', say('job-open-actor'), {
              note: say('job-open-actor-note'),
              fault: faults.actor,
              autocomplete: 'name',
              most: LONGEST_NAME,
            })}
        ${vehicleSection(ctx, faults)}
        ${layoutSection(ctx, faults)} ${complaintSection(ctx)} ${reachSection(ctx, chosenPositions(ctx))}
        ${textField(ctx, 'part', say('job-open-part'), {
          note: say('job-open-part-note'),
          most: LONGEST_NAME,
          capitals: true,
          initial: knownVehicle(ctx)?.part,
        })}
      `,
      main: { words: say('job-open-button'), run: () => openJob(ctx) },
    };
  },
};

/**
 * What is wrong: one of the usual complaints by a tap, or one's own words.
 * @param {import('../frame/context.js').Context} ctx
 */
function complaintSection(ctx) {
  const { form } = ctx;
  const said = chosenReady(ctx).complaints;
  return html`<fieldset class="asked">
    <legend class="asked-words">${say('job-open-complaint')}</legend>
    ${oneOf({
      name: 'complaint',
      options: said.map((words) => ({ id: words, words })),
      chosen: form.complaint,
      pick: (words) => {
        form.complaint = words;
        ctx.redraw();
      },
      two: true,
    })}
    <details class="more" ?open=${Boolean(form.complaint && !said.includes(form.complaint))}>
      <summary>${say('job-open-complaint-own')}</summary>
      ${textField(ctx, 'complaint', say('job-open-complaint'), { lines: 2, most: 500 })}
    </details>
  </fieldset>`;
}

/**
 * What is missing or wrong, by field.
 * @param {import('../frame/context.js').Context} ctx
 * @returns {Record<string, string>}
 */
function faultsOf(ctx) {
  const { form, data } = ctx;
  /** @type {Record<string, string>} */
  const faults = {};
  if (!data.actor && !form.actor?.trim()) faults.actor = say('job-open-actor-fault');
  const { fault } = chosenPositions(ctx);
  if (fault) faults.layout = fault;
  if (knownVehicle(ctx)) return faults;
  if (!form.name?.trim()) faults.name = say('job-open-name-fault');
  const vin = form.vin?.trim() ? ask(ctx, 'vin', { vin: form.vin.trim() })?.value : null;
  if (vin?.state === 'wrong_character') faults.vin = say('job-open-vin-fault');
  if (isOnRecord(ctx)) faults.vehicle = say('job-open-on-record-fault');
  return faults;
}

/** @param {import('../frame/context.js').Context} ctx */
async function openJob(ctx) {
  const { form, data, services } = ctx;
  form.tried = true;
  if (!knownVehicle(ctx)) await vehiclesAsked(ctx);
  if (Object.keys(faultsOf(ctx)).length) {
    ctx.redraw();
    showFirstFault();
    return;
  }
  if (!data.actor) await services.device.setActor(form.actor);
  // Made once: a second try after a failed save is the same job.
  form.job ??= services.device.newId('j');
  form.newVehicle ??= services.device.newId('v');
  const { job } = form;
  // How the past of a vehicle that was here before counts, and what the yard goes by, is recorded with the opening.
  const opened = jobOpened(ctx);
  const learned = await services.core.call('learned', { layout: opened.data.layout });
  await ctx.act([opened, ...(knownVehicle(ctx)?.opens_with ?? []), ...learned.opens_with], {
    job,
    after: () => {
      ctx.forget();
      ctx.go(to.job(job), { replace: true });
    },
  });
}

/** @param {import('../frame/context.js').Context} ctx */
function jobOpened(ctx) {
  const { form } = ctx;
  const known = knownVehicle(ctx);
  const plate = (form.plate ?? known?.plate ?? '').trim();
  const { layout, model, positions } = chosenPositions(ctx);
  const vehicle = known
    ? { id: known.id, name: known.name, vin: known.vin }
    : { id: form.newVehicle, name: form.name.trim(), vin: (form.vin ?? '').replace(/[\s-]/g, '').toUpperCase() };
  const part = (form.part ?? known?.part ?? '').trim();
  return {
    kind: 'job_opened',
    data: { vehicle: { ...vehicle, ...(plate && { plate }), ...(model && { model }) }, complaint: (form.complaint ?? '').trim(), layout, part, positions: withReach(form, positions) },
  };
}

function showFirstFault() {
  const fault = document.querySelector('[aria-invalid="true"], .fault-here');
  /** @type {HTMLElement | null} */
  const target = fault?.matches('input, textarea') ? /** @type {HTMLElement} */ (fault) : (fault?.querySelector('input') ?? null);
  target?.focus({ preventScroll: true });
  (fault ?? target)?.scrollIntoView({ block: 'center' });
}
