// @ts-check
/**
 * The record of a sensor on paper: everything that its page shows, for whoever has no phone at hand.
 */

import { html, nothing } from 'lit-html';

import { markKey } from '../../shapes/marks.js';
import { say } from '../../words/words.js';
import { paperParts, TESTS_ACROSS } from './paper.js';
import { part, rows } from '../frame/part.js';
import { to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { loadUnitSheet, sheetFinding, sheetFoot, sheetHead } from './sheet-parts.js';
import { unitStations } from '../unit/unit-stations.js';
import { dayAndTime, dayOnPaper, momentOnPaper } from '../frame/when.js';

/** @typedef {import('../../core/views.js').UnitView} UnitView */

const KEPT = 'record';

export const unitRecordPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  load: (services, { unit }) => loadUnitSheet(services, unit, KEPT),

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { unit } = ctx.data;
    return paperParts(ctx, {
      title: unit.shown ? say('paper-record-title', { code: unit.shown, sort: unit.sort }) : say('paper-record', { sort: unit.sort }),
      back: to.unit(unit.id),
      papers: ['a5', 'page'],
      kept: KEPT,
      body: (paper) => html`
        ${part(() => sheetHead(say('paper-record', { sort: unit.sort }), unit))}
        <section class="sheet-part">
          <h2>${say('paper-tests')}</h2>
          ${part(() => sheetFinding(unit.finding))}
          <p>${sentence(say('paper-record-where', { where: unit.where }))}</p>
        </section>
        <section class="sheet-part">
          <h2>${say('paper-record-trail')}</h2>
          ${markKey(['clean', 'fault', 'aside'])} ${part(() => unitStations(unit.trail, { across: TESTS_ACROSS[paper] }))}
        </section>
        ${[tests, custody, labels, returns, lost].map((each) => part(() => each(unit)))} ${part(() => sheetFoot(ctx))}
      `,
    });
  },
};

/** @param {UnitView} unit */
function tests({ tests: read, tests_words: counted }) {
  return html`<section class="sheet-part">
    <h2>${say('paper-record-tests')}</h2>
    <p class="sheet-lead">${counted}</p>
    <ul class="sheet-list">
      ${rows(read, (test) => html`<li><span class="sheet-when">${dayOnPaper(test.at)}</span> ${test.sentence} ${test.why}</li>`)}
    </ul>
  </section>`;
}

/** @param {UnitView} unit */
function custody({ custody: entries, custody_words: told }) {
  if (!entries.length) return nothing;
  return html`<section class="sheet-part">
    <h2>${say('paper-custody')}</h2>
    <p class="sheet-lead">${told}</p>
    <table class="sheet-table">
      <thead>
        <tr>
          <th>${say('paper-record-when')}</th>
          <th>${say('paper-record-what')}</th>
          <th>${say('paper-record-how')}</th>
          <th>${say('paper-record-who')}</th>
        </tr>
      </thead>
      <tbody>
        ${entries.map(
          (entry) => html`<tr>
            <td>${momentOnPaper(entry.at)}</td>
            <td>${sentence(entry.sentence)}${entry.note ? html`. ${entry.note}` : nothing}</td>
            <td>${entry.how_words}</td>
            <td>${entry.actor}</td>
          </tr>`,
        )}
      </tbody>
    </table>
  </section>`;
}

/** @param {UnitView} unit */
function labels({ labels: all }) {
  if (!all.length) return nothing;
  return html`<section class="sheet-part">
    <h2>${say('paper-record-labels')}</h2>
    <ul class="sheet-list">
      ${rows(
        all,
        (each) => html`<li>
          ${sentence(labelWords(each))}
        </li>`,
      )}
    </ul>
  </section>`;
}

/** @param {UnitView['labels'][number]} label */
function labelWords({ shown, at, sentence: told }) {
  if (!at) return say('paper-record-label', { code: shown, told });
  return say('paper-record-label-put-on', { code: shown, day: dayOnPaper(at), told });
}

/** @param {UnitView} unit */
function returns({ returns: all }) {
  if (!all.length) return nothing;
  return html`<section class="sheet-part">
    <h2>${say('paper-record-returns')}</h2>
    <ul class="sheet-list">
      ${rows(
        all,
        ({ at, actor, received, decision }) => html`<li>
          <span class="sheet-when">${momentOnPaper(at)}</span> ${received} ${actor}.
          ${decision
            ? html`<br /><span class="sheet-when">${momentOnPaper(decision.at)}</span> ${decision.sentence}
                ${say('paper-record-signed', { signed: decision.signed })}`
            : say('paper-record-undecided')}
        </li>`,
      )}
    </ul>
  </section>`;
}

/** @param {UnitView} unit */
function lost({ lost: all }) {
  return all.map(
    ({ at, words }) => html`<section class="sheet-part">
      <h2>${say('paper-record-lost')}</h2>
      <p>${say('paper-record-lost-how', { at: dayAndTime(at), how: words })}</p>
    </section>`,
  );
}
