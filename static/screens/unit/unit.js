// @ts-check
/**
 * One sensor, as a scan opens it: where it is, what the tests say of it, its trail over all jobs, who had it
 * and how it was known each time, its labels, returns and pictures, and what may be done next.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../shapes/code.js';
import { icon } from '../../shapes/icons.js';
import { fileRow } from '../frame/file-link.js';
import { partFacts } from './part-facts.js';
import { badMark } from '../frame/bad-mark.js';
import { part } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { labelTrouble, printedOn } from './unit-care.js';
import { custody, elsewhereTold, jobs, labels, lost, photos, returns, tests } from './unit-parts.js';
import { apart, dispute, jobOf, otherPlaces } from './unit-places.js';
import { unitStations } from './unit-stations.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').Finding} Finding */
/** @typedef {import('../../core/views.js').UnitView} UnitView */

export const unitPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  load: ({ core }, { unit }) => core.call('unit', { unit }),

  /** @param {Record<string, string>} params */
  formKey: ({ unit }) => `unit/${unit}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw: (ctx) => unitParts(ctx, ctx.data, 'tapped'),
};

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {UnitView} unit
 * @param {string} how   how it was identified when this screen was reached
 * @returns {import('../frame/frame.js').Parts}
 */
export function unitParts(ctx, unit, how) {
  const job = unit.jobs[unit.jobs.length - 1];
  const atBench = ctx.services.device.role.value !== 'counter';
  return {
    title: unit.shown ? say('unit-title', { code: unit.shown, sort: unit.sort }) : say('unit-title-unlabelled', { sort: unit.sort }),
    titled: true,
    back: job ? to.job(job.id) : to.jobs(),
    body: html`
      <section class="unit-head">
        ${code(unit.shown, { size: 'large', none: say('unit-no-label') })}
        ${unit.settle ? nothing : html`<p class="lead">${sentence(say('unit-lead', { where: unit.where }))} ${unit.next.sentence}</p>`}
        ${badMark(unit.bad)}
      </section>
      ${part(() => partFacts(unit))}
      ${part(() => unit.lost.map(lost))} ${unit.disputed ? dispute(ctx, unit, how) : nothing}
      ${part(() => unit.apart.map((each) => apart(ctx, each)))} ${part(() => finding(unit.finding))}
      <section>
        <h2>${say('unit-trail')}</h2>
        ${unitStations(unit.trail)}
      </section>
      ${part(() => returns(unit))} ${part(() => elsewhereTold(unit))} ${part(() => tests(unit, atBench))} ${part(() => custody(unit, atBench))}
      ${part(() => labels(unit))} ${part(() => photos(ctx, unit, { opens: atBench }))}
      ${part(() => jobs(unit))} ${part(() => otherPlaces(ctx, unit))} ${part(() => printedOn(ctx, unit, { job: jobOf(unit) }))}
      ${labelTrouble(ctx, unit, { job: jobOf(unit) })} ${handOn(unit)}
    `,
    main: { words: unit.next.words, run: () => ctx.go(whereTo(unit)) },
    second: unit.next.to === 'slip' ? { words: say('frame-the-jobs'), run: () => ctx.go(to.jobs()) } : null,
  };
}

/** What the main button opens. @param {UnitView} unit */
function whereTo({ id, job, jobs: all, next }) {
  if (next.to === 'find') return to.find();
  if (next.to === 'slip') return to.unitSheet(id, 'slip');
  const last = job ?? all[all.length - 1]?.id;
  return next.to === 'job' && last ? to.job(last) : to.jobs();
}

/** @param {Finding | null} found */
function finding(found) {
  if (!found) return nothing;
  return html`<section class="verdict" data-settled=${found.standing === 'open' ? 'no' : 'yes'}>
    <h2 class="verdict-sentence">${sentence(found.sentence)}</h2>
    <p class="verdict-detail">${sentence(found.sure)} ${found.rests_on}</p>
  </section>`;
}

/** @param {UnitView} unit */
function handOn({ id }) {
  return html`<nav aria-label=${say('unit-hand-on')}>
    <h2>${say('unit-hand-on')}</h2>
    <ul class="list">
      ${sheetLink(to.unitSheet(id, 'slip'), say('unit-slip'), say('unit-slip-note'))}
      ${sheetLink(to.unitSheet(id, 'paper'), say('unit-paper'), say('unit-paper-note'))}
      ${fileRow(to.unitFile(id))}
    </ul>
  </nav>`;
}

/**
 * @param {string} hash
 * @param {string} words
 * @param {string} note
 */
function sheetLink(hash, words, note) {
  return html`<li>
    <a class="list-row" href=${linkTo(hash)}>
      ${icon('print')}
      <span class="list-main"><span class="list-title">${words}</span><span class="list-note">${note}</span></span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}
