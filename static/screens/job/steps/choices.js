// @ts-check
/**
 * One question, one tap on an answer: which of several was found. What was repaired asks for more.
 */

import { html } from 'lit-html';

import { say } from '../../../words/words.js';
import { isRepair, repairScreen } from './repair.js';

/** @typedef {import('../../../core/views.js').Action} Action */
/** @typedef {import('../../../core/views.js').ChoicesStep} ChoicesStep */

/** @param {import('./step-context.js').StepContext<ChoicesStep>} ctx @returns {import('../job.js').StepParts} */
export function choicesStep(ctx) {
  const { step, form, act, busy, redraw } = ctx;
  const turn = (/** @type {number | null} */ place) => {
    form.repairing = place;
    redraw();
  };
  const repair = step.choices[form.repairing ?? -1];
  if (repair) return repairScreen(ctx, repair, { words: say('scan-go-back'), run: () => turn(null) });
  return {
    body: html`<div class="answers">
      ${step.choices.map(
        (/** @type {Action} */ choice, place) => html`<button
          class="answer"
          type="button"
          ?disabled=${busy}
          @click=${() => (isRepair(choice) ? turn(place) : act(choice.events))}
        >
          ${choice.words}
        </button>`,
      )}
    </div>`,
    main: null,
  };
}
