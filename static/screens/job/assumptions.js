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
import { render, say } from '../../words/words.js';
import { textField } from '../frame/field.js';
import { figureRows, offered } from '../lessons/rows.js';
import { to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';

/** @typedef {import('../../core/views.js').AssumptionsView} AssumptionsView */
/** @typedef {import('../../core/views.js').CodeWeightView} CodeWeightView */
/** @typedef {import('../../core/views.js').ComesAndGoesView} ComesAndGoesView */
/** @typedef {import('../../core/views.js').Draft} Draft */
/** @typedef {import('../../core/views.js').FigureView} FigureView */
/** @typedef {import('../../core/views.js').RateView} RateView */

const CONFIDENCE = 'confidence';

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
            ${told.rates.map((/** @type {RateView} */ rate) => row(ctx, rate))}
          </ul>
          ${HAS_SERVER ? byOwnJobs(ctx) : nothing}
        </section>
        <section>
          <h2>${say('job-assumptions-sure')}</h2>
          <ul class="list">
            ${row(ctx, { ...told.confidence, id: CONFIDENCE })}
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
          ${estimate && !estimate.used ? small(ctx, estimate.words, estimate.events) : nothing}
          ${small(ctx, other, events)}
        </div>`}
    ${again ? html`<ul class="list">${row(ctx, again)}</ul>` : nothing}
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
    ${ctx.data.told.closed ? nothing : html`<div class="card-actions">${small(ctx, told.words, told.events)}</div>`}
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
          ${all.filter(({ on }) => !on).map((each) => small(ctx, each.words, each.events))}
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
        ${ctx.data.told.closed ? nothing : html`<div class="card-actions">${small(ctx, other, events)}</div>`}
      </div>`,
    )}
  </section>`;
}

/**
 * One chance; a tap opens its field.
 * @param {import('../frame/context.js').Context} ctx
 * @param {RateView} rate
 */
function row(ctx, rate) {
  const { form } = ctx;
  const isOpen = form.open === rate.id;
  const told = html`<span class="list-main">
      <span class="list-title">${rate.words}</span>
      <span class="list-note"
        >${rate.changed ? sentence(say('job-assumptions-changed', { value: rate.default_words })) : rate.source}</span
      >
    </span>
    <span class="list-end assumed-value">${sentence(rate.value_words)}</span>`;
  if (ctx.data.told.closed) return html`<li class="list-row">${told}</li>`;
  return html`<li>
    <button
      class="list-row"
      type="button"
      aria-expanded=${isOpen}
      @click=${() => {
        form.open = isOpen ? '' : rate.id;
        delete form.percent;
        delete form.asked;
        ctx.redraw();
      }}
    >
      ${told}
    </button>
    ${isOpen ? editor(ctx, rate) : nothing}
  </li>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {RateView} rate
 */
function editor(ctx, rate) {
  const { form } = ctx;
  const set = () => {
    const ppm = partsPerMillion(form.percent ?? '');
    form.asked = ppm === null;
    if (ppm === null) return ctx.redraw();
    return ctx.act([changed(ctx.data.told, rate.id, ppm)], { after: ctx.forget });
  };
  return html`<div class="card screen-stack take-back">
    ${textField(ctx, 'percent', say('job-assumptions-percent'), {
      most: 9,
      initial: inPercent(rate.value_ppm),
      fault: form.asked ? say('job-assumptions-percent-fault') : '',
    })}
    <div class="card-actions">
      <button class="small-button" type="button" ?disabled=${ctx.busy} @click=${set}>${say('job-assumptions-set')}</button>
      ${rate.changed ? small(ctx, say('job-assumptions-reset', { value: rate.default_words }), rate.reset) : nothing}
    </div>
  </div>`;
}

/** As it would be typed, to the last digit. @param {number} ppm */
function inPercent(ppm) {
  let [units, places] = [ppm, 4];
  for (; places && units % 10 === 0; places -= 1) units /= 10;
  return render({ figure: 'decimal', of: [units, places] });
}

/**
 * The fact that sets one chance and keeps the others.
 * @param {AssumptionsView} told
 * @param {string} id
 * @param {number} ppm
 */
function changed({ rates_ppm: rates }, id, ppm) {
  const data = id === CONFIDENCE ? { rates_ppm: rates, confidence_ppm: ppm } : { rates_ppm: { ...rates, [id]: ppm }, confidence_ppm: 0 };
  return { kind: 'rates_set', data };
}

/**
 * @param {string} typed
 * @returns {number | null}  parts per million, null when it is no percentage
 */
function partsPerMillion(typed) {
  const plain = typed.replace('%', '').replace(',', '.').trim();
  return /^\d{1,3}(\.\d{1,4})?$/.test(plain) ? Math.round(Number(plain) * 10_000) : null;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Array<{id: string, words: string, value: number}>} fields
 */
function money(ctx, fields) {
  const { form } = ctx;
  const given = fields.some(({ value }) => value);
  const typed = fields.some(({ id }) => form[id] !== undefined);
  if (ctx.data.told.closed && !given) return nothing;
  return html`<section class="screen-stack">
    <h2>${say('job-money-heading')}</h2>
    <p>${given ? say('job-money-given') : say('job-money-none')}</p>
    ${ctx.data.told.closed
      ? nothing
      : html`<details class="more" ?open=${typed}>
          <summary>${given ? say('job-money-change') : say('job-money-give')}</summary>
          <div class="screen-stack">
            <p>${say('job-money-lead')}</p>
            ${fields.map(({ id, words, value }) =>
              textField(ctx, id, words, {
                most: 12,
                initial: value ? (value / 100).toFixed(2) : '',
                fault: form.moneyAsked === id ? say('job-money-fault') : '',
              }),
            )}
            <button class="small-button" type="button" ?disabled=${ctx.busy || !typed} @click=${() => setMoney(ctx, fields)}>
              ${say('job-money-record')}
            </button>
          </div>
        </details>`}
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Array<{id: string, value: number}>} fields
 */
function setMoney(ctx, fields) {
  /** @type {Record<string, number>} */
  const data = {};
  for (const { id, value } of fields) {
    const typed = (ctx.form[id] ?? (value ? String(value / 100) : '')).replace(',', '.').trim();
    if (typed && !/^\d{1,7}(\.\d{1,2})?$/.test(typed)) {
      ctx.form.moneyAsked = id;
      return ctx.redraw();
    }
    data[id] = Math.round(Number(typed || 0) * 100);
  }
  return ctx.act([{ kind: 'money_set', data }], { after: ctx.forget });
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} words
 * @param {Draft[]} events
 */
function small(ctx, words, events) {
  return html`<button
    class="small-button"
    type="button"
    ?disabled=${ctx.busy}
    @click=${() => ctx.act(events, { after: ctx.forget })}
  >
    ${sentence(words)}
  </button>`;
}
