// @ts-check
/**
 * What contradicts, side by side: who entered what and when; and the answers that settle it.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../words/words.js';
import { icon } from '../../shapes/icons.js';
import { sentence } from './sentence.js';
import { dayAndTime } from './when.js';

/** @typedef {import('../../core/views.js').Story} Story */
/** @typedef {import('../../core/views.js').SettleChoice} SettleChoice */

/** @param {Story[]} stories @param {string} waits  which tests count only once it is settled */
export function storyCard(stories, waits) {
  return html`<ol class="list stories">
      ${stories.map(
        ({ at, actor, words }) => html`<li class="list-row">
          ${icon('ask')}
          <span class="list-main">
            ${at === null ? nothing : html`<span class="list-note">${actor || say('job-history-no-name')} · ${dayAndTime(at)}</span>`}
            <span class="list-title">${sentence(words)}</span>
          </span>
        </li>`,
      )}
    </ol>
    ${waits ? html`<p>${waits}</p>` : nothing}`;
}

/**
 * @param {SettleChoice[]} choices
 * @param {SettleChoice[]} others  what nobody has said so far
 * @param {{busy: boolean, act: (drafts: any[], options: {job: string | null}) => unknown}} ctx
 */
export function settleAnswers(choices, others, { busy, act }) {
  /** @param {SettleChoice} choice */
  const button = ({ words, events, job }) =>
    html`<button class="answer" type="button" ?disabled=${busy} @click=${() => act(events, { job })}>${words}</button>`;
  return html`<div class="answers">${choices.map(button)}</div>
    ${others.length
      ? html`<details class="more">
          <summary>${say('unit-somewhere-else')}</summary>
          <div class="answers">${others.map(button)}</div>
        </details>`
      : nothing}`;
}
