// @ts-check
/**
 * What a label stands for: the sensor that carries it, or nothing yet. A label that nothing carries can
 * go on a spare.
 */

import { html } from 'lit-html';

import { code as shownCode } from '../shapes/code.js';
import { CoreError } from '../core-client.js';
import { textField } from './field.js';
import { makerReader } from './maker-reader.js';
import { to } from './router.js';
import { toldPanel } from './stop-panel.js';
import { labelTheWaiting } from './unit-care.js';
import { unitParts } from './unit.js';

export const codePage = {
  /**
   * @param {import('./app.js').Services} services
   * @param {Record<string, string>} params
   */
  async load({ core }, { code }) {
    const read = await core.call('code', { text: code, host: location.host });
    if (read.outcome !== 'ours') return { read, unit: null };
    return { read, unit: await unitWith(core, read.code), waiting: await core.call('unlabelled') };
  },

  /** @param {Record<string, string>} params */
  formKey: ({ code }) => `code/${code}`,

  /** @param {import('./app.js').Context} ctx */
  draw(ctx) {
    const { read, unit, waiting } = ctx.data;
    // An address with a code in it comes from a scan, unless it says otherwise.
    const how = ctx.params.how ?? 'scanned';
    if (unit) return unitParts(ctx, unit, how);
    const jobs = { words: 'The jobs', run: () => ctx.go(to.jobs()) };
    if (read.outcome !== 'ours') {
      return {
        title: 'Not a label',
        back: to.jobs(),
        body: toldPanel(read),
        main: { words: 'Look up another', run: () => ctx.go(to.find()) },
        second: jobs,
      };
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
 * @param {import('../core-client.js').Core} core
 * @param {string} code
 */
async function unitWith(core, code) {
  try {
    return await core.call('unit', { code });
  } catch (error) {
    if (error instanceof CoreError && !error.broken) return null;
    throw error;
  }
}

/**
 * @param {import('./app.js').Context} ctx
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
