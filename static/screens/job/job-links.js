// @ts-check
/**
 * The ways from a job to what lies behind its step: the trail, pictures, history, the report, what it rests on.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { fileRow } from '../frame/file-link.js';
import { linkTo, to } from '../frame/router.js';

/** @typedef {import('../../core/views.js').JobView} JobView */

/** @param {JobView} view */
export function jobLinks({ id, sort, vehicle, trail, photos, history, moves, step, out, ways }) {
  return html`<nav class="job-links" aria-label=${say('job-links')}>
    <details class="more">
    <summary>${say('job-links-more')}</summary>
    <ul class="list">
      ${trail.tests.length ? link(to.jobPart(id, 'trail'), 'swap', say('job-link-trail'), say('job-link-trail-note')) : nothing}
      ${step.form === 'moves' && moves.length > 1
        ? link(to.jobPart(id, 'moves'), 'list', say('job-link-moves'), say('job-link-moves-note', { count: moves.length }))
        : nothing}
      ${out.length
        ? link(to.jobPart(id, 'hand'), 'out', say('job-link-hand'), say('job-link-hand-note', { count: out.length, sort }))
        : nothing}
      ${ways ? link(to.jobPart(id, 'ways'), 'more', say('ways-link'), say('ways-link-note')) : nothing}
      ${link(to.jobPart(id, 'photos'), 'camera', say('job-link-photos'), say('job-link-photos-note', { count: photos.length }))}
      ${link(to.jobPart(id, 'history'), 'clock', say('job-link-history'), say('job-link-history-note', { count: history.length }))}
      ${trail.tests.length ? link(to.report(id), 'print', say('job-link-report'), say('job-link-report-note')) : nothing}
      ${link(to.vehicle(vehicle.id), 'list', say('job-link-vehicle'), say('job-link-vehicle-note'))}
      ${link(to.jobPart(id, 'assumptions'), 'ask', say('job-link-assumptions'), say('job-link-assumptions-note'))}
      ${fileRow(to.jobFile(id))}
    </ul>
    </details>
  </nav>`;
}

/**
 * @param {string} hash
 * @param {string} sign
 * @param {string} words
 * @param {string} note
 */
function link(hash, sign, words, note) {
  return html`<li>
    <a class="list-row" href=${linkTo(hash)}>
      ${icon(sign)}
      <span class="list-main"><span class="list-title">${words}</span><span class="list-note">${note}</span></span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}
