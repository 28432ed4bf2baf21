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
      <h1>${code(unit.shown, { size: 'large', none: 'no label' })}</h1>
      <dl class="facts">
        <dt>Part</dt>
        <dd>${unit.part || 'not noted'}</dd>
        <dt>Serial</dt>
        <dd>${unit.serial || 'not noted'}</dd>
      </dl>
    </div>
    ${unit.address
      ? html`<figure class="sheet-symbol">
          ${labelQr(unit.address, `The label ${unit.shown} as a QR code`)}
          <figcaption>${HAS_SERVER ? unit.address.toLowerCase() : unit.address}</figcaption>
        </figure>`
      : nothing}
  </header>`;
}

/** What the tests say of it, and how sure that is. @param {Finding} finding */
export function sheetFinding(finding) {
  if (!finding) return html`<p class="sheet-verdict">No test with it is on record.</p>`;
  return html`
    <p class="sheet-verdict">${sentence(finding.sentence)}</p>
    <p>${sentence(finding.sure)} ${finding.rests_on}</p>
    <p>On ${finding.title}, tested ${dayOnPaper(finding.at)}.${finding.complaint ? ` Complaint: ${finding.complaint}.` : nothing}</p>
  `;
}

/** @param {import('../frame/context.js').Context} ctx */
export function sheetFoot({ services }) {
  const by = services.device.actor ? ` by ${services.device.actor}` : '';
  return html`<footer class="sheet-foot">
    <p>Printed ${momentOnPaper(Date.now())}${by}. The paper is a copy: scan the code for the record itself, ${PLACE_WORDS.ofRecord}.</p>
  </footer>`;
}
