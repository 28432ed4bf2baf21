// @ts-check
/**
 * Whose a job is by now, in a line at its top; it was handed over in handing-over.js.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../words/words.js';

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../core/views.js').JobView} view
 */
export function handedLine({ services }, { handed, closed }) {
  if (!handed || closed) return nothing;
  const mine = handed.to === services.device.actor;
  return html`<p class="handed" role="status">
    ${mine ? say('ways-handed-you', { by: handed.by }) : say('ways-handed-to', { to: handed.to })}
  </p>`;
}
