// @ts-check
/**
 * What a label stands for: the sensor that carries it, or nothing yet. A label that nothing carries can
 * go on a spare. A phone that is not paired and holds nothing is told what to do, and nothing of the record.
 */

import { html, nothing } from 'lit-html';

import { LABEL_HOST } from '../../phone/label-place.js';
import { code as shownCode } from '../../shapes/code.js';
import { CoreError } from '../../core/client.js';
import { textField } from '../frame/field.js';
import { makerReader } from '../scan/maker-reader.js';
import { emptyPhoneParts } from './empty-phone.js';
import { to } from '../frame/router.js';
import { toldPanel } from '../scan/stop-panel.js';
import { labelTheWaiting } from './unit-care.js';
import { unitParts } from './unit.js';
import { cameAcross, homeScreenFirst } from './unknown-label.js';

/** An address with a code in it comes from a scan, unless it says otherwise. */
const FROM_OUTSIDE = 'scanned';

export const codePage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  async load({ core }, { code, how = FROM_OUTSIDE }) {
    const read = await core.call('code', { text: code, host: LABEL_HOST });
    if (read.outcome !== 'ours') return { read, unit: null };
    const unit = await unitWith(core, read.code, how);
    if (unit) return { read, unit };
    const [waiting, units, jobs] = await Promise.all(['unlabelled', 'units', 'jobs'].map((op) => core.call(op)));
    return { read, unit, waiting, bare: !units.length && !jobs.length };
  },

  /** @param {Record<string, string>} params */
  formKey: ({ code }) => `code/${code}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { read, unit, waiting, bare } = ctx.data;
    const how = ctx.params.how ?? FROM_OUTSIDE;
    if (unit) return unitParts(ctx, unit, how);
    const jobs = { words: 'The jobs', run: () => ctx.go(to.jobs()) };
    if (read.outcome !== 'ours') {
      return {
        title: 'Not a label',
        titled: true,
        back: to.jobs(),
        body: toldPanel(read),
        main: { words: 'Look up another', run: () => ctx.go(to.find()) },
        second: jobs,
      };
    }
    const { state, lastSyncAt } = ctx.services.sync.status.value;
    // Whoever came here through the app itself works with it.
    if (bare && !lastSyncAt && !ctx.params.how) {
      return ctx.services.saved ? emptyPhoneParts(ctx, read) : strangerParts(ctx, read, state === 'not paired');
    }
    return {
      title: 'A fresh label',
      back: to.jobs(),
      body: html`
        <section class="unit-head">
          ${shownCode(read.shown, { size: 'large' })}
          <h1>No sensor has this label yet</h1>
          <p class="lead">On a job, the app asks for a label when a sensor is pulled. Here it can go on a spare.</p>
        </section>
        ${state === 'not paired'
          ? html`<p class="panel panel-ask">This phone is not paired, so it does not know what others put the label on.</p>`
          : nothing}
        ${labelTheWaiting(ctx, waiting, read.code, how)}
        <section class="card screen-stack">
          <h2>Put it on a spare in your stock</h2>
          ${makerReader(ctx)}
          ${textField(ctx, 'part', 'Part number', { note: 'Read it off the spare.', most: 80, capitals: true })}
          ${textField(ctx, 'serial', 'Serial', { note: 'If it has one.', most: 80, capitals: true })}
        </section>
      `,
      main: { words: 'Add the spare', run: () => addSpare(ctx, read.code, how) },
      second: jobs,
    };
  },
};

/**
 * A phone that holds no record and has never had one from the server.
 * @param {import('../frame/context.js').Context} ctx
 * @param {{shown: string}} read
 * @param {boolean} unpaired   the server has said so
 * @returns {import('../frame/frame.js').Parts}
 */
function strangerParts(ctx, { shown }, unpaired) {
  return {
    title: 'A label',
    back: to.jobs(),
    body: html`
      <section class="unit-head">
        ${shownCode(shown, { size: 'large' })}
        <h1>${unpaired ? 'This phone is not paired' : 'This phone holds no records yet'}</h1>
        <p class="lead">
          What is on record about this sensor is kept by ${location.host}, and shown only on phones that are paired with it.
        </p>
      </section>
      ${homeScreenFirst()}
      <section>
        <h2>You work here</h2>
        <p>Ask someone with a paired phone for a pairing link. Open it here, then scan the label again.</p>
      </section>
      ${cameAcross()}
    `,
    main: { words: 'Try again', run: () => ctx.services.sync.now().then(ctx.reload) },
    second: { words: 'The jobs', run: () => ctx.go(to.jobs()) },
  };
}

/**
 * @param {import('../../core/client.js').Core} core
 * @param {string} code
 * @param {string} how
 */
async function unitWith(core, code, how) {
  try {
    return await core.call('unit', { code, how });
  } catch (error) {
    if (error instanceof CoreError && !error.broken) return null;
    throw error;
  }
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} code
 * @param {string} how
 */
function addSpare(ctx, code, how) {
  const { form, services } = ctx;
  form.unit ??= services.device.newId('u');
  const part = (form.part ?? '').trim();
  const serial = (form.serial ?? '').trim();
  return ctx.act([{ kind: 'unit_added', data: { unit: form.unit, part, serial, code, how, place: 'stock' } }], {
    after: ctx.forget,
  });
}
