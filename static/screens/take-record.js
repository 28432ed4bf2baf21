// @ts-check
/**
 * Taking the record of a sensor or a job along as one file. The server seals it, so the phone asks for it
 * first and hands it on with a second tap: a share sheet opens only right after a tap.
 */

import { html, nothing } from 'lit-html';

import { ApiError } from '../api.js';
import { canShare, saveFile, shareFile } from '../save-file.js';
import { icon } from '../shapes/icons.js';
import { countWords } from './phone-notices.js';
import { to } from './router.js';
import { size } from './when.js';

/** What was fetched last and of what; it is not kept. @type {{name: string, file: File} | null} */
let taken = null;
/** @type {{name: string, sentence: string} | null} */
let problem = null;
/** Of what it is being fetched. */
let fetching = '';

export const takeRecordPage = {
  /**
   * @param {import('./app.js').Services} services
   * @param {Record<string, string>} params  `unit` or `job`
   */
  load: async ({ core }, { unit, job }) =>
    unit
      ? { name: unit, back: to.unit(unit), title: titleOf(await core.call('unit', { unit })) }
      : { name: job, back: to.job(job), title: (await core.call('job', { job })).title },

  /** @param {import('./app.js').Context} ctx */
  draw(ctx) {
    const { name, back, title } = ctx.data;
    const file = taken?.name === name ? taken.file : null;
    return {
      title: `Record · ${title}`,
      back,
      key: file ? 'taken' : '',
      body: html`
        <h1>${file ? 'The record is ready' : 'The record as one file'}</h1>
        ${file ? ready(file) : about()} ${unsent(ctx)}
        ${problem?.name === name
          ? html`<section class="panel panel-ask" role="alert">
              <p class="panel-kicker">${icon('ask')} No record was made</p>
              <p>${problem.sentence}</p>
            </section>`
          : nothing}
      `,
      ...(file ? handOver(file) : { main: fetchButton(ctx, name) }),
    };
  },
};

/** @param {any} unit */
function titleOf({ shown }) {
  return shown ? `sensor ${shown}` : 'a sensor without a label';
}

function about() {
  return html`<p class="lead">
      For a parts counter that does not use this server. It holds whole jobs: the entries, the tests and the pictures.
      Of any other job nothing can be read in it.
    </p>
    <p>The server seals it, so that every later change shows. It can be opened with any program that unpacks zip files.</p>`;
}

/** @param {File} file */
function ready(file) {
  return html`<section class="card card-now">
    <p class="panel-kicker">${icon('tick')} Sealed by the server</p>
    <p class="record-file">${file.name}</p>
    <p class="soft">${size(file.size)}</p>
  </section>`;
}

/** What this phone has not sent is not in it. @param {import('./app.js').Context} ctx */
function unsent({ services }) {
  const { unsentEvents, unsentPhotos } = services.sync.status.value;
  if (!unsentEvents && !unsentPhotos) return nothing;
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('send')} Not all of it has reached the server</p>
    <p>${countWords(unsentEvents, unsentPhotos)} on this phone ${unsentEvents + unsentPhotos === 1 ? 'is' : 'are'} not in the record.</p>
  </section>`;
}

/**
 * @param {import('./app.js').Context} ctx
 * @param {string} name
 */
function fetchButton(ctx, name) {
  return {
    words: fetching === name ? 'The server seals it' : 'Make the file',
    disabled: fetching !== '',
    run: async () => {
      fetching = name;
      problem = null;
      ctx.redraw();
      try {
        await ctx.services.sync.now();
        taken = { name, file: await ctx.services.sync.api.record(name) };
      } catch (error) {
        if (!(error instanceof ApiError)) throw error;
        const sentence =
          error.kind === 'unreachable'
            ? 'Only the server can seal a record, and it cannot be reached now. Try again when it can.'
            : error.sentence;
        problem = { name, sentence };
      } finally {
        fetching = '';
      }
      await ctx.reload();
    },
  };
}

/** @param {File} file */
function handOver(file) {
  const save = { words: 'Save it', run: () => saveFile(file) };
  return canShare(file) ? { main: { words: 'Share it', run: () => shareFile(file) }, second: save } : { main: save };
}
