// @ts-check
/**
 * The report of a job for the customer: what was wrong, how that is known, what was done, what proves it.
 */

import { html, nothing } from 'lit-html';

import { markKey, mark } from '../../shapes/marks.js';
import { trail, trailOnPaper } from '../../shapes/trail.js';
import { say } from '../../words/words.js';
import { loadShop, paperParts, TESTS_ACROSS } from './paper.js';
import { part, rows } from '../frame/part.js';
import { picture } from '../frame/picture.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { dayOnPaper } from '../frame/when.js';
import { clockOff } from '../phone/clock-notice.js';

/** @typedef {import('../../core/views.js').ReportPicture} ReportPicture */
/** @typedef {import('../../core/views.js').ReportView} ReportView */

/** More pictures than this of one kind make nothing clearer. */
const MOST_PICTURES = 6;
const DAY_MS = 24 * 60 * 60_000;
/** Nobody recorded anything before there was this app. */
const FIRST_DAY = Date.UTC(2025, 0, 1);

export const reportPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  async load(services, { job }) {
    await loadShop(services);
    return services.core.call('report', { job });
  },

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const report = ctx.data;
    return paperParts(ctx, {
      title: say('paper-report-title', { vehicle: report.vehicle }),
      back: to.job(report.id),
      papers: ['page'],
      kept: 'report',
      before: report.photos.after.length ? nothing : wantsPicture(report),
      body: (paper) => html`
        ${part(() => head(report, daysDoubted(ctx.services, report)))}
        <section class="sheet-part">
          <h1 class="sheet-verdict">${report.headline}</h1>
          ${sentences(report.found)} ${report.sure ? html`<p>${sentence(report.sure)}</p>` : nothing}
        </section>
        ${part(() => pictures(ctx, say('paper-report-before'), report.photos.before))}
        ${report.trail.tests.length
          ? html`<section class="sheet-part">
              <h2>${say('paper-report-trail')}</h2>
              <p class="sheet-lead">
                ${say('paper-report-trail-lead', { sort: report.sort })}
              </p>
              ${markKey(['clean', 'fault'])}
              <div class="on-screen">${part(() => trail(report.trail))}</div>
              <div class="on-paper">${part(() => trailOnPaper(report.trail, TESTS_ACROSS[paper]))}</div>
            </section>`
          : nothing}
        ${part(() => done(report))} ${told(say('paper-report-replaced'), report.replaced)}
        ${part(() => pictures(ctx, say('paper-report-during'), report.photos.during))}
        ${part(() => pictures(ctx, say('paper-report-after'), report.photos.after))}
        ${told(say('paper-report-proof'), report.proof)} ${told(say('paper-report-note'), report.cautions)} ${part(() => foot(report))}
      `,
    });
  },
};

/** @param {ReportView} report */
function wantsPicture({ id }) {
  return html`<p class="soft">
    ${say('paper-report-no-picture')}
    <a class="link-button" href=${linkTo(to.jobPart(id, 'photos'))}>${say('paper-report-take')}</a>
  </p>`;
}

/**
 * Whether the days may be wrong: this phone's clock is now, or they are none on which it can have been.
 * @param {import('../frame/context.js').Services} services
 * @param {ReportView} report
 */
function daysDoubted(services, { opened_at: opened, closed, done }) {
  const days = [opened, ...done.map(({ at }) => at), closed?.at].filter((at) => typeof at === 'number');
  const backwards = days.some((at, n) => n > 0 && at < days[n - 1] - DAY_MS);
  return Math.abs(clockOff(services)) > DAY_MS || backwards || days.some((at) => at < FIRST_DAY || at > Date.now() + DAY_MS);
}

/**
 * @param {ReportView} report
 * @param {boolean} doubted
 */
function head({ sort, vehicle, vin, complaint, opened_at: opened, closed, standing }, doubted) {
  return html`<header class="sheet-head">
    <div class="sheet-name">
      <p class="sheet-kind">${say('paper-report-kind', { sort })}</p>
      <p class="sheet-vehicle">${vehicle}</p>
      <dl class="facts">
        ${vin ? html`<dt>${say('paper-report-vin')}</dt><dd>${vin}</dd>` : nothing}
        <dt>${say('paper-report-complaint')}</dt>
        <dd>${complaint || say('paper-report-no-complaint')}</dd>
        <dt>${say('paper-report-begun')}</dt>
        <dd>${dayOnPaper(opened)}</dd>
        ${closed ? html`<dt>${say('paper-report-finished')}</dt><dd>${dayOnPaper(closed.at)}</dd>` : nothing}
      </dl>
      ${doubted ? html`<p>${say('paper-report-clock')}</p>` : nothing}
      ${closed ? nothing : html`<p>${standing}</p>`}
    </div>
  </header>`;
}

/** @param {string[]} said */
function sentences(said) {
  return said.map((each) => html`<p>${sentence(each)}</p>`);
}

/**
 * @param {string} title
 * @param {string[]} said
 */
function told(title, said) {
  if (!said.length) return nothing;
  return html`<section class="sheet-part">
    <h2>${title}</h2>
    ${sentences(said)}
  </section>`;
}

/** @param {ReportView} report */
function done({ done: steps }) {
  if (!steps.length) return nothing;
  return html`<section class="sheet-part">
    <h2>${say('paper-report-done')}</h2>
    <ol class="sheet-steps">
      ${rows(
        steps,
        (step) => html`<li>
          ${mark(step.mark, { word: '' })}
          <p>${step.at ? html`<span class="sheet-when">${dayOnPaper(step.at)}</span> ` : nothing}${sentence(step.sentence)}</p>
        </li>`,
      )}
    </ol>
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} title
 * @param {ReportPicture[]} photos
 */
function pictures({ services }, title, photos) {
  if (!photos.length) return nothing;
  // Of many those tell most that show where a fault was, then the latest.
  const told = [...photos.filter((each) => each.faulted), ...photos.filter((each) => !each.faulted).reverse()].slice(0, MOST_PICTURES);
  const left = photos.length - told.length;
  return html`<section class="sheet-part">
    <h2>${title}</h2>
    <ul class="photos photos-wide">
      ${photos.filter((each) => told.includes(each)).map(
        (photo) => html`<li class="photo">
          ${picture(services, photo.sha256, { alt: photo.words })}
          <span class="photo-words">${say('paper-report-picture', { shows: photo.words, day: dayOnPaper(photo.at) })}</span>
        </li>`,
      )}
    </ul>
    ${left ? html`<p class="sheet-small">${say('paper-report-more', { count: left })}</p>` : nothing}
  </section>`;
}

/** @param {ReportView} report */
function foot({ by, closed }) {
  return html`<footer class="sheet-foot">
    <p>${say('paper-report-by', { by: by.join(', ') || say('paper-report-unnamed') })}${closed?.note ? ` ${closed.note}` : ''}</p>
  </footer>`;
}
