// @ts-check
/**
 * Printing labels: what they go on, how far away they are scanned from, a look at the result, and a warning
 * where it will be hard to read.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { textField } from '../frame/field.js';
import { to } from '../frame/router.js';
import { forgetPlans, planOf } from './plan.js';
import { press } from './press.js';

const ON = /** @type {const} */ ([
  ['a4', 'A4 sheet'],
  ['letter', 'US Letter sheet'],
  ['roll', 'Roll, one label a page'],
]);
const DPIS = /** @type {const} */ ([
  ['203', '203 dpi, 8 dots a mm'],
  ['300', '300 dpi, 12 dots a mm'],
]);
const DISTANCES = /** @type {const} */ ([
  ['10', '10 cm'],
  ['20', '20 cm'],
  ['30', '30 cm'],
]);
/** Labels of rolls that many printers take; what a printer of 58 or 80 mm leaves free lies beside the symbol. */
const ROLLS = /** @type {const} */ ([
  ['50', '30', '50 x 30 mm'],
  ['30', '20', '30 x 20 mm'],
  ['58', '30', '58 mm roll'],
  ['80', '40', '80 mm roll'],
]);

/** Measures of a sheet: option, and the fields that make up its two figures. */
const MEASURES = /** @type {const} */ ([
  ['grid', ['columns', 'Columns'], ['rows', 'Rows']],
  ['label', ['width', 'Label width, mm'], ['height', 'Label height, mm']],
  ['margin', ['left', 'Left margin, mm'], ['top', 'Top margin, mm']],
  ['gap', ['across', 'Gap across, mm'], ['down', 'Gap down, mm']],
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
    const { plan, fault } = planOf(ctx, options(form)) ?? { plan: null, fault: '' };
    const typed = (form.count ?? '').trim();
    const count = Number(typed || (roll(form) ? ROLL_FULL : (plan?.a_page ?? 0)));
    const good = Number.isInteger(count) && count >= 1 && count <= (plan?.most ?? 0);
    return {
      title: 'Print labels',
      titled: true,
      back: to.labels(),
      body: html`
        ${choice(ctx, 'on', 'What do you print on?', ON, 'a4')} ${roll(form) ? rollMeasures(ctx) : sheetMeasures(ctx)}
        ${choice(ctx, 'distance', 'How far away is the phone when it scans?', DISTANCES, '20')}
        ${textField(ctx, 'count', 'How many labels', {
          note: roll(form) ? `Left empty: ${ROLL_FULL}.` : 'Left empty: one full sheet.',
          most: 4,
          digits: true,
          fault: plan && !good ? `Found ${typed}; 1 to ${plan.most} can be made at once.` : '',
        })}
        ${press.formats.length ? choice(ctx, 'format', 'Which kind of file?', press.formats, 'pdf') : nothing}
        ${outcome(plan, fault, ctx)}
        ${problem ? html`<p class="field-fault" role="alert">${problem}</p>` : nothing}
      `,
      main: {
        words: good && plan ? `Make ${count === 1 ? '1 label' : `${count} labels`}` : 'Make labels',
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
  const { on = 'a4', distance = '20', dpi = '203', precut = false } = form;
  if (on === 'roll') return { roll: both(form, 'rollWidth', 'rollHeight', '50', '30'), dpi, distance };
  /** @type {import('./press.js').Options} */
  const asked = { paper: on, distance };
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
      <legend class="asked-words">Which labels are on it?</legend>
      <div class="choices choices-two">
        ${ROLLS.map(
          ([width, height, words]) => html`<label class="choice">
            <input
              type="radio"
              name="roll"
              .checked=${(form.rollWidth ?? '50') === width && (form.rollHeight ?? '30') === height}
              @change=${() => {
                Object.assign(form, { rollWidth: width, rollHeight: height });
                ctx.redraw();
              }}
            />
            <span class="choice-word">${words}</span>
          </label>`,
        )}
      </div>
    </fieldset>
    <div class="field-pair">
      ${textField(ctx, 'rollWidth', 'Label width, mm', { most: 6, digits: true, initial: '50' })}
      ${textField(ctx, 'rollHeight', 'Label height, mm', { most: 6, digits: true, initial: '30' })}
    </div>
    ${choice(ctx, 'dpi', 'How fine does the label printer print?', DPIS, '203')}`;
}

/** @param {import('../frame/context.js').Context} ctx */
function sheetMeasures(ctx) {
  const { form } = ctx;
  const given = MEASURES.some(([, [first], [second]]) => form[first] || form[second]);
  return html`<details class="more" ?open=${given || form.precut}>
    <summary>Measures of the sheet</summary>
    <div class="screen-stack">
      <p>Left empty: as many labels of 26 x 32 mm as fit, with marks to cut along.</p>
      <label class="check">
        <input
          type="checkbox"
          .checked=${form.precut ?? false}
          @change=${() => {
            form.precut = !form.precut;
            ctx.redraw();
          }}
        />
        <span>The sheet is cut into labels already: no marks</span>
      </label>
      ${MEASURES.map(
        ([, [first, firstWords], [second, secondWords]]) => html`<div class="field-pair">
          ${textField(ctx, first, firstWords, { most: 6, digits: true })}
          ${textField(ctx, second, secondWords, { most: 6, digits: true })}
        </div>`,
      )}
    </div>
  </details>`;
}

/**
 * One of several, each a tile.
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
          <span class="choice-word">${each}</span>
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
      <p class="panel-kicker">${icon('ask')} This can't be printed so</p>
      <p>${fault}</p>
      <div class="card-actions">
        <button class="small-button" type="button" @click=${() => ctx.reload()}>Ask once more</button>
      </div>
    </section>`;
  }
  if (!plan) return html`<p class="soft" role="status">Looking how it comes out.</p>`;
  const { one, page } = press.preview(options(ctx.form), plan);
  return html`
    ${plan.warnings.length
      ? html`<section class="panel panel-ask" role="alert">
          <p class="panel-kicker">${icon('ask')} Hard to read</p>
          ${plan.warnings.map((warning) => html`<p>${warning}</p>`)}
          <p class="soft">${plan.rule}</p>
        </section>`
      : nothing}
    <section class="screen-stack">
      <h2>How it comes out</h2>
      <p>${plan.summary}</p>
      <figure class="label-preview label-preview-one">
        ${one}
        <figcaption>One label. Its code here is none of those that are printed.</figcaption>
      </figure>
      ${plan.a_page > 1
        ? html`<figure class="label-preview">
            ${page}
            <figcaption>The sheet, ${plan.a_page} labels.</figcaption>
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
