// @ts-check
/**
 * One guided check of the wiring: what to do, what was measured, and whether that is good or bad.
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
      <fieldset class="readings">
        <legend class="field-name">${say('steps-measure-found')}</legend>
        <div class="choices">${step.choices.map((choice) => reading(ctx, choice))}</div>
      </fieldset>
      ${form.asked ? html`<p class="field-fault" role="alert">${say('steps-measure-first')}</p>` : nothing}
    `,
    main: { words: say('steps-measure-save'), run: () => save(ctx) },
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
 * @param {{words: string, reads: 'good' | 'bad' | 'unclear'}} choice
 */
function reading({ form, redraw }, { words, reads }) {
  const choose = () => {
    form.reads = reads;
    form.asked = false;
    redraw();
  };
  return html`<label class="choice reading">
    <input type="radio" name="reading" .checked=${form.reads === reads} @change=${choose} />
    <span class="reading-inside">
      <svg class="reading-mark" viewBox="-17 -17 34 34" aria-hidden="true">${markShape(SHAPES[reads], { x: 0, y: 0 })}</svg>
      <span>
        <span class="choice-word">${say(SAID[reads])}</span>
        <span class="choice-note">${words}</span>
      </span>
    </span>
  </label>`;
}

/** @param {import('./step-context.js').StepContext<MeasureStep>} ctx */
function save(ctx) {
  const { step, form } = ctx;
  const chosen = step.choices.find((choice) => choice.reads === form.reads);
  if (!chosen) {
    form.asked = true;
    ctx.redraw();
    return;
  }
  const figure = (form.value ?? '').trim();
  const value = figure ? `${figure} ${step.expects.unit}` : '';
  ctx.act(draftsWith(chosen.events, { value }));
}
