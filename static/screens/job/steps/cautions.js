// @ts-check
/**
 * The cautions: all of them before the work begins, and those that belong to a step at that step.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../../shapes/icons.js';
import { say } from '../../../words/words.js';

/** @typedef {import('../../../core/views.js').CautionsStep} CautionsStep */

/** @param {import('./step-context.js').StepContext<CautionsStep>} ctx @returns {import('../job.js').StepParts} */
export function cautionsStep({ view }) {
  return { body: cautionList(view.cautions, 'large') };
}

/**
 * What was read before the work began stands as one short line at the steps that need it.
 * @param {import('../../../core/views.js').Caution[]} cautions
 * @param {'small' | 'large'} [size]
 */
export function cautionList(cautions, size = 'small') {
  if (!cautions.length) return nothing;
  if (size === 'small' && cautions.every(({ acknowledged }) => acknowledged)) {
    return html`<p class="caution-line" aria-label=${say('steps-cautions')}>
      ${cautions.map((caution) => html`<span class="caution-short">${icon(caution.icon)} ${caution.short}</span>`)}
    </p>`;
  }
  return html`<ul class="cautions ${size === 'large' ? 'cautions-large' : ''}" aria-label=${say('steps-cautions')}>
    ${cautions.map(
      (caution) => html`<li class="caution">
        ${icon(caution.icon, { size })}
        <p class="caution-text">${caution.sentence}</p>
      </li>`,
    )}
  </ul>`;
}
