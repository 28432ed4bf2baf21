// @ts-check
/**
 * The way to the record as a file, on the pages of a sensor and of a job.
 */

import { html } from 'lit-html';

import { icon } from '../shapes/icons.js';

/** @param {string} hash  one of `to` */
export function fileRow(hash) {
  return html`<li>
    <a class="list-row" href=${`/${hash}`}>
      ${icon('send')}
      <span class="list-main"><span class="list-title">The record as a file</span><span class="list-note">sealed, for a counter elsewhere</span></span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}

/** The same where no list of links is yet. @param {string} hash */
export function fileLink(hash) {
  return html`<ul class="list">${fileRow(hash)}</ul>`;
}
