// @ts-check
/**
 * The mark of a sensor that was found bad, wherever one is listed that could be taken for a good one.
 */

import { html, nothing } from 'lit-html';

import { mark } from '../../shapes/marks.js';

/** @param {string} bad   what the core says of it, "" of a good one */
export function badMark(bad) {
  return bad ? html`<span class="bad-mark">${mark('fault', { word: bad })}</span>` : nothing;
}
