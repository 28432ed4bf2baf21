// @ts-check
/**
 * One question, one tap on an answer: what the lamps show, or which of several was found.
 */

import { html } from 'lit-html';

/** @param {any} ctx @returns {import('../job.js').StepParts} */
export function lampsStep({ step, act, busy }) {
  return {
    body: html`<div class="answers">
      ${step.choices.map(
        (/** @type {{words: string, events: any[]}} */ choice) => html`<button
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
