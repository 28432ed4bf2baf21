// @ts-check
/**
 * Pictures from another app: which job they belong to, and what each shows. They are recorded as those of the camera
 * are, drawn anew and without what a file tells beside its picture.
 */

import { html, nothing } from 'lit-html';

import { PhotoProblem } from '../../photos/prepare-photo.js';
import { dropShared, sharedFiles } from '../../phone/shared-pictures.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { photoTaken } from '../scan/capture.js';
import { loadJob, loadList } from './job-data.js';
import { freshPicture } from '../frame/picture.js';
import { linkTo, to } from '../frame/router.js';
import { sentenceCase } from '../frame/sentence-case.js';

/** @typedef {import('../../core/views.js').BoardPosition} BoardPosition */
/** @typedef {import('../../core/views.js').JobLine} JobLine */

const SCREEN = 'screen';
const WORK = 'work';

/** Why nothing came in; from the service worker, or from the server where that did not stand in between. */
const TROUBLES = {
  full: { title: 'job-shared-full', sentence: 'job-shared-full-what' },
  missed: { title: 'job-shared-missed', sentence: 'job-shared-missed-what' },
  nothing: { title: 'job-shared-nothing', sentence: 'job-shared-nothing-what' },
};

/** @typedef {{key: string, name: string, photo: import('../../log/log.js').Photo | null, problem: string}} Prepared */

/** Each is drawn anew once. @type {Map<string, Prepared>} */
const prepared = new Map();
/** Jobs that a picture can be put to. */
const MOST_OPEN = 200;
/** How many were turned away because there is no job to put them to. */
let turnedAway = 0;

