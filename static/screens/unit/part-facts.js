// @ts-check
/**
 * What is printed on a sensor, as far as it was noted.
 */

import { html } from 'lit-html';
import { say } from '../../words/words.js';

/** @param {{part: string, serial: string}} unit */
export function partFacts({ part, serial }) {
  return html`<dl class="facts">
    <dt>${say('unit-part')}</dt>
    <dd>${part || say('unit-not-noted')}</dd>
    <dt>${say('unit-serial')}</dt>
    <dd>${serial || say('unit-not-noted')}</dd>
  </dl>`;
}
