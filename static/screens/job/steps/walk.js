// @ts-check
/**
 * The walk-behind check: for each sensor, whether it sounded at the pole. Nothing counts as heard that
 * nobody has ticked.
 */

import { html, nothing } from 'lit-html';

import { markShape } from '../../../shapes/marks.js';
import { say } from '../../../words/words.js';

/** @typedef {import('../../../core/views.js').WalkStep} WalkStep */

/** @typedef {'sounds' | 'quiet'} Heard */

/** @type {Array<{heard: Heard, says: 'works' | 'fails', shape: string}>} */
const ANSWERS = [
  { heard: 'sounds', says: 'works', shape: 'clean' },
  { heard: 'quiet', says: 'fails', shape: 'fault' },
];

/** @param {import('./step-context.js').StepContext<WalkStep>} ctx */
export function walkStep(ctx) {
  const { step, form } = ctx;
  /** @type {Array<{id: string, name: string}>} */
  const positions = step.expects.positions;
  /** @type {Record<string, Heard>} */
  const heard = form.heard ?? {};
  const left = positions.filter(({ id }) => !heard[id]);
  const quiet = positions.filter(({ id }) => heard[id] === 'quiet').map(({ id }) => id);
  const answer = (/** @type {string} */ id, /** @type {Heard} */ said) => {
    form.heard = { ...heard, [id]: said };
    form.asked = false;
    ctx.redraw();
  };
  return {
    body: html`<ul class="walk">
      ${positions.map((position) => row(position, step.expects.asks, heard[position.id], answer, form.asked === true))}
    </ul>
    ${form.asked ? html`<p class="field-fault" role="alert">${step.expects.asks.first}</p>` : nothing}`,
    main: {
      words: mainWords(step, left.length, quiet.length),
      run: () => {
        if (left.length) {
          form.asked = true;
          return ctx.redraw();
        }
        if (!quiet.length) return ctx.act(step.action.events);
        const sounding = positions.map(({ id }) => id).filter((id) => !quiet.includes(id));
        return ctx.act([{ kind: 'walk_checked', data: { positions: sounding, missed: quiet } }]);
      },
    },
  };
}

/**
 * @param {WalkStep} step
 * @param {number} left
 * @param {number} quiet
 */
function mainWords(step, left, quiet) {
  if (left) return say('steps-walk-left', { count: left, what: step.expects.asks.left });
  return quiet ? say('steps-walk-save', { count: quiet, what: step.expects.asks.fails }) : step.action.words;
}

/**
 * @param {{id: string, name: string}} position
 * @param {WalkStep['expects']['asks']} asks
 * @param {Heard | undefined} now
 * @param {(id: string, said: Heard) => void} answer
 * @param {boolean} asked
 */
function row({ id, name }, asks, now, answer, asked) {
  return html`<li class=${asked && !now ? 'walk-row walk-missing' : 'walk-row'}>
    <fieldset>
      <legend class="walk-name">${name}</legend>
      <div class="walk-answers">
        ${ANSWERS.map(
          ({ heard, says, shape }) =>
            html`<button
              class="walk-answer"
              type="button"
              aria-pressed=${now === heard ? 'true' : 'false'}
              aria-label=${say('steps-walk-answer', { position: name, heard: asks[says] })}
              @click=${() => answer(id, heard)}
            >
              <svg class="walk-mark" viewBox="-17 -17 34 34" aria-hidden="true">
                ${markShape(now === heard ? shape : 'untested', { x: 0, y: 0 })}
              </svg>
              ${asks[says]}
            </button>`,
        )}
      </div>
    </fieldset>
  </li>`;
}
