// @ts-check
/**
 * What waits at the counter, by the reason for which it is held; several for one reason can be decided together.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../shapes/code.js';
import { icon } from '../../shapes/icons.js';
import { rows } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { ago } from '../frame/when.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').WaitingReturn} WaitingReturn */

/**
 * @param {import('./work.js').Work} work
 * @param {WaitingReturn[]} waiting  the longest waiting first
 */
export function queue(work, waiting) {
  return html`<h1>${say('counter-wait', { count: waiting.length })}</h1>
    ${byReason(waiting).map((group) => reason(work, group))}`;
}

/** @param {WaitingReturn} line */
const reasonOf = ({ held }) => (held ? held.about.join(', ') || held.overrule : '');

/** @param {WaitingReturn[]} waiting */
function byReason(waiting) {
  /** @type {Map<string, WaitingReturn[]>} */
  const groups = new Map();
  for (const line of waiting) groups.set(reasonOf(line), [...(groups.get(reasonOf(line)) ?? []), line]);
  return [...groups];
}

/**
 * @param {import('./work.js').Work} work
 * @param {[string, WaitingReturn[]]} group
 */
function reason(work, [why, lines]) {
  const together = () => work.deciding.several(why, lines.map(({ unit }) => unit));
  return html`<ul class="list">
      ${rows(lines, waitingRow)}
    </ul>
    ${why && lines.length > 1
      ? html`<button class="small-button" type="button" @click=${together}>${say('counter-together', { count: lines.length, why })}</button>`
      : nothing}`;
}

/** @param {WaitingReturn} line */
function waitingRow(line) {
  return html`<li>
    <a class="list-row" href=${linkTo(to.return(line.unit))}>
      ${code(line.shown)}
      <span class="list-main">
        <span class="list-title">${line.vehicle || say('counter-no-record')}</span>
        <span class="list-note">
          ${line.held ? say('counter-held', { ago: ago(line.held.at), why: reasonOf(line) }) : say('counter-received', { ago: ago(line.at) })}
        </span>
      </span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}
