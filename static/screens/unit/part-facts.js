// @ts-check
/**
 * What is printed on a sensor, as far as it was noted.
 */

import { html } from 'lit-html';

/** @param {{part: string, serial: string}} unit */
export function partFacts({ part, serial }) {
  return html`<dl class="facts">
    <dt>Part number</dt>
    <dd>${part || 'not noted'}</dd>
    <dt>Serial</dt>
    <dd>${serial || 'not noted'}</dd>
  </dl>`;
}
