// @ts-check
/**
 * The ways to the help: a row in a list, and a small link at a step where it helps.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { linkTo, to } from './router.js';
import { say } from '../../words/words.js';

export function helpRow() {
  return html`<li>
    <a class="list-row" href=${linkTo(to.help())}>
      ${icon('help')}
      <span class="list-main"><span class="list-title">${say('frame-help')}</span><span class="list-note">${say('frame-help-note')}</span></span>
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
