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
  if (size === 'small') {
    const read = cautions.filter(({ acknowledged }) => acknowledged);
    const unread = cautions.filter(({ acknowledged }) => !acknowledged);
    const line = html`<p class="caution-line" aria-label=${say('steps-cautions')}>
      ${read.map((caution) => html`<span class="caution-short">${icon(caution.icon)} ${caution.short}</span>`)}
    </p>`;
    return html`${unread.length ? sentences(unread, 'small') : nothing} ${read.length ? line : nothing}`;
  }
  return sentences(cautions, size);
}

/** @param {import('../../../core/views.js').Caution[]} cautions @param {'small' | 'large'} size */
function sentences(cautions, size) {
  return html`<ul class="cautions ${size === 'large' ? 'cautions-large' : ''}" aria-label=${say('steps-cautions')}>
    ${cautions.map(
      (caution) => html`<li class="caution">
        ${icon(caution.icon, { size })}
        <p class="caution-text">${caution.sentence}</p>
      </li>`,
    )}
  </ul>`;
}
