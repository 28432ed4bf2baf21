// @ts-check
/**
 * Two part numbers side by side: the same, or where they differ, in words and with a shape.
 */

import { html, nothing } from 'lit-html';

import { mark } from '../../../shapes/marks.js';
import { say } from '../../../words/words.js';

/** Spaces and small letters are how a number is written, not what it is. @param {string} part */
function bare(part) {
  return part.replace(/\s+/g, '').toUpperCase();
}

/**
 * @param {string} old
 * @param {string} part
 * @returns {boolean} false as long as one of them is not known
 */
export function partsDiffer(old, part = '') {
  return bare(old) !== '' && bare(part) !== '' && bare(old) !== bare(part);
}

/**
 * @param {string} old
 * @param {string} part  as far as it is typed
 */
export function comparison(old, part) {
  const wanted = bare(old);
  const typed = bare(part);
  if (!typed || !wanted) return nothing;
  if (typed === wanted) {
    return html`<p class="compared" role="status">${mark('clean', { word: say('steps-compare-same') })}</p>`;
  }
  if (wanted.startsWith(typed)) {
    const left = wanted.length - typed.length;
    const word = say('steps-compare-so-far', { count: left });
    return html`<p class="compared" role="status">${mark('untested', { word })}</p>`;
  }
  return html`<p class="compared" role="status">
    ${mark('fault', { word: say('steps-compare-other', { place: firstDifference(wanted, typed) }) })}
  </p>`;
}

/**
 * @param {string} one
 * @param {string} other
 * @returns {number} counted from 1
 */
function firstDifference(one, other) {
  let at = 0;
  while (at < one.length && one[at] === other[at]) at += 1;
  return at + 1;
}
