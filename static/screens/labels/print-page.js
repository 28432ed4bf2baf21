// @ts-check
/**
 * Printing labels: what they go on, how far away they are scanned from, a look at the result, and a warning
 * where it will be hard to read.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { textField } from '../frame/field.js';
import { to } from '../frame/router.js';
import { forgetPlans, planOf } from './plan.js';
import { press } from './press.js';

const ON = /** @type {const} */ ([
  ['a4', 'labels-on-a4'],
  ['letter', 'labels-on-letter'],
  ['roll', 'labels-on-roll'],
]);
const DPIS = /** @type {const} */ ([
  ['203', 'labels-dpi-203'],
  ['300', 'labels-dpi-300'],
]);
const DISTANCES = /** @type {const} */ ([
  ['10', 'labels-distance-10'],
  ['20', 'labels-distance-20'],
  ['30', 'labels-distance-30'],
]);
/** Labels of rolls that many printers take; what a printer of 58 or 80 mm leaves free lies beside the symbol. */
const ROLLS = /** @type {const} */ ([
  ['50', '30', 'labels-roll-50'],
  ['30', '20', 'labels-roll-30'],
  ['58', '30', 'labels-roll-58'],
  ['80', '40', 'labels-roll-80'],
]);

/** Measures of a sheet: option, and the fields that make up its two figures. */
const MEASURES = /** @type {const} */ ([
  ['grid', ['columns', 'labels-columns'], ['rows', 'labels-rows']],
  ['label', ['width', 'labels-width'], ['height', 'labels-height']],
  ['margin', ['left', 'labels-margin-left'], ['top', 'labels-margin-top']],
  ['gap', ['across', 'labels-gap-across'], ['down', 'labels-gap-down']],
]);

const ROLL_FULL = '50'; // labels, when nobody says how many

/** What was said against making them. */
let problem = '';
let making = false;

export const printPage = {
  load: forgetPlans,

  formKey: () => 'print-labels',

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { form } = ctx;
    const { plan, fault, mayForce } = planOf(ctx, options(form)) ?? { plan: null, fault: '', mayForce: form.force };
    const typed = (form.count ?? '').trim();
    const count = Number(typed || (roll(form) ? ROLL_FULL : (plan?.a_page ?? 0)));
    const good = Number.isInteger(count) && count >= 1 && count <= (plan?.most ?? 0);
    return {
      title: say('labels-print'),
      titled: true,
      back: to.labels(),
      body: html`
        ${choice(ctx, 'on', say('labels-on'), ON, 'a4')} ${roll(form) ? rollMeasures(ctx) : sheetMeasures(ctx)}
        ${choice(ctx, 'distance', say('labels-distance'), DISTANCES, '20')}
        ${textField(ctx, 'count', say('labels-how-many'), {
          note: roll(form) ? say('labels-how-many-roll', { count: Number(ROLL_FULL) }) : say('labels-how-many-sheet'),
          most: 4,
          digits: true,
          fault: plan && !good ? say('labels-how-many-fault', { typed, most: plan.most }) : '',
        })}
        ${press.formats.length ? choice(ctx, 'format', say('labels-format'), press.formats, 'pdf') : nothing}
        ${mayForce || form.force ? forceCheck(ctx) : nothing} ${outcome(plan, fault, ctx)}
        ${problem ? html`<p class="field-fault" role="alert">${problem}</p>` : nothing}
      `,
      main: {
        words: good && plan ? say('labels-make', { count }) : say('labels-make-none'),
        disabled: making || !plan || !good,
        run: () => make(ctx, count),
      },
    };
  },
};

/** @param {Record<string, any>} form */
function roll(form) {
  return form.on === 'roll';
}

/**
 * The options of the layout, as the core names them.
 * @param {Record<string, any>} form
 * @returns {import('./press.js').Options}
 */
function options(form) {
  const { on = 'a4', distance = '20', dpi = '203', precut = false, force = false } = form;
  /** @type {import('./press.js').Options} */
  const asked = force ? { distance, force: 'yes' } : { distance };
  if (on === 'roll') return { ...asked, roll: both(form, 'rollWidth', 'rollHeight', '50', '30'), dpi };
  asked.paper = on;
  if (precut) asked.precut = 'yes';
  for (const [option, [first], [second]] of MEASURES) {
    const value = both(form, first, second, '', '');
    if (value !== 'x') asked[option] = value;
  }
  return asked;
}

/**
 * Two figures as one measure, "30x20".
 * @param {Record<string, any>} form
 * @param {string} first
 * @param {string} second
 * @param {string} usualFirst
 * @param {string} usualSecond
 */
function both(form, first, second, usualFirst, usualSecond) {
  return `${(form[first] ?? usualFirst).trim()}x${(form[second] ?? usualSecond).trim()}`;
}

