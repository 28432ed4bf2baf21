// @ts-check
/**
 * A list of things to see for oneself: each is ticked alone, and only then it goes on.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../../words/words.js';

/** @typedef {import('../../../core/views.js').ChecklistStep} ChecklistStep */

/** @param {import('./step-context.js').StepContext<ChecklistStep>} ctx */
export function checklistStep(ctx) {
  const { step, form } = ctx;
  /** @type {Array<{id: string, words: string}>} */
  const checks = step.choices;
  /** @type {string[]} */
  const ticked = form.ticked ?? [];
  const left = checks.filter(({ id }) => !ticked.includes(id));
  const tick = (/** @type {string} */ id) => {
    form.ticked = ticked.includes(id) ? ticked.filter((each) => each !== id) : [...ticked, id];
    form.asked = false;
    ctx.redraw();
  };
  const seen = { count: ticked.length, all: checks.length };
  return {
    body: html`
      <ul class="checks">
        ${checks.map(
          ({ id, words }) =>
            html`<li>
              <label class=${form.asked && !ticked.includes(id) ? 'check check-missing' : 'check'}>
                <input type="checkbox" .checked=${ticked.includes(id)} @change=${() => tick(id)} />
                <span>${words}</span>
              </label>
            </li>`,
        )}
      </ul>
      <p class="ticked" role="status">
        ${form.asked
          ? html`${say('steps-checklist-seen-so-far', seen)} <strong>${say('steps-checklist-first')}</strong>`
          : say('steps-checklist-seen', seen)}
      </p>
    `,
    main: {
      words: left.length ? say('steps-checklist-left', { count: left.length }) : step.action.words,
      run: () => {
        if (!left.length) return ctx.act(step.action.events);
        form.asked = true;
        return ctx.redraw();
      },
    },
  };
}
