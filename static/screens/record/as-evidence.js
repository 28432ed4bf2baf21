// @ts-check
/**
 * A record from elsewhere as evidence at this counter: kept on the server with its seal, for a sensor that waits
 * here with the label that the record names. It releases the sensor's hold.
 */

import { html, nothing } from 'lit-html';

import { HAS_SERVER } from '../../place.js';
import { code } from '../../shapes/code.js';
import { ApiError } from '../../sync/request.js';
import { say } from '../../words/words.js';
import { to } from '../frame/router.js';

/** @typedef {import('../../core/views.js').WaitingReturn} WaitingReturn */

/**
 * What waits here with the label of a record, from another shop.
 * @param {import('../frame/context.js').Services} services
 * @param {import('../../record/foreign-record.js').ForeignRecord} record
 * @returns {Promise<WaitingReturn[]>}
 */
export async function waitingFor({ core, device }, { answer }) {
  if (!HAS_SERVER || device.role.value !== 'counter' || !answer.code) return [];
  return (await core.call('waiting')).filter((line) => line.code.startsWith(`${answer.code}@`));
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../record/foreign-record.js').ForeignRecord} record
 */
export function asEvidence(ctx, record) {
  const { services, data, form } = ctx;
  const { maker } = record.answer;
  if (!HAS_SERVER || services.device.role.value !== 'counter' || !record.view.weighed || maker.own) return nothing;
  return html`<section class="card screen-stack">
    <h2>${say('sealed-evidence-heading')}</h2>
    ${maker.confirmed ? nothing : html`<p>${say('sealed-evidence-unconfirmed')}</p>`}
    ${data.waiting?.length ? nothing : html`<p>${say('sealed-evidence-none')}</p>`}
    ${maker.confirmed
      ? data.waiting?.map(
          (/** @type {WaitingReturn} */ line) => html`<button class="answer" type="button" @click=${() => use(ctx, record, line)}>
            <span>${code(line.shown)} ${say('sealed-evidence-use', { host: line.code.split('@')[1] })}</span>
          </button>`,
        )
      : nothing}
    ${form.evidenceFault ? html`<p class="field-fault" role="alert">${form.evidenceFault}</p>` : nothing}
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../record/foreign-record.js').ForeignRecord} record
 * @param {WaitingReturn} line
 */
async function use(ctx, record, { unit }) {
  const { fingerprint, confirmed } = record.answer.maker;
  delete ctx.form.evidenceFault;
  try {
    const { file } = await ctx.services.sync.api.keepRecord(record.file);
    const data = { unit, maker: confirmed.name, fingerprint, file, ...record.view.weighed };
    if (await ctx.act([{ kind: 'record_received', data }], { job: null })) ctx.go(to.return(unit));
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    ctx.form.evidenceFault = error.sentence;
    ctx.redraw();
  }
}
