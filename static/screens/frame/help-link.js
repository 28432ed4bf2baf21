// @ts-check
/**
 * The ways to the help: a row in a list, and a small link at a step where it helps.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { linkTo, to } from './router.js';

export function helpRow() {
  return html`<li>
    <a class="list-row" href=${linkTo(to.help())}>
      ${icon('help')}
      <span class="list-main"><span class="list-title">Help</span><span class="list-note">first steps, self-test, labels, cautions</span></span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}

/**
 * @param {string} hash  one of `to`
 * @param {string} words
 */
export function helpLink(hash, words) {
  return html`<a class="link-button" href=${linkTo(hash)}>${icon('help')} ${words}</a>`;
}
