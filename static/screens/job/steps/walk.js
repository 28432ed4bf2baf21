// @ts-check
/**
 * The walk-behind check: all sounded is one tap; whatever stayed quiet is tapped where it is. Where a pole is
 * used, it says on request where that stands, and takes distances.
 */

import { html, nothing } from 'lit-html';

import { markShape } from '../../../shapes/marks.js';
import { say } from '../../../words/words.js';
import { readRarePages } from '../../frame/read-late.js';

/** @typedef {import('../../../core/views.js').WalkStep} WalkStep */

/** What says where to stand, once somebody has opened it. @type {typeof import('../../rare-pages.js') | null} */
let stand = null;

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
  const measured = form.stand && stand ? stand.standing(ctx) : null;
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
      </ul>
      ${step.expects.pole ? standing(ctx) : nothing}`,
    main:
      quiet.length || form.stand
        ? {
            words: quiet.length ? say('steps-walk-save', { count: quiet.length, what: asks.fails }) : step.action.words,
            disabled: Boolean(form.stand && (!measured || measured.problem)),
            run: () => ctx.act([{ kind: 'walk_checked', data: { positions: sounding, missed: quiet, ...measured?.data } }]),
          }
        : undefined,
  };
}

/** @param {import('./step-context.js').StepContext<WalkStep>} ctx */
function standing(ctx) {
  const { form } = ctx;
  const opened = async (/** @type {{target: HTMLDetailsElement}} */ { target }) => {
    if (!target.open || stand) return;
    try {
      stand = await readRarePages();
      form.standFault = '';
    } catch {
      form.standFault = say('frame-screen-missing');
    }
    ctx.redraw();
  };
  return html`<details class="more" ?open=${Boolean(form.stand)} @toggle=${opened}>
    <summary>${say('steps-stand')}</summary>
    <div class="screen-stack">
      ${stand ? stand.standPart(ctx) : html`<p class="field-fault" role="status">${form.standFault ?? ''}</p>`}
    </div>
  </details>`;
}
