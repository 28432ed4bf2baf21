// @ts-check
/**
 * The frame of every screen: where am I, what is sent, the body, and at the bottom the one thing to do.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { keyed } from './keyed.js';
import { goBack, linkTo, to } from './router.js';
import { sentence } from './sentence.js';
import { say } from '../../words/words.js';

/**
 * @typedef {object} Button
 * @property {unknown} words
 * @property {() => unknown} run
 * @property {boolean} [disabled]
 *
 * @typedef {object} Parts       what a screen returns; the app puts it into the frame
 * @property {unknown} title     one short line in the head
 * @property {boolean} [titled]   the title is the heading of the screen, for the body brings none of the first level
 * @property {string} [back]     where the arrow leads (one of `to`); no arrow when left out
 * @property {Array<{id: string, word: string, state: string}>} [stages]
 * @property {unknown} body      the screen's own template; its children are spaced
 * @property {Button | null} [main]    the one main button
 * @property {Button | null} [second]  at most one other
 * @property {string} [key]      another key scrolls the body back to its beginning
 *
 * @typedef {object} Mark        in the head of every screen: whether what was recorded is safe (standing.js)
 * @property {'sent' | 'waiting' | 'trouble'} state
 * @property {string} words
 */

/**
 * @param {Parts} parts
 * @param {{mark: Mark, busy: boolean, undo: Button | null, others: string}} standing  `undo` takes the last
 *     entry back, `others` says who else is at the job
 */
export function frame({ title, titled = false, back = '', stages = [], body, main = null, second = null, key = '' }, standing) {
  const words = typeof title === 'string' ? sentence(title) : title;
  return html`
    <div class="screen">
      <header class="screen-top">
        <div class="screen-head">
          ${back ? html`<a class="screen-back" href=${linkTo(back)} @click=${(/** @type {Event} */ event) => leave(event, back)} aria-label=${say('frame-back')}>${icon('back')}</a>` : nothing}
          ${titled ? html`<h1 class="screen-title">${words}</h1>` : html`<p class="screen-title">${words}</p>`}
          ${undoButton(standing.undo)} ${pill(standing.mark)}
        </div>
        ${stages.length ? stageStrip(stages) : nothing}
      </header>
      ${keyed(key, html`<main class="screen-body" tabindex="0">${body}</main>`)}
      <footer class="screen-foot">${othersLine(standing.others)}${footButtons(main, second, standing.busy)}</footer>
    </div>
  `;
}

/** Stands for a while after an entry, where it moves nothing and hides nothing. @param {Button | null} undo */
function undoButton(undo) {
  if (!undo) return nothing;
  return html`<button class="screen-undo" type="button" ?disabled=${undo.disabled} @click=${() => undo.run()}>${icon('undo')}<span>${undo.words}</span></button>`;
}

/** Above the buttons, where its coming and going moves nothing that is read or tapped. @param {string} others */
function othersLine(others) {
  return others ? html`<p class="screen-others">${icon('person')}<span>${others}</span></p>` : nothing;
}

/** @param {Event} event @param {string} back */
function leave(event, back) {
  event.preventDefault();
  goBack(back);
}

/** @param {Array<{id: string, word: string, state: string}>} stages */
function stageStrip(stages) {
  return html`<ol class="stages" aria-label=${say('frame-stages')}>
    ${stages.map(
      ({ word, state }) =>
        html`<li class="stage" data-state=${state} aria-current=${state === 'now' ? 'step' : nothing}>
          <span class="stage-word">${word}</span>
        </li>`,
    )}
  </ol>`;
}

/**
 * @param {Button | null} main
 * @param {Button | null} second
 * @param {boolean} busy
 */
function footButtons(main, second, busy) {
  return html`${second
    ? html`<button
        class="other-button"
        type="button"
        ?disabled=${busy || second.disabled}
        @click=${() => second.run()}
      >
        ${inButton(second.words)}
      </button>`
    : nothing}${main
    ? html`<button
        class="main-button"
        type="button"
        ?disabled=${busy || main.disabled}
        @click=${() => main.run()}
      >
        ${inButton(busy ? say('frame-one-moment') : main.words)}
      </button>`
    : nothing}`;
}

/** Words of a button: a code in them is not broken over a line either. @param {unknown} words */
const inButton = (words) => (typeof words === 'string' ? html`<span>${sentence(words)}</span>` : words);

/** @param {Mark} mark */
function pill({ state, words }) {
  return html`<a class="pill" href=${linkTo(to.you())} data-state=${state}
    ><span class="aloud">${say('frame-mark-of')} </span>${words}</a
  >`;
}
