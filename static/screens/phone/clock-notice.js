// @ts-check
/**
 * Says that this phone's clock is wrong, where times are read: entries carry the phone's own time.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { span } from '../frame/when.js';
import { say } from '../../words/words.js';

const WORTH_SAYING_MS = 3 * 60_000;

/**
 * How far this phone's clock is ahead of the server's, in ms; 0 while that is not worth saying or not known.
 * @param {import('../frame/context.js').Services} services
 */
export function clockOff({ device }) {
  const { clockAhead } = device.server.standing.value;
  return clockAhead === null || Math.abs(clockAhead) < WORTH_SAYING_MS ? 0 : clockAhead;
}

/** @param {import('../frame/context.js').Context} ctx */
export function clockNotice({ services }) {
  const clockAhead = clockOff(services);
  if (!clockAhead) return nothing;
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('clock')} ${say('phone-clock')}</p>
    <p>
      ${say('phone-clock-off', { span: span(Math.abs(clockAhead)), way: clockAhead > 0 ? 'ahead' : 'behind' })}
    </p>
  </section>`;
}
