// @ts-check
/**
 * The slip that goes with a returned sensor: which one it is, what proves that it is bad, who held it, and
 * what was decided, or room for it.
 */

import { html } from 'lit-html';

import { say } from '../../words/words.js';
import { paperParts, printSheet } from './paper.js';
import { isDueAtOnce } from '../frame/print-at-once.js';
import { part } from '../frame/part.js';
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
    if (isDueAtOnce(unit.id)) queueMicrotask(printSheet);
    return paperParts(ctx, {
      title: unit.shown ? say('paper-slip-title', { code: unit.shown }) : say('paper-slip'),
      back: to.unit(unit.id),
      papers: ['a5', '80', '58'],
      kept: KEPT,
      body: () => html`
        ${part(() => sheetHead(say('paper-slip'), unit))}
        <section class="sheet-part">
          <h2>${say('paper-tests')}</h2>
          ${part(() => sheetFinding(unit.finding))}
        </section>
        <section class="sheet-part">
          <h2>${say('paper-custody')}</h2>
          <p>${unit.custody_words}</p>
          <p>${part(() => last(unit.custody))}</p>
        </section>
        ${part(() => decision(unit.returns))} ${part(() => sheetFoot(ctx))}
      `,
    });
  },
};

/** @param {Custody[]} custody */
function last(custody) {
  const [entry] = custody.filter(({ handover }) => handover).slice(-1);
  if (!entry) return '';
  const { sentence: what, at, actor, how_words: how } = entry;
  return sentence(say('paper-slip-last', { what, at: momentOnPaper(at), actor, how }));
}

/** The latest decision with its signature, or the lines to write one on. @param {ReturnView[]} returns */
function decision(returns) {
  const decided = returns[returns.length - 1]?.decision;
  if (decided) {
    return html`<section class="sheet-part sheet-decision">
      <h2>${say('paper-slip-decision')}</h2>
      <p class="sheet-verdict">${decided.word}</p>
      <p>${decided.sentence}</p>
      <p>${say('paper-slip-signed', { signed: decided.signed, at: momentOnPaper(decided.at) })}</p>
    </section>`;
  }
  return html`<section class="sheet-part sheet-decision">
    <h2>${say('paper-slip-decision')}</h2>
    <ul class="sheet-boxes">
      ${['paper-slip-accepted', 'paper-slip-on-hold', 'paper-slip-refused'].map(
        (id) => html`<li><span class="sheet-box"></span>${say(id)}</li>`,
      )}
    </ul>
    ${['paper-slip-reason', 'paper-slip-name', 'paper-slip-signature'].map(
      (id) => html`<p class="sheet-line"><span class="sheet-line-word">${say(id)}</span></p>`,
    )}
  </section>`;
}
