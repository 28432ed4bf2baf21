// @ts-check
/**
 * One guided check of the wiring: what to do, what was measured, and whether that is good or bad. What was found
 * is one tap, which records it; a figure is typed before.
 */

import { html, nothing } from 'lit-html';

import { markShape } from '../../../shapes/marks.js';
import { say } from '../../../words/words.js';
import { draftsWith } from '../../frame/drafts-with.js';
import { sentence } from '../../frame/sentence.js';
import { aboutCircuit, circuit } from './circuit.js';
import { repairScreen } from './repair.js';

/** @typedef {import('../../../core/views.js').MeasureStep} MeasureStep */

/** The unit that is the figure, too: nothing connects the probes. */
const OPEN = 'OL';
/** The shapes of a reading are those of a test. */
const SHAPES = { good: 'clean', bad: 'fault', unclear: 'aside' };
const SAID = { good: 'steps-measure-good', bad: 'steps-measure-bad', unclear: 'steps-measure-unclear' };

/** @param {import('./step-context.js').StepContext<MeasureStep>} ctx */
export function measureStep(ctx) {
  const { step, form } = ctx;
  if (form.repairing && step.second) {
    const back = () => {
      form.repairing = false;
      ctx.redraw();
    };
    return repairScreen(ctx, step.second, { words: say('steps-measure-back'), run: back });
  }
  const turn = () => {
    form.repairing = true;
    ctx.redraw();
  };
  // Below the answers: beside none of them it would look like what comes next.
  const repair = step.second
    ? html`<div class="ways"><button class="link-button" type="button" @click=${turn}>${step.second.words}</button></div>`
    : nothing;
  return {
    body: html`
      ${circuit(step.harness)}
      ${step.expects.units.length ? figureField(ctx, 'value') : nothing}
      ${step.expects.compares ? figureField(ctx, 'compared') : nothing}
      <h2 class="asked-words">${say('steps-measure-found')}</h2>
      <div class="answers">${step.choices.map((choice) => reading(ctx, choice))}</div>
      ${repair}
      ${step.more
        ? html`<details class="more" data-circuit="figure">
            <summary>${say('steps-measure-figure')}</summary>
            <p>${sentence(step.more)}</p>
          </details>`
        : nothing}
      ${aboutCircuit(ctx, step.harness)}
    `,
    main: null,
    second: null,
  };
}

/**
 * A figure and its unit.
 * @param {import('./step-context.js').StepContext<MeasureStep>} ctx
 * @param {'value' | 'compared'} field
 */
function figureField({ step, form, redraw }, field) {
  const unit = unitOf(form, step, field);
  const enter = (/** @type {string} */ name) => (/** @type {{target: {value: string}}} */ { target }) => {
    form[name] = target.value;
    redraw();
  };
  return html`<label class="field">
      <span class="field-name">${say(`steps-measure-${field}`)}</span>
      <span class="with-unit">
        <input
          class="measured"
          type="text"
          inputmode="decimal"
          autocomplete="off"
          maxlength="40"
          ?disabled=${unit === OPEN}
          .value=${unit === OPEN ? '' : (form[field] ?? '')}
          @input=${enter(field)}
        />
        <select class="unit" aria-label=${say('steps-measure-unit')} @change=${enter(`${field}Unit`)}>
          ${step.expects.units.map((each) => html`<option .selected=${each === unit}>${each}</option>`)}
        </select>
      </span>
    </label>`;
}

/**
 * @param {import('./step-context.js').StepContext<MeasureStep>['form']} form
 * @param {MeasureStep} step
 * @param {string} field
 */
function unitOf(form, step, field) {
  return form[`${field}Unit`] ?? step.expects.units[0];
}

/**
 * The figure as it is recorded: what is typed with letters has its unit.
 * @param {import('./step-context.js').StepContext<MeasureStep>['form']} form
 * @param {MeasureStep} step
 * @param {string} field
 */
function figureOf(form, step, field) {
  const typed = (form[field] ?? '').trim();
  const unit = unitOf(form, step, field);
  if (unit === OPEN) return OPEN;
  return /^[-+\d., ]+$/.test(typed) ? `${typed} ${unit}` : typed;
}

/**
 * @param {import('./step-context.js').StepContext<MeasureStep>} ctx
 * @param {MeasureStep['choices'][number]} choice
 */
function reading({ step, form, act, busy }, { words, reads, events }) {
  const record = () => {
    act(draftsWith(events, { value: figureOf(form, step, 'value'), compared: figureOf(form, step, 'compared') }));
  };
  return html`<button class="answer answer-marked" type="button" data-reads=${reads} ?disabled=${busy} @click=${record}>
    <svg class="walk-mark" viewBox="-17 -17 34 34" aria-hidden="true">${markShape(SHAPES[reads], { x: 0, y: 0 })}</svg>
    <span>
      <span class="choice-word">${say(SAID[reads])}</span>
      <span class="choice-note">${words}</span>
    </span>
  </button>`;
}
