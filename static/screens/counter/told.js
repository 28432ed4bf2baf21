// @ts-check
/**
 * What the counter says between two parts: what was read that is no label of ours, which of several labels is meant,
 * what part a symbol is on, and what was decided last.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../shapes/code.js';
import { icon } from '../../shapes/icons.js';
import { mark } from '../../shapes/marks.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { DECISION_MARKS } from './card.js';
import { onPrinter } from './slips.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').Action} Action */
/** @typedef {import('../../core/views.js').DecidedLine} DecidedLine */
/** @typedef {import('../../core/views.js').FoundUnit} FoundUnit */
/** @typedef {import('../../core/views.js').SymbolChoice} SymbolChoice */
/** @typedef {import('./work.js').Work} Work */

/**
 * What a code was that is no label.
 * @param {{title: unknown, sentence: any, choices?: SymbolChoice[], unit?: string, sensors?: FoundUnit[], serial?: string, search?: string} | null | undefined} said
 * @param {Work} work
 */
export function told(said, work) {
  // What was read of one part says nothing of another, which the address may have named meanwhile.
  if (!said || (said.unit && said.unit !== work.hand.current?.answer.unit)) return nothing;
  return html`<section class="panel panel-ask" role="alert">
    <p class="panel-kicker">${icon('ask')}<span>${said.title}</span></p>
    <p class="told-holds">${sentence(said.sentence)}</p>
    ${said.choices
      ? html`<div class="answers">
          ${said.choices.map(
            (choice) =>
              html`<button class="answer" type="button" @click=${() => work.comingIn.choose(choice)}><span>${choice.words}</span></button>`,
          )}
        </div>`
      : nothing}
    ${said.sensors?.length ? ofSerial(said.sensors, said.serial ?? '', work) : nothing}
    ${said.search
      ? html`<p>${say('counter-no-serial')}</p>
          <button class="small-button" type="button" @click=${() => work.searchFor(said.search ?? '')}>${say('counter-search-records')}</button>`
      : nothing}
  </section>`;
}

/**
 * The sensors that have a serial number, to be tapped.
 * @param {FoundUnit[]} sensors
 * @param {string} serial
 * @param {Work} work
 */
function ofSerial(sensors, serial, work) {
  return html`<ul class="which">
    ${sensors.map(
      ({ unit, shown, code: text, vehicle, part }) => html`<li>
        <button class="which-button" type="button" @click=${() => work.comingIn.bySerial(unit, serial)}>
          ${text ? code(shown, { size: 'large' }) : shown}<span class="list-note">${[vehicle, part].filter(Boolean).join(' · ')}</span>
        </button>
      </li>`,
    )}
  </ul>`;
}

/** Several labels in view. @param {Work} work */
export function which(work) {
  const { which: labels } = work.ctx.form;
  if (!labels) return nothing;
  return html`<section class="panel panel-ask" role="alert">
    <h2>${say('scan-which', { count: labels.length })}</h2>
    <p>${say('scan-which-ask')}</p>
    <ul class="which">
      ${labels.map(
        (/** @type {{text: string, shown: string}} */ { text, shown }) => html`<li>
          <button class="which-button" type="button" @click=${() => work.comingIn.take([text])}>${code(shown, { size: 'large' })}</button>
        </li>`,
      )}
    </ul>
  </section>`;
}

/** A symbol that was not seen together with the label at hand. @param {Work} work */
export function whose(work) {
  const { current } = work.hand;
  if (!current || work.ctx.form.whose?.unit !== current.answer.unit) return nothing;
  return html`<section class="panel panel-ask" role="alert">
    <p class="panel-kicker">${icon('ask')}<span>${say('counter-whose')}</span></p>
    <p>${sentence(say('counter-whose-why', { code: current.answer.shown }))}</p>
    <div class="answers">
      <button class="answer" type="button" @click=${work.comingIn.itsOwn}><span>${sentence(say('counter-whose-this', { code: current.answer.shown }))}</span></button>
      <button class="answer" type="button" @click=${work.comingIn.anothers}><span>${say('counter-whose-other')}</span></button>
    </div>
  </section>`;
}

/** What was decided last, where it can go from there, and the way back. @param {Work} work */
export function decided(work) {
  const { form, data } = work.ctx;
  const { done } = form;
  if (!done) return nothing;
  const last = data.today.lines.find((/** @type {DecidedLine} */ line) => line.unit === done.unit);
  return html`<section class="card decided" role="status">
    <p class="decided-word">${mark(DECISION_MARKS[done.decision], { word: done.word, size: 'large' })} ${code(done.shown)}</p>
    ${done.handed ? html`<p>${icon('tick')} ${done.handed}</p>` : nothing}
    <div class="ways-row">
      ${(done.after ?? []).map(
        (/** @type {Action} */ handover) =>
          html`<button class="small-button" type="button" @click=${() => work.deciding.handOn(handover)}>${handover.words}</button>`,
      )}
    </div>
    ${done.slip ? html`<p class="soft">${say('counter-slip-state', { state: done.slip })}</p>` : nothing}
    <div class="ways-row">
      ${done.slip === 'failed'
        ? html`<button class="link-button" type="button" @click=${() => onPrinter(work.ctx, done.unit)}>${say('counter-slip-again')}</button>`
        : nothing}
      <a class="link-button" href=${linkTo(to.unitSheet(done.unit, 'slip'))}>${say('counter-slip-paper')}</a>
    </div>
    ${last && !done.handed
      ? html`<button class="link-button" type="button" @click=${() => work.deciding.takeBack(last)}>${icon('undo')} ${say('counter-take-back')}</button>`
      : nothing}
  </section>`;
}
