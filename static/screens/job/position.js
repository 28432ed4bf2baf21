// @ts-check
/**
 * One position: its picture, the sensor that sits there, what it read, and what is printed on it.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../shapes/code.js';
import { mark } from '../../shapes/marks.js';
import { say } from '../../words/words.js';
import { capture, takingParts } from '../scan/capture.js';
import { anyAbout, correctLink, correctMark } from '../frame/correct-link.js';
import { jobQuestion, loadJob } from './job-data.js';
import { partFacts } from '../unit/part-facts.js';
import { picture } from '../frame/picture.js';
import { reachStepper } from './reach.js';
import { NotThere } from '../frame/fault.js';
import { part } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { sentenceCase } from '../frame/sentence-case.js';
import { printedOn } from '../unit/unit-care.js';

/** @typedef {import('../../core/views.js').BoardPosition} BoardPosition */
/** @typedef {import('../../core/views.js').JobView} JobView */
/** @typedef {import('../../core/views.js').UnitView} UnitView */

export const positionPage = {
  asks: jobQuestion,

  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  async load(services, params) {
    const view = await loadJob(services, params);
    const position = view.board.positions.find(({ id }) => id === params.position);
    if (!position) throw new NotThere('position');
    const unit = position.unit ? await services.core.call('unit', { unit: position.unit.id }) : null;
    return { view, position, unit };
  },

  /** @param {Record<string, string>} params */
  formKey: ({ job, position }) => `position/${job}/${position}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { view, position, unit } = ctx.data;
    const head = { title: sentenceCase(position.name), titled: true, back: to.job(view.id) };
    const taking = capture(ctx, { words: say('job-position-guide', { sort: view.sort }), alt: position.name });
    const parts = takingParts(ctx, taking, head, { shows: 'position', position: position.id });
    if (parts) return parts;
    return {
      ...head,
      body: positionBody(ctx),
      main: { words: position.photo ? say('job-position-again') : say('job-photos-take'), run: taking.open },
      second: { words: say('job-position-job'), run: () => ctx.go(to.job(view.id)) },
    };
  },
};

/** @param {import('../frame/context.js').Context} ctx */
function positionBody(ctx) {
  const { view, position, unit } = ctx.data;
  return html`
    ${position.photo
      ? html`<a class="picture-link" href=${linkTo(to.photo(view.id, position.photo))} aria-label=${say('job-picture-enlarge')}
          >${picture(ctx.services, position.photo, { alt: position.name, large: true })}</a
        >`
      : html`<p class="soft">${say('job-position-no-picture')}</p>`}
    <p class="standing">${mark(position.mark, { word: position.word, size: 'large' })}</p>
    ${view.closed ? nothing : part(() => reachCard(ctx))}
    ${unit ? part(() => sensorCard(ctx, unit)) : html`<p>${say('job-position-no-sensor', { sort: view.sort })}</p>`} ${part(() => readings(view, position))}
    ${unit && !view.closed ? printedOn(ctx, unit) : nothing}
    ${anyAbout(view, `position:${position.id}`) ? correctLink(to.correct(view.id, `position:${position.id}`)) : nothing}
  `;
}

/** How easy it is to get to; moves are compared by it. @param {import('../frame/context.js').Context} ctx */
function reachCard(ctx) {
  const { id, name, reach_minutes: minutes } = ctx.data.position;
  const set = (/** @type {number} */ chosen) =>
    ctx.act([{ kind: 'reach_set', data: { position: id, minutes: chosen } }]);
  return html`<section class="reach-row">
    <p>${say('job-position-reach')}</p>
    ${reachStepper({ name, minutes, busy: ctx.busy, set })}
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {UnitView} unit
 */
function sensorCard({ data }, unit) {
  return html`<section class="card">
    <p class="kicker">${say('job-position-sensor', { sort: data.view.sort })}</p>
    ${data.position.pins ? html`<p>${say('job-position-pins', { pins: data.position.pins })}</p>` : nothing}
    <p>${code(unit.shown, { size: 'large', none: say('job-position-no-label') })}</p>
    ${partFacts(unit)}
    <a class="link-button" href=${linkTo(to.unit(data.position.unit.id))}>${say('job-position-all', { sort: data.view.sort })}</a>
  </section>`;
}

/**
 * What the tests read at this position, whichever sensor sat there.
 * @param {JobView} view
 * @param {BoardPosition} position
 */
function readings(view, position) {
  const read = view.trail.tests.map((test, n) => {
    for (const line of view.trail.lines) {
      const point = line.points.find((each) => each.test === n && each.position === position.id);
      if (point) return { test, line, mark: point.mark };
    }
    return { test, line: null, mark: 'empty' };
  });
  if (!read.length) return nothing;
  return html`<section>
    <h2>${say('job-position-read')}</h2>
    <ul class="list">
      ${read.map(
        ({ test, line, mark: kind }) => html`<li>
          <a class="list-row" href=${linkTo(to.correct(view.id, `test:${test.n}`))}>
            <span class="list-main">
              <span class="list-title">${sentenceCase(test.label)}</span>
              <span class="list-note">${line ? code(line.shown, { size: 'plain' }) : nothing}</span>
            </span>
            <span class="list-end">${mark(kind)} ${correctMark()}</span>
          </a>
        </li>`,
      )}
    </ul>
  </section>`;
}
