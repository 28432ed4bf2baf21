// @ts-check
/**
 * A day as this phone's clock has it, and how many decisions of each sort it saw.
 */

import { html } from 'lit-html';

import { mark } from '../../shapes/marks.js';
import { DECISION_MARKS } from './card.js';

/**
 * @param {string} [name]  YYYY-MM-DD; today when left out
 * @returns {{name: string, start: number, end: number}}  ms; a day is not always 24 hours
 */
export function localDay(name) {
  const [year, month, date] = name ? name.split('-').map(Number) : today();
  const start = new Date(year, month - 1, date);
  const end = new Date(year, month - 1, date + 1);
  return { name: nameOf(start), start: start.getTime(), end: end.getTime() };
}

/**
 * The day so many days later.
 * @param {string} name
 * @param {number} days
 */
export function dayAfter(name, days) {
  const [year, month, date] = name.split('-').map(Number);
  return nameOf(new Date(year, month - 1, date + days));
}

function today() {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()];
}

/** @param {Date} date */
function nameOf(date) {
  const two = (/** @type {number} */ number) => String(number).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** @param {{counts: Array<{decision: string, past: string, count: number}>}} day */
export function dayCounts({ counts }) {
  return html`<dl class="day-counts">
    ${counts.map(
      ({ decision, past, count }) =>
        html`<div><dt>${mark(DECISION_MARKS[decision], { word: past })}</dt><dd>${count}</dd></div>`,
    )}
  </dl>`;
}
