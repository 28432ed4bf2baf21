// @ts-check
/**
 * Jobs as rows of a list: the board, how the job stands, what comes next.
 */

import { html, nothing } from 'lit-html';

import { smallBoard } from '../../shapes/board.js';
import { code } from '../../shapes/code.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { badMark } from '../frame/bad-mark.js';
import { rows } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { day } from '../frame/when.js';

/** @typedef {import('../../core/views.js').ListedJob} ListedJob */

/**
 * @param {ListedJob[]} jobs
 * @param {string} me  who reads it
 */
export function jobRows(jobs, me) {
  return html`<ul class="list job-list">
    ${rows(jobs, (job) => jobRow(job, me), ({ id }) => to.job(id))}
  </ul>`;
}

/** @param {ListedJob} job @param {string} me */
function jobRow(job, me) {
  return html`<li>
    <a class="list-row" href=${linkTo(to.job(job.id))}>
      ${job.board ? html`<span class="job-board" aria-hidden="true">${smallBoard(job.board)}</span>` : nothing}
      <span class="list-main">
        <span class="list-title">${job.title}</span>
        ${job.plate ? html`<span class="job-plate">${job.plate}</span>` : nothing}
        ${job.standing_words ? html`<span class="job-standing">${job.standing_words}</span>` : nothing}
        ${job.handed_to ? html`<span class="list-note job-handed">${icon('person')} ${job.handed_to === me ? say('ways-handed-mine') : say('ways-handed-list', { to: job.handed_to })}</span>` : nothing}
        ${job.next_words
          ? html`<span class="list-note job-next">${sentence(job.paused ? job.next_words : say('job-list-next', { step: job.next_words }))}</span>`
          : nothing}
        ${job.complaint ? html`<span class="list-note job-complaint">${job.complaint}</span>` : nothing}
        <span class="list-note">${standing(job)}</span>
        ${job.found_by.map((words) => html`<span class="list-note job-found">${icon('keys')} <span>${sentence(words)}</span></span>`)}
        ${job.out || job.disputed ? html`<span class="list-note job-loose">${loose(job)}</span>` : nothing}
      </span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}

/** @param {import('../../core/views.js').UnitPlaced[]} units */
export function unitRows(units) {
  return html`<ul class="list">
    ${rows(
      units,
      (unit) => html`<li>
        <a class="list-row" href=${linkTo(to.unit(unit.id))}>
          ${code(unit.shown)}
          <span class="list-main"><span class="list-note">${unit.where}</span>${badMark(unit.bad)}</span>
          <span class="list-end">${icon('forward')}</span>
        </a>
      </li>`,
    )}
  </ul>`;
}

/** @param {import('../../core/views.js').VehicleListed[]} vehicles */
export function vehicleRows(vehicles) {
  return html`<ul class="list">
    ${vehicles.map(
      ({ id, name, plate, vin, jobs }) => html`<li>
        <a class="list-row" href=${linkTo(to.vehicle(id))}>
          <span class="list-main">
            <span class="list-title">${name}</span>
            ${plate ? html`<span class="job-plate">${plate}</span>` : nothing} ${vin ? html`<span class="list-note">${vin}</span>` : nothing}
            <span class="list-note">${say('job-list-vehicle', { count: jobs })}</span>
          </span>
          <span class="list-end">${icon('forward')}</span>
        </a>
      </li>`,
    )}
  </ul>`;
}

/** @param {ListedJob} job */
function standing({ opened_at: at, tests, closed }) {
  return say('job-list-standing', { opened: day(at), count: tests, closed: closed ? 'yes' : 'no' });
}

/** @param {ListedJob} job */
function loose({ out, disputed, sort }) {
  const said = [out ? say('job-list-out', { count: out, sort }) : '', disputed ? say('job-list-disputed', { count: disputed }) : ''];
  return html`${icon('out')} ${said.filter(Boolean).join(', ')}`;
}
