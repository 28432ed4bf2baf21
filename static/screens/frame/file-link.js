// @ts-check
/**
 * The ways to records as files: to make one, on the pages of a sensor and of a job, and to check one.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { linkTo, to } from './router.js';
import { say } from '../../words/words.js';

/** @param {string} hash  one of `to` */
export function fileRow(hash) {
  return html`<li>
    <a class="list-row" href=${linkTo(hash)}>
      ${icon('send')}
      <span class="list-main"><span class="list-title">${say('frame-record-file')}</span><span class="list-note">${say('frame-record-file-note')}</span></span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}

/** Where a record is checked that somebody handed over. */
export function checkRow() {
  return html`<li>
    <a class="list-row" href=${linkTo(to.checkRecord())}>
      ${icon('in')}
      <span class="list-main"><span class="list-title">${say('frame-check-record')}</span><span class="list-note">${say('frame-check-record-note')}</span></span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}
