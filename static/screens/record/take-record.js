// @ts-check
/**
 * Taking the record of a sensor or a job along as one file. Sealing takes its time, so a second tap hands it
 * on: a share sheet opens only right after a tap.
 */

import { html, nothing } from 'lit-html';

import { HAS_SERVER } from '../../place.js';
import { canShare, saveFile, shareFile } from '../../phone/save-file.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { phoneSeal } from './phone-seal.js';
import { countWords } from '../phone/phone-notices.js';
import { sealer } from './record-sealer.js';
import { to } from '../frame/router.js';
import { size } from '../frame/when.js';

/** @typedef {import('../../core/views.js').UnitView} UnitView */

/** What was made last and of what; it is not kept. @type {({name: string} & import('./record-sealer.js').Sealed) | null} */
let taken = null;
/** @type {{name: string, sentence: string} | null} */
let problem = null;
/** Of what one is being made. */
let making = '';

export const takeRecordPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params  `unit` or `job`
   */
  load: async ({ core }, { unit, job }) =>
    unit
      ? { name: unit, back: to.unit(unit), title: titleOf(await core.call('unit', { unit })) }
      : { name: job, back: to.job(job), title: (await core.call('job', { job })).title },

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { name, back, title } = ctx.data;
    const here = taken?.name === name ? taken : null;
    const trouble = problem?.name === name ? problem : null;
    const file = here?.file ?? null;
    return {
      title: say('sealed-take-title', { subject: title }),
      back,
      key: file ? 'taken' : '',
      body: html`
        <h1>${file ? say('sealed-take-ready') : say('sealed-take-heading')}</h1>
        ${here ? html`${ready(here)} ${room(ctx, here)} ${here.key ? phoneSeal(here.key) : nothing}` : sealer.about()} ${unsent(ctx)}
        ${trouble
          ? html`<section class="panel panel-ask" role="alert">
              <p class="panel-kicker">${icon('ask')} ${say('sealed-take-none')}</p>
              <p>${trouble.sentence}</p>
            </section>`
          : nothing}
      `,
      ...(file ? handOver(file) : { main: makeButton(ctx, name) }),
    };
  },
};

/** @param {UnitView} unit */
function titleOf({ shown }) {
  return shown ? say('sealed-take-sensor', { code: shown }) : say('sealed-take-sensor-unlabelled');
}

/** @param {import('./record-sealer.js').Sealed} sealed */
function ready({ file }) {
  return html`<section class="card card-now">
      <p class="panel-kicker">${icon('tick')} ${sealer.sealed()}</p>
      <p class="record-file">${file.name}</p>
      <p class="soft">${size(file.size)}</p>
    </section>`;
}

/**
 * What of the pictures is in it otherwise than it was taken, or not at all.
 * @param {import('../frame/context.js').Context} ctx
 * @param {{name: string} & import('./record-sealer.js').Sealed} made
 */
function room(ctx, { name, smaller, roomless }) {
  const words = making ? sealer.busy() : say('sealed-take-smaller-make');
  return html`${smaller ? html`<p>${say('sealed-take-smaller', { count: smaller, maker: HAS_SERVER ? 'server' : 'phone' })}</p>` : nothing}
    ${roomless
      ? html`<section class="panel panel-ask">
          <p class="panel-kicker">${icon('camera')} ${say('sealed-take-roomless', { count: roomless })}</p>
          ${smaller
            ? nothing
            : html`<p>${say('sealed-take-roomless-what')}</p>
                <button class="small-button wide-button" type="button" ?disabled=${making !== ''} @click=${() => make(ctx, name, true)}>${words}</button>`}
        </section>`
      : nothing}`;
}

/** What this phone has not sent is not in it. @param {import('../frame/context.js').Context} ctx */
function unsent({ services }) {
  const { unsentEvents, unsentPhotos } = services.sync.status.value;
  if (!unsentEvents && !unsentPhotos) return nothing;
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('send')} ${say('sealed-take-unsent')}</p>
    <p>${say('sealed-take-unsent-what', { content: countWords(unsentEvents, unsentPhotos), count: unsentEvents + unsentPhotos })}</p>
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} name
 */
function makeButton(ctx, name) {
  return {
    words: making === name ? sealer.busy() : say('sealed-take-make'),
    disabled: making !== '',
    run: () => make(ctx, name, false),
  };
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} name
 * @param {boolean} smaller
 */
async function make(ctx, name, smaller) {
  making = name;
  problem = null;
  ctx.redraw();
  try {
    const subject = ctx.params.unit ? { unit: name } : { job: name };
    taken = { name, ...(await sealer.seal(ctx.services, subject, smaller)) };
  } catch (error) {
    const sentence = sealer.problem(error);
    if (sentence === null) throw error;
    problem = { name, sentence };
  } finally {
    making = '';
  }
  await ctx.reload();
}

/** @param {File} file */
function handOver(file) {
  const save = { words: say('sealed-take-save'), run: () => saveFile(file) };
  return canShare(file) ? { main: { words: say('sealed-take-share'), run: () => shareFile(file) }, second: save } : { main: save };
}
