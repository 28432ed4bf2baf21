// @ts-check
/**
 * What can be done while the core does not run: the jobs by what the log says of them, and on a job a
 * picture and the label of the sensor in the hand, saved as they are and marked as unchecked.
 */

import { html, nothing } from 'lit-html';

import { PLACE_WORDS } from '../../phone/place-words.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { capture, photoTaken } from '../scan/capture.js';
import { textField } from '../frame/field.js';
import { to } from '../frame/router.js';

/**
 * The jobs in the shape of the core's `jobs`, as far as single events tell.
 * @param {import('../frame/context.js').Services} services
 */
export async function jobsInLog({ log }) {
  /** @type {Map<string, any>} */
  const jobs = new Map();
  for (const { event } of await log.ordered()) {
    const { job: id, kind, data, at } = event;
    if (id === null) continue;
    if (kind === 'job_opened' && !jobs.has(id)) {
      const { vehicle, complaint, positions } = data;
      const begun = { id, title: vehicle.name, complaint, positions, plate: vehicle.plate ?? '', opened_at: at, closed: false, closed_at: 0 };
      jobs.set(id, { ...begun, tests: 0, out: 0, disputed: 0, paused: false, handed_to: '', board: null, standing_words: '', next_words: '' });
    }
    const job = jobs.get(id);
    if (job && kind === 'job_closed') job.closed = true;
    if (job && kind === 'test_run') job.tests += 1;
  }
  return [...jobs.values()].sort((a, b) => Number(a.closed) - Number(b.closed) || b.opened_at - a.opened_at);
}

/** A job while the core does not run. */
export const uncheckedJobPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  load: async (services, { job }) => (await jobsInLog(services)).find(({ id }) => id === job) ?? null,

  /** @param {Record<string, string>} params */
  formKey: ({ job }) => `unchecked/${job}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const job = ctx.data;
    if (!job) return needsCorePage.draw(ctx);
    const head = { title: job.title, back: to.jobs() };
    const taking = capture(ctx, { words: say('job-unchecked-guide'), alt: say('job-unchecked-alt') });
    if (taking.state === 'open') {
      return {
        ...head,
        body: taking.body,
        main: taking.shutter(say('job-unchecked-take')),
        second: { words: say('job-unchecked-back'), run: taking.close },
      };
    }
    const typed = (ctx.form.code ?? '').trim();
    return {
      ...head,
      body: html`
        <h1>${say('job-unchecked-heading')}</h1>
        <p class="lead">
          ${say('job-unchecked-lead', { later: PLACE_WORDS.checksLater })}
        </p>
        ${taking.photo
          ? html`${taking.body}<button class="small-button" type="button" @click=${taking.again}>${say('job-unchecked-again')}</button>`
          : html`<button class="small-button wide-button" type="button" @click=${taking.open}>
              ${icon('camera')} ${say('job-photos-take')}
            </button>`}
        ${positionChoices(ctx, job)}
        ${textField(ctx, 'code', say('job-unchecked-label'), {
          note: say('job-unchecked-label-note'),
          capitals: true,
          wide: true,
          most: 80,
        })}
        ${ctx.form.kept ? html`<p class="notice" role="status">${say('job-unchecked-saved')}</p>` : nothing}
      `,
      main: {
        words: say('job-unchecked-save'),
        disabled: !taking.photo && !typed,
        run: () => save(ctx, taking.photo, typed),
      },
    };
  },
};

/** A screen that shows nothing without the core. */
export const needsCorePage = {
  load: () => null,
  /** @param {import('../frame/context.js').Context} ctx */
  draw: (ctx) => ({
    title: say('job-unchecked-not-now'),
    back: to.jobs(),
    body: html`<section class="nothing">
      ${icon('caution', { size: 'large' })}
      <h1>${say('job-unchecked-needs')}</h1>
      <p>${say('job-unchecked-needs-lead')}</p>
    </section>`,
    main: { words: say('job-shared-show-jobs'), run: () => ctx.go(to.jobs()) },
  }),
};

/** @param {import('../frame/context.js').Context} ctx @param {any} job */
function positionChoices(ctx, { positions }) {
  const { form } = ctx;
  return html`<fieldset class="asked">
    <legend class="asked-words">${say('job-unchecked-position')}</legend>
    <div class="choices choices-two">
      ${[{ id: '', name: say('job-unchecked-no-position') }, ...positions].map(
        ({ id, name }) => html`<label class="choice">
          <input
            type="radio"
            name="position"
            .checked=${(form.position ?? '') === id}
            @change=${() => {
              form.position = id;
              ctx.redraw();
            }}
          />
          <span class="choice-word">${name}</span>
        </label>`,
      )}
    </div>
  </fieldset>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../log/log.js').Photo | null} photo
 * @param {string} typed
 */
