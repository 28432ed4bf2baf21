// @ts-check
/**
 * The walk-behind check: all sounded is one tap; whatever stayed quiet is tapped where it is.
 */

import { html, nothing } from 'lit-html';

import { markShape } from '../../../shapes/marks.js';
import { say } from '../../../words/words.js';

/** @typedef {import('../../../core/views.js').WalkStep} WalkStep */

/** @param {import('./step-context.js').StepContext<WalkStep>} ctx @returns {import('../job.js').StepParts} */
export function walkStep(ctx) {
  const { step, form } = ctx;
  const { positions, asks } = step.expects;
  /** @type {string[]} */
  const quiet = form.quiet ?? [];
  const toggle = (/** @type {string} */ id) => {
    form.quiet = quiet.includes(id) ? quiet.filter((each) => each !== id) : [...quiet, id];
    ctx.redraw();
  };
  const sounding = positions.map(({ id }) => id).filter((id) => !quiet.includes(id));
  return {
    body: html`<ul class="walk">
      ${positions.map(({ id, name }) => {
        const not = quiet.includes(id);
        return html`<li>
          <button class="walk-answer" type="button" data-position=${id} aria-pressed=${not ? 'true' : 'false'} @click=${() => toggle(id)}>
            <svg class="walk-mark" viewBox="-17 -17 34 34" aria-hidden="true">${markShape(not ? 'fault' : 'untested', { x: 0, y: 0 })}</svg>
            <span class="walk-name">${name}</span> ${not ? html`<strong>${asks.fails}</strong>` : nothing}
          </button>
        </li>`;
      })}
    </ul>`,
    main: quiet.length
      ? {
          words: say('steps-walk-save', { count: quiet.length, what: asks.fails }),
          run: () => ctx.act([{ kind: 'walk_checked', data: { positions: sounding, missed: quiet } }]),
        }
      : undefined,
  };
}
