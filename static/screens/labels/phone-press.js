// @ts-check
/**
 * Labels that this phone prints by itself: the core draws the codes and says what stands where, the log
 * keeps each printing before its page is shown, and the browser prints. What a press is, press.js says.
 */

import { html, nothing } from 'lit-html';

import { LABEL_BASE, LABEL_HOST } from '../../phone/label-place.js';
import { versionsOf } from '../../shapes/label-qr.js';
import { say } from '../../words/words.js';
import { to } from '../frame/router.js';
import { labelPage } from './label-drawing.js';
import { keepPrinting, printingOf } from './printing.js';

/** @typedef {import('../../core/views.js').BatchLabel} BatchLabel */

const INTS_AT_ONCE = 4096; // random numbers for one question to the core
const FRUITLESS_ROUNDS = 20; // after these the share of this phone counts as used up

/** @type {import('./press.js').Press} */
export const phonePress = {
  formats: [],

  batches: async ({ core }) => ({ batches: await core.call('label_batches') }),

  batch: ({ core }, batch) => core.call('label_batch', { batch: Number(batch) }),

  async plan({ core }, { force, ...options }) {
    const question = await questionFor(core, options);
    const plan = await core.call('label_plan', { ...question, forced: force === 'yes' });
    if (!('a_page' in plan)) return plan;
    const [one, page] = await Promise.all([
      core.call('label_pages', { ...question, one: true }),
      plan.a_page > 1 ? core.call('label_pages', question) : null,
    ]);
    return { ...plan, one, page };
  },

  preview: (options, { one, page, a_page: count }) => ({
    one: labelPage(one, one.pages[0], say('labels-preview-one')),
    page: page ? labelPage(page, page.pages[0], say('labels-preview-sheet', { count })) : nothing,
  }),

  async make(ctx, count, { force: _, ...options }) {
    const { core, device } = ctx.services;
    const codes = await newCodes(ctx, count);
    if (codes.length < count) {
      return { problem: say('labels-few-codes', { count: codes.length }) };
    }
    const batch = device.newId('b');
    if (!(await recorded(ctx, batch, codes, options))) return {};
    const [{ id }] = (await core.call('label_batches')).filter((each) => each.batch === batch);
    return { batch: id };
  },

  async again(ctx) {
    const { batch, options, labels } = ctx.data;
    const free = labels.filter((/** @type {BatchLabel} */ each) => each.state === 'on paper');
    await recorded(ctx, batch, free.map((/** @type {BatchLabel} */ { code }) => code), options);
    return {};
  },

  async takeOut(ctx, codes, reason) {
    const { batch, labels } = ctx.data;
    const free = labels.filter((/** @type {BatchLabel} */ each) => each.state === 'on paper');
    const gone = codes.length ? codes : free.map((/** @type {BatchLabel} */ { code }) => code);
    await ctx.act([{ kind: 'labels_spoiled', job: null, data: { batch, codes: gone, reason } }]);
    return {};
  },

  made(ctx, batch) {
    const printing = ctx.data && printingOf(ctx.data.batch);
    if (!printing) return { told: nothing, main: null };
    const count = printing.codes.length;
    return {
      told: html`<section class="panel panel-good" role="status">
        <h2>${say('labels-ready', { count })}</h2>
        <p>${say('labels-ready-how')}</p>
      </section>`,
      main: { words: say('labels-to-printer'), run: () => ctx.go(to.labelSheet(batch)) },
    };
  },
};

/**
 * The pages of a printing, to draw.
 * @param {import('../../core/client.js').Core} core
 * @param {import('./printing.js').Printing} printing
 */
export async function pagesOf(core, { codes, options }) {
  return core.call('label_pages', { ...(await questionFor(core, options)), codes });
}

/** @type {Record<string, number> | null} */
let versions = null;

/**
 * A layout as the core wants it.
 * @param {import('../../core/client.js').Core} core
 * @param {import('./press.js').Options} asked
 */
async function questionFor(core, { distance = '20', ...options }) {
  versions ??= versionsOf(await core.call('label_specimen', { base: LABEL_BASE }));
  return { options, distance, versions, base: LABEL_BASE };
}

/**
 * Keep a printing: in the log first, then at hand for its page.
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} batch
 * @param {string[]} codes
 * @param {import('./press.js').Options} options
 */
async function recorded(ctx, batch, codes, options) {
  const kept = await ctx.act([{ kind: 'labels_printed', job: null, data: { batch, codes, host: LABEL_HOST, layout: options } }]);
  if (kept) keepPrinting({ batch, codes, options });
  return kept;
}

/**
 * New codes; fewer than asked for when hardly any are left.
 * @param {import('../frame/context.js').Context} ctx
 * @param {number} count
 * @returns {Promise<string[]>}
 */
async function newCodes({ services: { core, device } }, count) {
  /** @type {string[]} */
  const codes = [];
  for (const share of [device.id, '']) {
    for (let fruitless = 0; codes.length < count && fruitless < FRUITLESS_ROUNDS; ) {
      const random = device.randomInts(INTS_AT_ONCE);
      const found = await core.call('new_labels', { random, count: count - codes.length, device: share, taken: codes });
      codes.push(...found);
      fruitless = found.length ? 0 : fruitless + 1;
    }
  }
  return codes;
}
