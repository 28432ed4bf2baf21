// @ts-check
/**
 * How many minutes it takes until a hand is on a sensor: fewer, more.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { sentenceCase } from '../frame/sentence-case.js';

/** @typedef {import('../../core/views.js').LayoutPosition} LayoutPosition */

const MOST = 600;

/**
 * @param {{name: string, minutes: number, busy?: boolean, set: (minutes: number) => unknown}} position
 */
export function reachStepper({ name, minutes, busy = false, set }) {
  const step = (/** @type {number} */ by) => set(Math.min(MOST, Math.max(0, minutes + by)));
  return html`<div class="reach" role="group" aria-label=${say('job-reach-group', { position: name })}>
    <button
      class="reach-step"
      type="button"
      aria-label=${say('job-reach-less')}
      ?disabled=${busy || minutes === 0}
      @click=${() => step(-1)}
    >
      ${icon('minus')}
    </button>
    <span class="reach-minutes" aria-live="polite">${say('job-reach-minutes', { count: minutes })}</span>
    <button
      class="reach-step"
      type="button"
      aria-label=${say('job-reach-more')}
      ?disabled=${busy || minutes === MOST}
      @click=${() => step(1)}
    >
      ${icon('plus')}
    </button>
  </div>`;
}

/**
 * At the opening of a job: which positions are the easiest to get to. What is not touched stays as it was.
 * @param {import('../frame/context.js').Context} ctx
 * @param {{positions: LayoutPosition[], called: Record<string, string>}} chosen
 */
export function reachSection(ctx, { positions, called }) {
  if (!positions.length) return nothing;
  /** @type {Record<string, number>} */
  const chosen = ctx.form.reach ?? {};
  return html`<details class="more" ?open=${Object.keys(chosen).length > 0}>
    <summary>${say('job-reach-heading')}</summary>
    <p>${say('job-reach-lead')}</p>
    <ul class="list">
      ${withReach(ctx.form, positions).map(
        ({ id, name, reach_minutes: minutes }) => html`<li class="reach-row">
          <p>${sentenceCase(called[id] ?? name)}</p>
          ${reachStepper({
            name: called[id] ?? name,
            minutes,
            set: (value) => {
              ctx.form.reach = { ...chosen, [id]: value };
              ctx.redraw();
            },
          })}
        </li>`,
      )}
    </ul>
  </details>`;
}

/**
 * The positions with the reach that was chosen for them.
 * @param {Record<string, any>} form
 * @param {LayoutPosition[]} positions
 */
export function withReach({ reach = {} }, positions) {
  return positions.map((position) => ({ ...position, reach_minutes: reach[position.id] ?? position.reach_minutes }));
}
