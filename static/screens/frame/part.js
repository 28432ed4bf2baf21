// @ts-check
/**
 * Parts of a screen that fail alone: a row or a card that cannot be drawn says so in its place.
 */

import { html, nothing } from 'lit-html';

import { ROOT } from '../../place.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { linkTo } from './router.js';

/** Draw a part. @param {() => unknown} draw */
export function part(draw) {
  try {
    return draw();
  } catch (error) {
    return broken(error);
  }
}

/**
 * Draw the rows of a list.
 * @template Row
 * @param {Row[]} each
 * @param {(row: Row, at: number) => unknown} draw  an element of the list
 * @param {(row: Row) => string} [way]  what else leads to what the row is of (one of `to`)
 */
export function rows(each, draw, way) {
  return each.map((row, at) => {
    try {
      return draw(row, at);
    } catch (error) {
      return html`<li>${broken(error, way ? part(() => html`<a class="link-button" href=${linkTo(way(row))}>${say('frame-part-open')}</a>`) : nothing)}</li>`;
    }
  });
}

/**
 * What stands in the place of a part; what was thrown is there for whoever looks into the page.
 * @param {unknown} error
 * @param {unknown} [way]
 */
export function broken(error, way = nothing) {
  return html`<div class="notice notice-fault screen-stack" data-broken=${String(error)}>
    <p>${icon('ask')} ${say('frame-part-broken')}</p>
    <p>${way} ${plainLink()}</p>
  </div>`;
}

/** The way to all that was recorded, as a file (plain.js). */
export function plainLink() {
  return html`<a class="link-button" href=${new URL('plain.html', ROOT).href}>${say('begin-plain')}</a>`;
}
