// @ts-check
/**
 * One guided check of the wiring: what to do, what was measured, and whether that is good or bad. What was found
 * is one tap, which records it; a figure is typed before.
 */

import { html, nothing } from 'lit-html';

import { markShape } from '../../../shapes/marks.js';
import { say } from '../../../words/words.js';
import { draftsWith } from '../../frame/drafts-with.js';
import { repairScreen } from './repair.js';

/** @typedef {import('../../../core/views.js').MeasureStep} MeasureStep */

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
  const repair = step.second && {
    words: step.second.words,
    run: () => {
      form.repairing = true;
      ctx.redraw();
    },
  };
  return {
    body: html`
      ${step.expects.unit ? valueField(ctx) : nothing}
      <h2 class="asked-words">${say('steps-measure-found')}</h2>
      <div class="answers">${step.choices.map((choice) => reading(ctx, choice))}</div>
    `,
    main: null,
    second: repair,
  };
}

/** @param {import('./step-context.js').StepContext<MeasureStep>} ctx */
function valueField({ step, form, redraw }) {
  const { unit } = step.expects;
  return html`<label class="field">
    <span class="field-name">${say('steps-measure-value')}</span>
    <span class="with-unit">
      <input
        class="measured"
        type="text"
        inputmode="decimal"
        autocomplete="off"
        maxlength="40"
        .value=${form.value ?? ''}
        @input=${(/** @type {{target: HTMLInputElement}} */ { target }) => {
          form.value = target.value;
          redraw();
        }}
      />
      <span class="unit" aria-hidden="true">${unit}</span>
      <span class="aloud">${say('steps-measure-unit', { unit })}</span>
    </span>
  </label>`;
}

/**
 * @param {import('./step-context.js').StepContext<MeasureStep>} ctx
 * @param {MeasureStep['choices'][number]} choice
 */
function reading({ step, form, act, busy }, { words, reads, events }) {
  const record = () => {
    const figure = (form.value ?? '').trim();
    act(draftsWith(events, { value: figure ? `${figure} ${step.expects.unit}` : '' }));
  };
  return html`<button class="answer answer-marked" type="button" data-reads=${reads} ?disabled=${busy} @click=${record}>
    <svg class="walk-mark" viewBox="-17 -17 34 34" aria-hidden="true">${markShape(SHAPES[reads], { x: 0, y: 0 })}</svg>
    <span>
      <span class="choice-word">${say(SAID[reads])}</span>
      <span class="choice-note">${words}</span>
    </span>
  </button>`;
}
