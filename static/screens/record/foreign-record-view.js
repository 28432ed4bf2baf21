// @ts-check
/**
 * A record from elsewhere as it is shown: whose seal it bears, what the core makes of it, then the sensor
 * and the jobs in it. A broken line along its left side tells it from this phone's own records.
 */

import { html, nothing } from 'lit-html';

import { HAS_SERVER } from '../../place.js';
import { code } from '../../shapes/code.js';
import { icon } from '../../shapes/icons.js';
import { trail } from '../../shapes/trail.js';
import { say } from '../../words/words.js';
import { partFacts } from '../unit/part-facts.js';
import { pictureList } from '../job/photos-page.js';
import { sentence } from '../frame/sentence.js';
import { custody, elsewhereTold, labels, lost, photos, returns, tests } from '../unit/unit-parts.js';
import { unitStations } from '../unit/unit-stations.js';
import { asEvidence } from './as-evidence.js';
import { whoseSeal } from '../frame/whose-seal.js';
import { verdictCard } from '../job/verdict-card.js';
import { dayAndTime } from '../frame/when.js';

/** @typedef {import('../../core/views.js').HistoryEntry} HistoryEntry */
/** @typedef {import('../../core/views.js').JobView} JobView */

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../record/foreign-record.js').ForeignRecord} record
 */
export function foreignRecord(ctx, record) {
  const { answer, view, photos: own } = record;
  // The pictures in here are neither on this phone nor on the server.
  const within = { ...ctx, services: { ...ctx.services, photos: /** @type {any} */ (own) } };
  return html`
    ${sealed(answer)} ${answer.maker.own ? nothing : whoseSeal(ctx, record)} ${worked(view.compared, answer)} ${asEvidence(ctx, record)}
    <div class="foreign">
      <p class="foreign-mark">${markWords(answer.maker)}</p>
      ${view.unit ? sensor(within, view) : nothing} ${view.jobs.map((/** @type {JobView} */ job) => jobPart(within, job))}
    </div>
  `;
}

/** @param {any} answer */
function sealed({ maker, made_at: at }) {
  return html`<section class="panel panel-good" role="status">
    <p class="panel-kicker">${icon('tick')} ${say('sealed-view-unchanged')}</p>
    <p>${say('sealed-view-sealed', { maker: maker.kind, at: dayAndTime(at) })}</p>
    <p class="fingerprint">${maker.fingerprint}</p>
    ${maker.own ? html`<p>${HAS_SERVER ? say('sealed-view-own-server') : say('sealed-view-own-phone')}</p>` : nothing}
    ${maker.kind === 'phone'
      ? html`<p>
          ${say('sealed-view-phone')}
        </p>`
      : nothing}
  </section>`;
}

/** @param {{own: boolean, kind: string}} maker */
function markWords({ own, kind }) {
  if (own) return say('sealed-view-from-file');
  return kind === 'phone' ? say('sealed-view-from-phone') : say('sealed-view-from-installation');
}

/**
 * @param {any} compared
 * @param {any} answer
 */
function worked({ same, sentence: told, differs, elsewhere }, answer) {
  const smaller = answer.smaller.length;
  const missing = answer.missing.length - smaller;
  return html`<section class=${same ? 'card' : 'panel panel-stop'} role=${same ? 'status' : 'alert'}>
    ${same ? nothing : html`<p class="panel-kicker">${icon('stop')} ${say('sealed-view-otherwise')}</p>`}
    <p>${told}</p>
    ${differs.length
      ? html`<ul class="plain-list">
          ${differs.map((/** @type {string} */ each) => html`<li>${sentence(each)}</li>`)}
        </ul>`
      : nothing}
    ${elsewhere ? html`<p>${sentence(elsewhere)}</p>` : nothing}
    ${smaller ? html`<p>${say('sealed-view-smaller', { count: smaller })}</p>` : nothing}
    ${missing ? html`<p>${say('sealed-view-missing', { count: missing })}</p>` : nothing}
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {any} view
 */
function sensor(ctx, { unit, where }) {
  return html`<section class="unit-head">
      ${code(unit.shown, { size: 'large', none: say('sealed-view-no-label') })}
      <p class="lead">${sentence(where)}</p>
    </section>
    ${partFacts(unit)}
    ${unit.lost.map(lost)} ${unitStations(unit.trail)} ${returns(unit)} ${elsewhereTold(unit)} ${tests(unit)}
    ${custody(unit)} ${labels(unit)} ${photos(ctx, unit)}`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {any} view
 */
function jobPart(ctx, view) {
  const state = view.closed ? say('sealed-view-closed') : say('sealed-view-open');
  return html`<section class="screen-stack" data-job=${view.id}>
    <h2>${say('sealed-view-job', { vehicle: view.title })}</h2>
    <p class="soft">${[view.complaint, state].filter(Boolean).join(' · ')}</p>
    ${verdictCard(view, { causes: true })} ${view.trail.tests.length ? trail(view.trail) : html`<p>${say('sealed-view-no-test')}</p>`}
    ${view.photos.length ? html`<h3>${say('sealed-view-pictures')}</h3>${pictureList(ctx, view)}` : nothing}
    <details class="more">
      <summary>${say('sealed-view-entries')}</summary>
      <ol class="history">
        ${view.history.map(entryRow)}
      </ol>
    </details>
  </section>`;
}

/** @param {HistoryEntry} entry */
function entryRow({ at, actor, sentence: said, undone }) {
  return html`<li class=${undone ? 'history-row undone' : 'history-row'}>
    <span class="history-when">${dayAndTime(at)} · ${actor || say('sealed-view-no-name')}</span>
    <p class="history-what">${sentence(said)}${undone ? html`<br />${say('sealed-view-undone', { reason: undone.reason })}` : nothing}</p>
  </li>`;
}
