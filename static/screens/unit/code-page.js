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
import { say } from '../../words/words.js';

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
    const jobs = { words: say('frame-the-jobs'), run: () => ctx.go(to.jobs()) };
    if (read.outcome !== 'ours') {
      return {
        title: say('unit-not-a-label'),
        titled: true,
        back: to.jobs(),
        body: toldPanel(read),
        main: { words: say('unit-look-up-another'), run: () => ctx.go(to.find()) },
        second: jobs,
      };
    }
    const { state, lastSyncAt } = ctx.services.sync.status.value;
    // Whoever came here through the app itself works with it.
    if (bare && !lastSyncAt && !ctx.params.how) {
      return ctx.services.saved ? emptyPhoneParts(ctx, read) : strangerParts(ctx, read, state === 'not paired');
    }
    return {
      title: say('unit-fresh'),
      back: to.jobs(),
      body: html`
        <section class="unit-head">
          ${shownCode(read.shown, { size: 'large' })}
          <h1>${say('unit-fresh-heading')}</h1>
          <p class="lead">${say('unit-fresh-lead')}</p>
        </section>
        ${state === 'not paired'
          ? html`<p class="panel panel-ask">${say('unit-fresh-unpaired')}</p>`
          : nothing}
        ${labelTheWaiting(ctx, waiting, read.code, how)}
        <section class="card screen-stack">
          <h2>${say('unit-spare')}</h2>
          ${makerReader(ctx)}
          ${textField(ctx, 'part', say('unit-part'), { note: say('unit-part-note'), most: 80, capitals: true })}
          ${textField(ctx, 'serial', say('unit-serial'), { note: say('unit-serial-note'), most: 80, capitals: true })}
        </section>
      `,
      main: { words: say('unit-add-spare'), run: () => addSpare(ctx, read.code, how) },
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
    title: say('unit-a-label'),
    back: to.jobs(),
    body: html`
      <section class="unit-head">
        ${shownCode(shown, { size: 'large' })}
        <h1>${unpaired ? say('unit-phone-unpaired') : say('unit-phone-empty')}</h1>
        <p class="lead">
          ${say('unit-kept-by', { host: location.host })}
        </p>
      </section>
      ${homeScreenFirst()}
      <section>
        <h2>${say('unit-work-here')}</h2>
        <p>${say('unit-work-here-do')}</p>
      </section>
      ${cameAcross()}
    `,
    main: { words: say('frame-try-again'), run: () => ctx.services.sync.now().then(ctx.reload) },
    second: { words: say('frame-the-jobs'), run: () => ctx.go(to.jobs()) },
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
