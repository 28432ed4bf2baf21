// @ts-check
/**
 * What is asked of a printing: what the labels go on, its measures, how far away they are scanned from; and what the
 * core is told of it.
 */

import { html } from 'lit-html';

import { say } from '../../words/words.js';
import { textField } from '../frame/field.js';

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

/** @param {Record<string, any>} form */
export function isRoll(form) {
  return form.on === 'roll';
}

/**
 * The options of the layout, as the core names them.
 * @param {Record<string, any>} form
 * @returns {import('./press.js').Options}
 */
export function optionsOf(form) {
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

/**
 * What the labels go on, its measures, and how far away they are scanned from.
 * @param {import('../frame/context.js').Context} ctx
 */
export function optionFields(ctx) {
  return html`${choice(ctx, 'on', say('labels-on'), ON, 'a4')} ${isRoll(ctx.form) ? rollMeasures(ctx) : sheetMeasures(ctx)}
    ${choice(ctx, 'distance', say('labels-distance'), DISTANCES, '20')}`;
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
      ${check(ctx, 'precut', say('labels-precut'))}
      ${MEASURES.map(
        ([, [first, firstSays], [second, secondSays]]) => html`<div class="field-pair">
          ${textField(ctx, first, say(firstSays), { most: 6, digits: true })}
          ${textField(ctx, second, say(secondSays), { most: 6, digits: true })}
        </div>`,
      )}
    </div>
  </details>`;
}

/**
 * What may be ticked.
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} key
 * @param {string} words
 */
export function check(ctx, key, words) {
  const { form } = ctx;
  return html`<label class="check">
    <input
      type="checkbox"
      .checked=${form[key] ?? false}
      @change=${() => {
        form[key] = !form[key];
        ctx.redraw();
      }}
    />
    <span>${words}</span>
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
export function choice(ctx, key, words, among, usual) {
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
