// @ts-check
/**
 * What the figures of a job rest on: every chance with its plain meaning and its default, how sure a verdict
 * has to be, whether the fault comes and goes, what codes speak for, and money. Each is changed and set back
 * here; the core says what they are.
 */

import { html, nothing } from 'lit-html';

import { HAS_SERVER } from '../../place.js';
import { ApiError } from '../../sync/request.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { figureRows, offered } from '../lessons/rows.js';
import { to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { CONFIDENCE, chanceRow } from './assumed-chances.js';
import { money } from './assumed-money.js';
import { recordButton } from './record-button.js';

/** @typedef {import('../../core/views.js').AssumptionsView} AssumptionsView */
/** @typedef {import('../../core/views.js').CodeWeightView} CodeWeightView */
/** @typedef {import('../../core/views.js').ComesAndGoesView} ComesAndGoesView */
/** @typedef {import('../../core/views.js').RateView} RateView */

export const assumptionsPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  async load({ core }, { job }) {
    return { job, told: await core.call('assumptions', { job }) };
  },

  /** @param {Record<string, string>} params */
  formKey: ({ job }) => `assumptions/${job}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { job, told } = ctx.data;
    return {
      title: say('job-link-assumptions'),
      titled: true,
      back: to.job(job),
      body: html`
        <p class="lead">
          ${say('job-assumptions-lead', { sort: told.sort })}
        </p>
        ${yard(ctx, told.yard)} ${comesAndGoes(ctx, told.comes_and_goes)} ${comeback(ctx, told.comeback)} ${lamps(told.lamps)}
        ${codes(ctx, told.codes)}
        <section>
          <h2>${say('job-assumptions-chances')}</h2>
          <ul class="list">
            ${told.rates.map((/** @type {RateView} */ rate) => chanceRow(ctx, rate))}
          </ul>
          ${HAS_SERVER ? byOwnJobs(ctx) : nothing}
        </section>
        <section>
          <h2>${say('job-assumptions-sure')}</h2>
          <ul class="list">
            ${chanceRow(ctx, { ...told.confidence, id: CONFIDENCE })}
          </ul>
        </section>
        ${money(ctx, told.money)}
      `,
      main: { words: say('job-back'), run: () => ctx.go(to.job(job)) },
    };
  },
};

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {ComesAndGoesView} told
 */
function comesAndGoes(ctx, { words, note, value, switch_words: other, events, estimate, again }) {
  return html`<section class="card screen-stack">
    <h2>${words}</h2>
    ${value ? html`<p>${note}</p>` : nothing}
    ${estimate
      ? html`<p>${sentence(estimate.sentence)}</p>
          <p class="soft">${estimate.source}</p>`
      : nothing}
    ${ctx.data.told.closed
      ? nothing
      : html`<div class="card-actions">
          ${estimate && !estimate.used ? recordButton(ctx, estimate.words, estimate.events) : nothing}
          ${recordButton(ctx, other, events)}
        </div>`}
    ${again ? html`<ul class="list">${chanceRow(ctx, again)}</ul>` : nothing}
  </section>`;
}

/**
 * The rates by the yard's own jobs, beside the defaults, which the server is asked for once somebody looks.
 * @param {import('../frame/context.js').Context} ctx
 */
function byOwnJobs(ctx) {
  const { form, services } = ctx;
  const ask = async () => {
    try {
      form.lessons = await services.sync.api.get('/api/lessons/offer');
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      form.lessons = { problem: error.sentence };
    }
    ctx.redraw();
  };
  const toggled = (/** @type {Event} */ event) => {
    if (/** @type {HTMLDetailsElement} */ (event.target).open && !form.lessons) ask();
  };
  return html`<details class="more" @toggle=${toggled}>
    <summary>${say('you-lessons')}</summary>
    ${form.lessons?.problem ? html`<p class="field-fault" role="alert">${form.lessons.problem}</p>` : nothing}
    ${form.lessons?.rows ? html`${offered(ctx, form.lessons, ask)} ${figureRows(ctx, 'lessons', form.lessons.rows, [])}` : nothing}
  </details>`;
}

/**
 * What the yard has taken of its own jobs since this one was opened.
 * @param {import('../frame/context.js').Context} ctx
 * @param {AssumptionsView['yard']} told
 */
function yard(ctx, told) {
  if (!told) return nothing;
  return html`<section class="card screen-stack">
    <p>${sentence(told.sentence)}</p>
    ${ctx.data.told.closed ? nothing : html`<div class="card-actions">${recordButton(ctx, told.words, told.events)}</div>`}
  </section>`;
}

/**
 * What earlier jobs on the vehicle speak for.
 * @param {import('../frame/context.js').Context} ctx
 * @param {AssumptionsView['comeback']} told
 */
function comeback(ctx, told) {
  if (!told) return nothing;
  const choices = (/** @type {string} */ words, /** @type {import('../../core/views.js').ComebackChoice[]} */ all) => html`
    <p class="assumed-state">${words}: ${all.find(({ on }) => on)?.words ?? ''}</p>
    ${ctx.data.told.closed
      ? nothing
      : html`<div class="card-actions">
          ${all.filter(({ on }) => !on).map((each) => recordButton(ctx, each.words, each.events))}
        </div>`}
  `;
  return html`<section class="card screen-stack comeback">
    <h2>${say('job-comeback')}</h2>
    ${told.sentences.map((said) => html`<p>${sentence(said)}</p>`)}
    <p class="soft">${told.source}</p>
    ${choices(say('job-comeback-factor'), told.factors)} ${choices(say('job-comeback-half'), told.halves)}
  </section>`;
}

/** @param {AssumptionsView['lamps']} seen */
function lamps(seen) {
  return seen.map(
    ({ sentence: said, source }) => html`<div class="card screen-stack">
      <p>${sentence(said)}</p>
      <p class="soft">${source}</p>
    </div>`,
  );
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {CodeWeightView[]} found
 */
function codes(ctx, found) {
  if (!found.length) return nothing;
  return html`<section class="screen-stack">
    <h2>${say('job-assumptions-codes')}</h2>
    ${found.map(
      ({ sentence: said, source, words, on, switch_words: other, events }) => html`<div class="card screen-stack">
        <p>${sentence(said)}</p>
        <p class="soft">${source}</p>
        <p class="assumed-state">${icon(on ? 'tick' : 'cross')} ${words}.</p>
        ${ctx.data.told.closed ? nothing : html`<div class="card-actions">${recordButton(ctx, other, events)}</div>`}
      </div>`,
    )}
  </section>`;
}
