// @ts-check
/**
 * One decision, or one unit with its last decision, as a row of a list.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../shapes/code.js';
import { mark } from '../../shapes/marks.js';
import { linkTo, to } from '../frame/router.js';
import { DECISION_MARKS } from './card.js';
import { say } from '../../words/words.js';

/**
 * @param {any} line      of the day list or of a search
 * @param {any} decided   the decision it tells of, null where there is none
 * @param {string} when
 */
export function decisionLine(line, decided, when) {
  const why = decided?.overrule || decided?.about.join(', ');
  return html`<li>
    <a class="list-row" href=${linkTo(to.unit(line.unit))}>
      <span class="list-main">
        <span class="list-title decision-title"
          >${line.code ? code(line.shown) : line.shown}
          ${decided ? mark(DECISION_MARKS[decided.decision], { word: decided.past }) : nothing}</span
        >
        <span class="list-note">${[line.vehicle, line.part].filter(Boolean).join(' · ') || say('counter-no-record')}</span>
        ${why ? html`<span class="list-note">${why}</span>` : nothing}
        ${decided ? html`<span class="list-note">${say('counter-signed-by', { moment: when, name: decided.signed })}</span>` : nothing}
        ${line.found_by?.map((/** @type {string} */ words) => html`<span class="list-note">${words}</span>`)}
        ${line.twice
          ? html`<span class="list-note">${mark('fault', { word: say('counter-twice') })}</span>`
          : nothing}
      </span>
    </a>
  </li>`;
}
