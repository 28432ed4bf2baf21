// @ts-check
/**
 * What the sheets of a sensor share: their head with the label's symbol, its facts, and the foot.
 */

import { html, nothing } from 'lit-html';

import { LABEL_BASE } from '../../phone/label-place.js';
import { HAS_SERVER } from '../../place.js';
import { PLACE_WORDS } from '../../phone/place-words.js';
import { code } from '../../shapes/code.js';
import { labelQr } from '../../shapes/label-qr.js';
import { say } from '../../words/words.js';
import { chosenPaper } from './paper.js';
import { sentence } from '../frame/sentence.js';
import { dayOnPaper, momentOnPaper } from '../frame/when.js';

/** @typedef {import('../../core/views.js').Finding} Finding */
/** @typedef {import('../../core/views.js').UnitView} UnitView */

/**
 * What a sheet of a sensor is drawn from.
 * @param {import('../frame/context.js').Services} services
 * @param {string} unit
 * @param {string} kept  under which name its paper is remembered
 */
export async function loadUnitSheet(services, unit, kept) {
  return {
    unit: await services.core.call('unit', { unit, base: LABEL_BASE }),
    paper: await chosenPaper(services, kept),
  };
}

/**
 * @param {string} kind   what the sheet is
 * @param {UnitView} unit
 */
export function sheetHead(kind, unit) {
  return html`<header class="sheet-head">
    <div class="sheet-name">
      <p class="sheet-kind">${kind}</p>
      <h1>${code(unit.shown, { size: 'large', none: say('paper-no-label') })}</h1>
      <dl class="facts">
        <dt>${say('paper-part')}</dt>
        <dd>${unit.part || say('paper-not-noted')}</dd>
        <dt>${say('paper-serial')}</dt>
        <dd>${unit.serial || say('paper-not-noted')}</dd>
      </dl>
    </div>
    ${unit.address
      ? html`<figure class="sheet-symbol">
          ${labelQr(unit.address, say('paper-symbol', { code: unit.shown }))}
          <figcaption>${HAS_SERVER ? unit.address.toLowerCase() : unit.address}</figcaption>
        </figure>`
      : nothing}
  </header>`;
}

/** What the tests say of it, and how sure that is. @param {Finding} finding */
export function sheetFinding(finding) {
  if (!finding) return html`<p class="sheet-verdict">${say('paper-no-test')}</p>`;
  return html`
    <p class="sheet-verdict">${sentence(finding.sentence)}</p>
    <p>${sentence(finding.sure)} ${finding.rests_on}</p>
    <p>
      ${say('paper-tested', { vehicle: finding.title, day: dayOnPaper(finding.at) })}
      ${finding.complaint ? say('paper-complaint', { complaint: finding.complaint }) : nothing}
    </p>
  `;
}

/** @param {import('../frame/context.js').Context} ctx */
export function sheetFoot({ services }) {
  const { actor } = services.device;
  const at = momentOnPaper(Date.now());
  return html`<footer class="sheet-foot">
    <p>
      ${actor ? say('paper-printed-by', { at, actor }) : say('paper-printed', { at })}
      ${say('paper-copy', { where: PLACE_WORDS.ofRecord })}
    </p>
  </footer>`;
}
