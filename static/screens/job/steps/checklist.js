// @ts-check
/**
 * A list of things to see for oneself, confirmed by one tap; what is not so is tapped, and has to be put
 * right first.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../../shapes/icons.js';
import { say } from '../../../words/words.js';

/** @typedef {import('../../../core/views.js').ChecklistStep} ChecklistStep */

/** @param {import('./step-context.js').StepContext<ChecklistStep>} ctx @returns {import('../job.js').StepParts} */
export function checklistStep(ctx) {
  const { step, form, redraw } = ctx;
  /** @type {string[]} */
  const wrong = form.wrong ?? [];
  const tick = (/** @type {string} */ id) => {
    form.wrong = wrong.includes(id) ? wrong.filter((each) => each !== id) : [...wrong, id];
    redraw();
  };
  return {
    body: html`<ul class="checks">
        ${step.choices.map(({ id, words }) => {
          const not = wrong.includes(id);
          return html`<li>
            <button class=${not ? 'check check-not' : 'check'} type="button" aria-pressed=${not ? 'true' : 'false'} @click=${() => tick(id)}>
              ${icon(not ? 'cross' : 'tick')} <span>${words}</span>
              ${not ? html`<strong class="check-word">${say('steps-checklist-not')}</strong>` : nothing}
            </button>
          </li>`;
        })}
      </ul>
      ${wrong.length ? html`<p class="field-fault" role="alert">${say('steps-checklist-first')}</p>` : nothing}`,
    main: {
      words: wrong.length ? say('steps-checklist-left', { count: wrong.length }) : step.action.words,
      disabled: wrong.length > 0,
      run: () => ctx.act(step.action.events),
    },
  };
}
