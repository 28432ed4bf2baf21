// @ts-check
/**
 * The ways to records as files: to make one, on the pages of a sensor and of a job, and to check one.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { linkTo, to } from './router.js';

/** @param {string} hash  one of `to` */
export function fileRow(hash) {
  return html`<li>
    <a class="list-row" href=${linkTo(hash)}>
      ${icon('send')}
      <span class="list-main"><span class="list-title">The record as a file</span><span class="list-note">sealed, for a counter elsewhere</span></span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}

/** Where a record is checked that somebody handed over. */
export function checkRow() {
  return html`<li>
    <a class="list-row" href=${linkTo(to.checkRecord())}>
      ${icon('in')}
      <span class="list-main"><span class="list-title">Check a record</span><span class="list-note">a file from another yard</span></span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}
