// @ts-check
/**
 * One question, one tap on an answer: which of several was found.
 */

import { html } from 'lit-html';

/** @typedef {import('../../../core/views.js').Action} Action */
/** @typedef {import('../../../core/views.js').ChoicesStep} ChoicesStep */

/** @param {import('./step-context.js').StepContext<ChoicesStep>} ctx @returns {import('../job.js').StepParts} */
export function choicesStep({ step, act, busy }) {
  return {
    body: html`<div class="answers">
      ${step.choices.map(
        (/** @type {Action} */ choice) => html`<button
          class="answer"
          type="button"
          ?disabled=${busy}
          @click=${() => act(choice.events)}
        >
          ${choice.words}
        </button>`,
      )}
    </div>`,
    main: null,
  };
}
