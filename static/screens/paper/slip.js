// @ts-check
/**
 * The slip that goes with a returned sensor: which one it is, what proves that it is bad, who held it, and
 * what was decided, or room for it.
 */

import { html } from 'lit-html';

import { paperParts } from './paper.js';
import { to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { loadUnitSheet, sheetFinding, sheetFoot, sheetHead } from './sheet-parts.js';
import { momentOnPaper } from '../frame/when.js';

/** @typedef {import('../../core/views.js').Custody} Custody */
/** @typedef {import('../../core/views.js').ReturnView} ReturnView */

const KEPT = 'slip';

export const slipPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  load: (services, { unit }) => loadUnitSheet(services, unit, KEPT),

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { unit } = ctx.data;
    return paperParts(ctx, {
      title: `Return slip ${unit.shown}`.trim(),
      back: to.unit(unit.id),
      papers: ['a5', '80', '58'],
      kept: KEPT,
      body: () => html`
        ${sheetHead('Return slip', unit)}
        <section class="sheet-part">
          <h2>What the tests say</h2>
          ${sheetFinding(unit.finding)}
        </section>
        <section class="sheet-part">
          <h2>Who had it</h2>
          <p>${unit.custody_words}</p>
          <p>${last(unit.custody)}</p>
        </section>
        ${decision(unit.returns)} ${sheetFoot(ctx)}
      `,
    });
  },
};

/** @param {Custody[]} custody */
function last(custody) {
  const [entry] = custody.filter(({ handover }) => handover).slice(-1);
  if (!entry) return '';
  return html`Last: ${sentence(entry.sentence)}, ${momentOnPaper(entry.at)}, ${entry.actor} (${entry.how_words}).`;
}

/** The latest decision with its signature, or the lines to write one on. @param {ReturnView[]} returns */
function decision(returns) {
  const decided = returns[returns.length - 1]?.decision;
  if (decided) {
    return html`<section class="sheet-part sheet-decision">
      <h2>Decision</h2>
      <p class="sheet-verdict">${decided.word}</p>
      <p>${decided.sentence}</p>
      <p>Signed: ${decided.signed}, ${momentOnPaper(decided.at)}.</p>
    </section>`;
  }
  return html`<section class="sheet-part sheet-decision">
    <h2>Decision</h2>
    <ul class="sheet-boxes">
      ${['accepted', 'on hold', 'refused'].map((word) => html`<li><span class="sheet-box"></span>${word}</li>`)}
    </ul>
    ${['Reason', 'Name, date', 'Signature'].map(
      (word) => html`<p class="sheet-line"><span class="sheet-line-word">${word}</span></p>`,
    )}
  </section>`;
}
