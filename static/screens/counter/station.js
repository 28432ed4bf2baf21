// @ts-check
/**
 * A wide screen at the counter: the queue, the part at hand and the day side by side. A phone has one of them at a time.
 */

import { html } from 'lit-html';

import { rows } from '../frame/part.js';
import { time } from '../frame/when.js';
import { dayCounts } from './day.js';
import { decisionLine } from './decision-line.js';
import { queue } from './queue.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').DecidedLine} DecidedLine */

const WIDE = matchMedia('(min-width: 64rem)');
/** @type {() => unknown} */
let redraw = () => undefined;
WIDE.addEventListener('change', () => redraw());

/** @param {import('../frame/context.js').Context} ctx */
export function isWide(ctx) {
  redraw = () => document.querySelector('[data-takes-codes]') && ctx.redraw();
  return WIDE.matches;
}

/**
 * @param {import('./work.js').Work} work
 * @param {unknown} now  what the screen of a phone has
 */
export function station(work, now) {
  const { waiting, today } = work.ctx.data;
  return html`<div class="counter-station">
    <aside class="screen-stack" aria-label=${say('you-what-waits')}>${queue(work, waiting)}</aside>
    <div class="screen-stack">${now}</div>
    <aside class="screen-stack" aria-label=${say('counter-day')}>
      <h2 class="list-head">${say('counter-today')}</h2>
      ${dayCounts(today)}
      <ul class="list">
        ${rows(today.lines, (/** @type {DecidedLine} */ line) => decisionLine(line, line, time(line.at)))}
      </ul>
    </aside>
  </div>`;
}
