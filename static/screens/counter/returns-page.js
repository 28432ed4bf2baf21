// @ts-check
/**
 * What was decided on a day: counts, each decision, and the same as a file for a spreadsheet.
 */

import { html, nothing } from 'lit-html';

import { ApiError } from '../../sync/request.js';
import { saveFile } from '../../phone/save-file.js';
import { icon } from '../../shapes/icons.js';
import { rows } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { day as dayWords, time } from '../frame/when.js';
import { dayAfter, dayCounts, localDay } from './day.js';
import { decisionLine } from './decision-line.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').DecidedLine} DecidedLine */

/** What the server said against the file. */
let problem = '';

export const returnsPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  async load({ core }, { day }) {
    const asked = localDay(day);
    problem = '';
    return { ...(await core.call('decided', { start: asked.start, end: asked.end })), day: asked, isToday: !day || day === localDay().name };
  },

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { data } = ctx;
    const { day, lines, isToday } = data;
    return {
      title: say('counter-day-list'),
      back: to.jobs(),
      body: html`
        <nav class="day-nav" aria-label=${say('counter-day')}>
          <a class="small-button" href=${linkTo(to.returns(dayAfter(day.name, -1)))} aria-label=${say('counter-day-before')}>${icon('back')}</a>
          <h1>${isToday ? say('counter-today') : dayWords(day.start)}</h1>
          ${isToday
            ? html`<span class="day-nav-none"></span>`
            : html`<a class="small-button" href=${linkTo(to.returns(dayAfter(day.name, 1)))} aria-label=${say('counter-day-after')}>${icon('forward')}</a>`}
        </nav>
        ${dayCounts(data)}
        ${problem ? html`<p class="field-fault" role="alert">${problem}</p>` : nothing}
        ${lines.length
          ? html`<ul class="list">
              ${rows(lines, (/** @type {DecidedLine} */ line) => decisionLine(line, line, time(line.at)))}
            </ul>`
          : html`<p class="lead">${say('counter-day-empty')}</p>`}
      `,
      main: { words: say('counter-save'), disabled: !lines.length, run: () => save(ctx) },
      second: { words: say('counter-search'), run: () => ctx.go(to.search()) },
    };
  },
};

/** @param {import('../frame/context.js').Context} ctx */
async function save(ctx) {
  const { day } = ctx.data;
  const { sync } = ctx.services;
  problem = '';
  try {
    // What waits on this phone belongs into the file too.
    await sync.now();
    const offset = -new Date(day.start).getTimezoneOffset();
    const file = await sync.api.file(`/api/returns.csv?from=${day.start}&to=${day.end}&offset=${offset}`);
    saveFile(new File([file], `returns-${day.name}.csv`, { type: file.type }));
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    problem = say('counter-file-problem', { why: error.sentence });
  }
  ctx.redraw();
}
