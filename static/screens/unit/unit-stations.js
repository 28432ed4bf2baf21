// @ts-check
/**
 * The trail of one sensor over all jobs and vehicles: a station for each job with its tests from left to
 * right, and for each place where it lay in between; one line runs through all of them.
 */

import { html, nothing } from 'lit-html';

import { trail, trailOnPaper } from '../../shapes/trail.js';
import { dayOnPaper } from '../frame/when.js';
import { say } from '../../words/words.js';
import { rows } from '../frame/part.js';

/** @typedef {import('../../core/views.js').JobStation} JobStation */
/** @typedef {import('../../core/views.js').PlaceStation} PlaceStation */
/** @typedef {import('../../core/views.js').PresentStation} PresentStation */
/** @typedef {import('../../core/views.js').Station} Station */

/**
 * @param {Station[]} stations   as the core gives them
 * @param {{across?: number}} [options]  `across` tests beside each other, for paper; without it a long
 *     picture scrolls
 */
export function unitStations(stations, { across = 0 } = {}) {
  return html`<ol class="stations">
    ${rows(
      stations,
      (each) => html`<li class="station" data-kind=${each.kind}>
        ${each.kind === 'job' ? jobStation(each, across) : placeStation(each)}
      </li>`,
    )}
  </ol>`;
}

/**
 * @param {JobStation} station
 * @param {number} across
 */
function jobStation({ title, complaint, at, trail: view }, across) {
  return html`
    <p class="station-name">
      ${title}
      <span class="station-when">${dayOnPaper(at)}</span>
    </p>
    ${complaint ? html`<p class="station-note">${complaint}</p>` : nothing}
    ${view ? (across ? trailOnPaper(view, across) : trail(view)) : html`<p class="station-note">${say('unit-no-test')}</p>`}
  `;
}

/** @param {PlaceStation | PresentStation} station */
function placeStation({ kind, words, at }) {
  return html`<p class="station-name">
    ${kind === 'now' ? say('unit-now', { where: words }) : words} ${at ? html`<span class="station-when">${say('unit-since', { day: dayOnPaper(at) })}</span>` : nothing}
  </p>`;
}