/** @param {import('../frame/context.js').Context} ctx */
function rollMeasures(ctx) {
  const { form } = ctx;
  return html`<fieldset class="asked">
      <legend class="asked-words">${say('labels-roll')}</legend>
      <div class="choices choices-two">
        ${ROLLS.map(
          ([width, height, says]) => html`<label class="choice">
            <input
              type="radio"
              name="roll"
              .checked=${(form.rollWidth ?? '50') === width && (form.rollHeight ?? '30') === height}
              @change=${() => {
                Object.assign(form, { rollWidth: width, rollHeight: height });
                ctx.redraw();
              }}
            />
            <span class="choice-word">${say(says)}</span>
          </label>`,
        )}
      </div>
    </fieldset>
    <div class="field-pair">
      ${textField(ctx, 'rollWidth', say('labels-width'), { most: 6, digits: true, initial: '50' })}
      ${textField(ctx, 'rollHeight', say('labels-height'), { most: 6, digits: true, initial: '30' })}
    </div>
    ${choice(ctx, 'dpi', say('labels-dpi'), DPIS, '203')}`;
}

/** @param {import('../frame/context.js').Context} ctx */
function sheetMeasures(ctx) {
  const { form } = ctx;
  const given = MEASURES.some(([, [first], [second]]) => form[first] || form[second]);
  return html`<details class="more" ?open=${given || form.precut}>
    <summary>${say('labels-measures')}</summary>
    <div class="screen-stack">
      <p>${say('labels-measures-lead')}</p>
      <label class="check">
        <input
          type="checkbox"
          .checked=${form.precut ?? false}
          @change=${() => {
            form.precut = !form.precut;
            ctx.redraw();
          }}
        />
        <span>${say('labels-precut')}</span>
      </label>
      ${MEASURES.map(
        ([, [first, firstSays], [second, secondSays]]) => html`<div class="field-pair">
          ${textField(ctx, first, say(firstSays), { most: 6, digits: true })}
          ${textField(ctx, second, say(secondSays), { most: 6, digits: true })}
        </div>`,
      )}
    </div>
  </details>`;
}

/** @param {import('../frame/context.js').Context} ctx */
function forceCheck(ctx) {
  const { form } = ctx;
  return html`<label class="check">
    <input
      type="checkbox"
      .checked=${form.force ?? false}
      @change=${() => {
        form.force = !form.force;
        ctx.redraw();
      }}
    />
    <span>${say('labels-force')}</span>
  </label>`;
}

/**
 * One of several, each a tile with its message.
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} key
 * @param {string} words
 * @param {readonly (readonly [string, string])[]} among
 * @param {string} usual
 */
function choice(ctx, key, words, among, usual) {
  return html`<fieldset class="asked">
    <legend class="asked-words">${words}</legend>
    <div class="choices choices-two">
      ${among.map(
        ([id, each]) => html`<label class="choice">
          <input
            type="radio"
            name=${key}
            .checked=${(ctx.form[key] ?? usual) === id}
            @change=${() => {
              ctx.form[key] = id;
              ctx.redraw();
            }}
          />
          <span class="choice-word">${say(each)}</span>
        </label>`,
      )}
    </div>
  </fieldset>`;
}

/**
 * @param {import('./plan.js').Plan | null} plan
 * @param {string} fault
 * @param {import('../frame/context.js').Context} ctx
 */
function outcome(plan, fault, ctx) {
  if (fault) {
    return html`<section class="panel panel-ask" role="alert">
      <p class="panel-kicker">${icon('ask')} ${say('labels-fault')}</p>
      <p>${fault}</p>
      <div class="card-actions">
        <button class="small-button" type="button" @click=${() => ctx.reload()}>${say('labels-ask-again')}</button>
      </div>
    </section>`;
  }
  if (!plan) return html`<p class="soft" role="status">${say('labels-looking')}</p>`;
  const { one, page } = press.preview(options(ctx.form), plan);
  return html`
    ${plan.warnings.length
      ? html`<section class="panel panel-ask" role="alert">
          <p class="panel-kicker">${icon('ask')} ${say('labels-hard-to-read')}</p>
          ${plan.warnings.map((warning) => html`<p>${warning}</p>`)}
          <p class="soft">${plan.rule}</p>
        </section>`
      : nothing}
    <section class="screen-stack">
      <h2>${say('labels-outcome')}</h2>
      <p>${plan.summary}</p>
      <figure class="label-preview label-preview-one">
        ${one}
        <figcaption>${say('labels-outcome-one')}</figcaption>
      </figure>
      ${plan.a_page > 1
        ? html`<figure class="label-preview">
            ${page}
            <figcaption>${say('labels-outcome-sheet', { count: plan.a_page })}</figcaption>
          </figure>`
        : nothing}
    </section>
  `;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {number} count
 */
async function make(ctx, count) {
  problem = '';
  making = true;
  ctx.redraw();
  try {
    const made = await press.make(ctx, count, options(ctx.form), ctx.form.format ?? 'pdf');
    problem = made.problem ?? '';
    if (made.batch) ctx.go(to.batch(made.batch));
  } finally {
    making = false;
    ctx.redraw();
  }
}