export const sharedPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  async load(services, { job: chosen }) {
    const files = await sharedFiles();
    const { jobs } = await loadList(services, { most: MOST_OPEN });
    const open = jobs.filter((job) => !job.closed);
    if (!open.length) {
      await turnAway(files);
      return { pictures: [], open, view: null };
    }
    turnedAway = 0;
    const job = chosen ?? (open.length === 1 ? open[0].id : '');
    const pictures = [];
    for (const each of files) pictures.push(await prepareOnce(services, each));
    return { pictures, open, view: job ? await loadJob(services, { job }) : null };
  },

  /** @param {Record<string, string>} _params @param {any} data */
  formKey: (_params, { view }) => `shared/${view?.id ?? ''}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { pictures, view } = ctx.data;
    if (turnedAway) return noJobParts(ctx);
    if (!pictures.length) return nothingParts(ctx);
    return view ? pictureParts(ctx) : jobParts(ctx);
  },
};

/** A phone at the parts counter has no job to put a picture to. */
export const sharedAtCounterPage = {
  load: async () => turnAway(await sharedFiles()),

  /** @param {import('../app.js').Context} ctx */
  draw: (ctx) => ({
    title: say('job-shared-title'),
    back: to.jobs(),
    body: html`<section class="panel panel-ask" role="alert">
      <h1>${say('job-shared-counter')}</h1>
      <p>
        ${say('job-shared-bench')} ${turnedAway ? notKeptWords() : ''}
      </p>
    </section>`,
    main: { words: say('job-shared-to-counter'), run: () => ctx.go(to.jobs()) },
  }),
};

/** @param {import('../../phone/shared-pictures.js').SharedFile[]} files */
async function turnAway(files) {
  if (!files.length) return;
  await dropShared(files.map(({ key }) => key));
  turnedAway = files.length;
}

/**
 * @param {import('../frame/context.js').Services} services
 * @param {import('../../phone/shared-pictures.js').SharedFile} file
 * @returns {Promise<Prepared>}
 */
async function prepareOnce({ photos }, { key, name, file }) {
  const known = prepared.get(key);
  if (known) return known;
  /** @type {Prepared} */
  const made = { key, name, photo: null, problem: '' };
  try {
    made.photo = await photos.prepare(file);
  } catch (error) {
    if (!(error instanceof PhotoProblem)) throw error;
    made.problem = say('job-shared-problem', { title: error.title, sentence: error.sentence });
  }
  prepared.set(key, made);
  return made;
}

/** @param {import('../frame/context.js').Context} ctx */
function nothingParts(ctx) {
  const trouble = TROUBLES[/** @type {keyof typeof TROUBLES} */ (ctx.params.trouble)] ?? TROUBLES.nothing;
  return {
    title: say('job-shared-title'),
    back: to.jobs(),
    body: html`<section class="panel panel-ask" role="alert">
      <h1>${say(trouble.title)}</h1>
      <p>${say(trouble.sentence)}</p>
    </section>`,
    main: { words: say('job-shared-show-jobs'), run: () => ctx.go(to.jobs()) },
  };
}

/** What went wrong with the last sharing, above pictures that wait from one before. @param {import('../frame/context.js').Context} ctx */
function troubleBefore({ params }) {
  const trouble = TROUBLES[/** @type {keyof typeof TROUBLES} */ (params.trouble)];
  if (!trouble) return nothing;
  return html`<section class="panel panel-ask" role="alert">
    <p class="panel-kicker">${icon('caution')} ${say(trouble.title)}</p>
    <p>${say(trouble.sentence)}</p>
  </section>`;
}

/** @param {import('../frame/context.js').Context} ctx */
function noJobParts(ctx) {
  return {
    title: say('job-shared-title'),
    back: to.jobs(),
    body: html`<section class="panel panel-ask" role="alert">
      <h1>${say('job-shared-no-job')}</h1>
      <p>${say('job-shared-belongs')} ${notKeptWords()}</p>
      <p>${say('job-shared-open-first')}</p>
    </section>`,
    main: { words: say('job-list-open-one'), run: () => ctx.go(to.newJob()) },
  };
}

/** What became of those that were turned away. */
function notKeptWords() {
  return say('job-shared-not-kept', { count: turnedAway });
}

/** @param {import('../frame/context.js').Context} ctx */
function jobParts(ctx) {
  return {
    title: say('job-shared-title'),
    back: to.jobs(),
    key: 'job',
    body: html`
      ${troubleBefore(ctx)}
      <h1>${say('job-shared-which')}</h1>
      <ul class="list">
        ${ctx.data.open.map(
          (/** @type {JobLine} */ job) => html`<li>
            <a class="list-row" href=${linkTo(to.jobPart(job.id, 'shared'))}>
              <span class="list-main">
                <span class="list-title">${job.title}</span>
                ${job.complaint ? html`<span class="list-note">${job.complaint}</span>` : nothing}
              </span>
              <span class="list-end">${icon('forward')}</span>
            </a>
          </li>`,
        )}
      </ul>
    `,
    second: { words: say('job-shared-keep-none'), run: () => letGo(ctx) },
  };
}

/** @param {import('../frame/context.js').Context} ctx */
function pictureParts(ctx) {
  const { form, data } = ctx;
  const { view, open } = data;
  /** @type {Prepared[]} */
  const pictures = data.pictures;
  const good = pictures.filter(({ photo }) => photo);
  form.shows ??= {};
  return {
    title: say('job-shared-title-job', { job: view.title }),
    back: open.length > 1 ? to.shared() : to.jobs(),
    key: 'pictures',
    body: html`
      ${troubleBefore(ctx)}
      <h1>${say('job-shared-what')}</h1>
      ${pictures.map((each) => (each.photo ? showsField(ctx, each) : refused(each)))}
    `,
    main: good.length
      ? { words: say('job-shared-keep', { count: good.length }), run: () => keep(ctx, good) }
      : null,
    second: { words: say('job-shared-keep-none'), run: () => letGo(ctx) },
  };
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Prepared} picture
 */
function showsField(ctx, { key, name, photo }) {
  const { form, data } = ctx;
  const id = `shows-${photo?.sha256}`;
  const missing = form.asked && !form.shows[key];
  const chosen = (/** @type {{target: HTMLInputElement}} */ { target }) => {
    form.shows[key] = target.value;
    ctx.redraw();
  };
  const option = (/** @type {string} */ value, /** @type {string} */ words) =>
    html`<option value=${value} ?selected=${form.shows[key] === value}>${words}</option>`;
  return html`<div class="card">
    ${photo ? freshPicture(photo, name || say('job-shared-alt')) : nothing}
    <div class="field">
      <label class="field-name" for=${id}>${say('job-shared-shows')}</label>
      <select id=${id} aria-invalid=${missing ? 'true' : 'false'} aria-describedby=${missing ? `${id}-fault` : nothing} @change=${chosen}>
        ${option('', say('job-shared-choose'))}
        ${data.view.board.positions.map((/** @type {BoardPosition} */ place) => option(`position ${place.id}`, sentenceCase(place.name)))}
        ${option(SCREEN, say('job-shared-screen'))} ${option(WORK, say('job-shared-work'))}
      </select>
      ${missing ? html`<p class="field-fault" id=${`${id}-fault`}>${say('job-shared-shows-fault')}</p>` : nothing}
    </div>
  </div>`;
}

/** @param {Prepared} picture */
function refused({ name, problem }) {
  return html`<section class="panel panel-ask" role="alert">
    <p class="panel-kicker">${icon('caution')} ${name ? say('job-shared-refused-name', { name }) : say('job-shared-refused')}</p>
    <p>${problem}</p>
  </section>`;
}

/**
 * One after the other: each goes on record with its picture, or stays where it is.
 * @param {import('../frame/context.js').Context} ctx
 * @param {Prepared[]} good
 */
async function keep(ctx, good) {
  const { form, data } = ctx;
  form.asked = true;
  if (good.some(({ key }) => !form.shows[key])) return ctx.redraw();
  const job = data.view.id;
  for (const { key, photo } of good) {
    const [shows, position = ''] = form.shows[key].split(' ');
    const draft = photoTaken(/** @type {import('../../log/log.js').Photo} */ (photo), { shows, position });
    const after = () => forget([key]);
    if (!(await ctx.act([draft], { photo: /** @type {any} */ (photo), job, after }))) return undefined;
  }
  await forget(data.pictures.map((/** @type {Prepared} */ { key }) => key));
  ctx.forget();
  return ctx.go(to.jobPart(job, 'photos'), { replace: true });
}

/** @param {import('../frame/context.js').Context} ctx */
async function letGo(ctx) {
  await forget(ctx.data.pictures.map((/** @type {Prepared} */ { key }) => key));
  ctx.forget();
  ctx.go(to.jobs(), { replace: true });
}

/** @param {string[]} keys */
async function forget(keys) {
  for (const key of keys) prepared.delete(key);
  await dropShared(keys);
}
