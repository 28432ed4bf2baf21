// @ts-check
/**
 * One question, one tap on an answer: what the lamps show, or which of several was found.
 */

import { html } from 'lit-html';

/** @typedef {import('../../../core/views.js').Action} Action */
/** @typedef {import('../../../core/views.js').ChoicesStep} ChoicesStep */
/** @typedef {import('../../../core/views.js').LampsStep} LampsStep */

/** @param {import('./step-context.js').StepContext<LampsStep | ChoicesStep>} ctx @returns {import('../job.js').StepParts} */
export function lampsStep({ step, act, busy }) {
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
