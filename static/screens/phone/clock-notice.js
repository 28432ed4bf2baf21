// @ts-check
/**
 * Says that this phone's clock is wrong, where times are read: entries carry the phone's own time.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { span } from '../frame/when.js';

const WORTH_SAYING_MS = 3 * 60_000;

/** @param {import('../frame/context.js').Context} ctx */
export function clockNotice({ services }) {
  const { clockAhead } = services.device.server.standing.value;
  if (clockAhead === null || Math.abs(clockAhead) < WORTH_SAYING_MS) return nothing;
  const way = clockAhead > 0 ? 'ahead of' : 'behind';
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('clock')} The clock of this phone</p>
    <p>
      It is ${span(Math.abs(clockAhead))} ${way} the server's. What you record carries the time of this phone; its
      order does not depend on it. Set the clock in the settings of the phone.
    </p>
  </section>`;
}