async function save(ctx, photo, typed) {
  const { form, services } = ctx;
  /** @type {import('../../log/log.js').Draft[]} */
  const drafts = [];
  const code = typed.toUpperCase().replace(/[\s-]/g, '');
  let unit = '';
  if (code) {
    const known = await unitWith(services, code);
    const sits = form.position ? await unitAt(services, ctx.params.job, form.position) : null;
    unit = known ?? sits ?? (form.unit ??= services.device.newId('u'));
    drafts.push(...labelDrafts({ unit, known, sits, code, position: form.position }));
  }
  const position = form.position ?? '';
  const shows = position ? 'position' : unit ? 'unit' : 'work';
  if (photo) drafts.push(photoTaken(photo, { shows, position, unit }));
  const after = () => {
    ctx.forget();
    ctx.form.kept = true;
    ctx.redraw();
  };
  await ctx.act(drafts, { photo: photo ?? undefined, after });
}

/**
 * What a typed code says without the checks: a known one was seen in hand, a fresh one is on the sensor that
 * has just been pulled from the chosen position, or on one that nobody knew.
 * @param {{unit: string, known: string | null, sits: string | null, code: string, position: string}} typed
 * @returns {import('../../log/log.js').Draft[]}
 */
function labelDrafts({ unit, known, sits, code, position }) {
  if (known) return [{ kind: 'unit_seen', data: { unit, place: 'out', position: '', how: 'typed' } }];
  if (!sits) return [{ kind: 'unit_added', data: { unit, part: '', serial: '', code, how: 'typed', place: 'out' } }];
  return [
    { kind: 'unit_pulled', data: { unit, position, how: 'tapped' } },
    { kind: 'unit_labelled', data: { unit, code, how: 'typed' } },
  ];
}

/**
 * The unit that the log says was put last into a position, or sat there at first, unless it was pulled since.
 * @param {import('../frame/context.js').Services} services
 * @param {string} job
 * @param {string} position
 * @returns {Promise<string | null>}
 */
async function unitAt({ log }, job, position) {
  const entries = (await log.ordered()).map(({ event }) => event);
  const opened = entries.filter(({ kind }) => kind === 'job_opened');
  const vehicle = opened.find((event) => event.job === job)?.data.vehicle.id;
  const jobs = new Set(opened.filter(({ data }) => data.vehicle.id === vehicle).map((event) => event.job));
  /** @type {string | null} */
  let unit = `${vehicle}.${position}`;
  for (const { kind, data, job: at } of entries) {
    if (!jobs.has(at) || data.position !== position) continue;
    if (kind === 'unit_fitted') unit = data.unit;
    if (kind === 'unit_pulled') unit = null;
  }
  return unit;
}

/**
 * The unit that the log says carries a code.
 * @param {import('../frame/context.js').Services} services
 * @param {string} code
 * @returns {Promise<string | null>}
 */
async function unitWith({ log }, code) {
  let unit = null;
  for (const { event } of await log.ordered()) {
    const labels = event.kind === 'unit_labelled' || event.kind === 'unit_added';
    if (labels && event.data.code === code) unit = event.data.unit;
  }
  return unit;
}
