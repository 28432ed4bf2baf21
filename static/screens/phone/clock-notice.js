// @ts-check
/**
 * Says that this phone's clock is wrong, where times are read: entries carry the phone's own time.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { span } from '../frame/when.js';
import { say } from '../../words/words.js';

const WORTH_SAYING_MS = 3 * 60_000;

/** @param {import('../frame/context.js').Context} ctx */
export function clockNotice({ services }) {
  const { clockAhead } = services.device.server.standing.value;
  if (clockAhead === null || Math.abs(clockAhead) < WORTH_SAYING_MS) return nothing;
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('clock')} ${say('phone-clock')}</p>
    <p>
      ${say('phone-clock-off', { span: span(Math.abs(clockAhead)), way: clockAhead > 0 ? 'ahead' : 'behind' })}
    </p>
  </section>`;
}
