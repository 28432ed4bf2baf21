// @ts-check
/**
 * What can be set right about a sensor: the numbers printed on it, and a label that is torn, lost or wrong.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { textField } from '../frame/field.js';
import { makerReader } from '../scan/maker-reader.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').UnitView} UnitView */

/**
 * The part number and serial as printed on the sensor.
 * @param {import('../frame/context.js').Context} ctx
 * @param {UnitView} unit
 * @param {{job?: string | null}} [options]  the job it belongs to, where the screen is not that job's own
 */
export function printedOn(ctx, unit, options = {}) {
  const { form } = ctx;
  const part = (form.part ?? unit.part).trim();
  const serial = (form.serial ?? unit.serial).trim();
  const same = part === unit.part && serial === unit.serial;
  const record = () =>
    ctx.act([{ kind: 'part_noted', data: { unit: unit.id, part, serial, over: unit.noted } }], { ...options, after: ctx.forget });
  return html`<details class="more" ?open=${form.part !== undefined || form.serial !== undefined || form.maker !== undefined}>
    <summary>${say('unit-printed')}</summary>
    <div class="screen-stack">
      ${makerReader(ctx)}
      ${textField(ctx, 'part', say('unit-part'), { most: 80, capitals: true, initial: unit.part })}
      ${textField(ctx, 'serial', say('unit-serial'), { most: 80, capitals: true, initial: unit.serial })}
      <button class="small-button" type="button" ?disabled=${same || ctx.busy} @click=${record}>
        ${say('unit-record-numbers')}
      </button>
    </div>
  </details>`;
}

/**
 * Taking a label out of use; the sensor keeps its trail and gets another. One that two phones labelled
 * carries two, and the person who looks says which goes.
 * @param {import('../frame/context.js').Context} ctx
 * @param {UnitView} unit
 * @param {{job?: string | null}} options
 */
export function labelTrouble(ctx, unit, options) {
  const { labels, trouble } = unit.carried;
  const waits = !unit.code && unit.was.length ? wantsLabel(unit) : nothing;
  if (!labels.length) return waits;
  const { form } = ctx;
  const reason = (form.labelReason ?? '').trim();
  const record = (/** @type {string} */ voided) => {
    form.labelAsked = !reason;
    if (!reason) return ctx.redraw();
    return ctx.act([{ kind: 'label_voided', data: { unit: unit.id, code: voided, reason } }], {
      ...options,
      after: ctx.forget,
    });
  };
  return html`${trouble
      ? html`<section class="panel panel-ask">
          <p class="panel-kicker">${icon('ask')} ${say('unit-look-at-label')}</p>
          <p>${sentence(trouble)}</p>
        </section>`
      : waits}
    <details class="more" ?open=${trouble !== '' || form.labelReason !== undefined}>
      <summary>${say('unit-label-trouble')}</summary>
      <div class="screen-stack">
        <p>${say('unit-label-out', { count: labels.length })}</p>
        ${textField(ctx, 'labelReason', say('unit-label-reason'), {
          most: 200,
          fault: form.labelAsked ? say('unit-label-reason-wanted') : '',
        })}
        ${labels.map(
          (/** @type {{code: string, shown: string}} */ each) => html`<button
            class="small-button"
            type="button"
            ?disabled=${ctx.busy}
            @click=${() => record(each.code)}
          >
            ${sentence(say('unit-void', { code: each.shown }))}
          </button>`,
        )}
      </div>
    </details>`;
}

/** @param {UnitView} unit */
function wantsLabel({ was }) {
  return html`<section class="panel panel-ask">
    <p>${sentence(say('unit-was-labelled', { code: was[was.length - 1] }))}</p>
    <div class="card-actions"><a class="small-button" href=${linkTo(to.find())}>${say('unit-scan-fresh')}</a></div>
  </section>`;
}

/**
 * Sensors that wait for a fresh label, each to be tapped.
 * @param {import('../frame/context.js').Context} ctx
 * @param {Array<{id: string, was: string, where: string, job: string | null}>} waiting
 * @param {string} fresh
 * @param {string} how
 */
export function labelTheWaiting(ctx, waiting, fresh, how) {
  if (!waiting.length) return nothing;
  return html`<section class="card screen-stack">
    <h2>${say('unit-label-waiting')}</h2>
    <div class="answers">
      ${waiting.map(
        ({ id, was, where, job }) => html`<button
          class="answer"
          type="button"
          ?disabled=${ctx.busy}
          @click=${() => ctx.act([{ kind: 'unit_labelled', data: { unit: id, code: fresh, how } }], { job })}
        >
          <span>${sentence(say('unit-was-where', { code: was, where }))}</span>
        </button>`,
      )}
    </div>
  </section>`;
}
