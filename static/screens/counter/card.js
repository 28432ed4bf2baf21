// @ts-check
/**
 * The proposal for one unit: what to do, in a word and a shape, what stands against it, and every check.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../shapes/code.js';
import { mark, markShape } from '../../shapes/marks.js';
import { typedField } from '../frame/field.js';
import { part, rows } from '../frame/part.js';
import { picture } from '../frame/picture.js';
import { sentence } from '../frame/sentence.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').CounterCard} CounterCard */

/** A decision has the shape of what it says of the part. */
export const DECISION_MARKS = /** @type {Record<string, string>} */ ({
  accept: 'clean',
  hold: 'aside',
  refuse: 'fault',
});
const CHECK_MARKS = /** @type {Record<string, string>} */ ({
  pass: 'clean',
  hold: 'aside',
  fail: 'fault',
  note: 'untested',
});

/**
 * @param {import('./work.js').Work} work
 * @param {CounterCard} answer
 */
export function proposalCard(work, answer) {
  const open = answer.checks.filter((each) => each.state !== 'pass');
  // What the headline says comes first, for it has no title of its own there: below another it reads as that one's.
  const isHeadline = (/** @type {{title: string}} */ { title }) => title === answer.headline;
  const against = [...open.filter(isHeadline), ...open.filter((each) => !isHeadline(each))];
  return html`<section class="proposal" data-proposed=${answer.proposed} role="status">
    <header class="proposal-head">
      <svg class="proposal-mark" viewBox="-17 -17 34 34" aria-hidden="true">
        ${markShape(DECISION_MARKS[answer.proposed], { x: 0, y: 0 })}
      </svg>
      <h1><span class="proposal-word">${answer.word}</span> <span class="proposal-why">${answer.headline}</span></h1>
    </header>
    <p class="proposal-unit">
      ${code(answer.shown, { size: 'large' })}
      <span>${part(() => partAndPlace(answer))}</span>
    </p>
    ${against.length
      ? html`<ul class="check-list">
          ${rows(against, (each) => check(each, answer.headline))}
        </ul>`
      : nothing}
    ${part(() => comparing(work, answer))}
    ${against.length < answer.checks.length
      ? html`<details class="more">
          <summary>${say('counter-all-checks', { count: answer.checks.length })}</summary>
          <ul class="check-list">
            ${rows(answer.checks, (each) => check(each))}
          </ul>
        </details>`
      : nothing}
  </section>`;
}

/** @param {CounterCard} answer */
function partAndPlace({ part, from: where }) {
  if (!part) return where;
  return where ? say('counter-part-from', { part, where }) : say('counter-part', { part });
}

/**
 * @param {{state: string, title: string, sentence: string}} each
 * @param {string} [headline]  the title that stands over it all already
 */
function check({ state, title, sentence: words }, headline = '') {
  return html`<li class="check-line" data-state=${state}>
    ${title === headline ? nothing : mark(CHECK_MARKS[state], { word: title })}
    <span class="check-sentence">${sentence(words)}</span>
  </li>`;
}

/**
 * Pictures to compare with, as long as nothing says that it is the part claimed; after that, the way back to them.
 * @param {import('./work.js').Work} work
 * @param {CounterCard} answer
 */
function comparing(work, answer) {
  const claimed = answer.checks.find((each) => each.rule === 'part');
  if (work.hand.current?.read.compared) {
    // A slip of the finger is no look.
    return html`<button class="link-button" type="button" @click=${() => work.comingIn.compare('')}>${say('counter-compare-again')}</button>`;
  }
  if (claimed?.state !== 'hold' || !answer.pictured) return nothing;
  const { services } = work.ctx;
  const itself = answer.photos.filter(({ alone }) => alone).slice(-1);
  const others = answer.photos.filter((each) => !itself.includes(each));
  const pictures = others.length
    ? html`<ul class="compare-pictures">
        ${others.map(
          ({ sha256, words }) => html`<li>${picture(services, sha256, { alt: '' })}<span class="list-note">${words}</span></li>`,
        )}
      </ul>`
    : nothing;
  // One of the part itself is what decides: the answers come right after it.
  return html`<section class="compare">
    ${itself.map(
      ({ sha256, words }) => html`<figure class="compare-itself">
        ${picture(services, sha256, { alt: '', large: true })}
        <figcaption class="list-note">${words}</figcaption>
      </figure>`,
    )}
    ${itself.length ? nothing : pictures}
    ${answer.photos.length ? nothing : html`<p>${say('counter-pictures-in-record')}</p>`}
    <div class="answers">
      <button class="answer" type="button" @click=${() => work.comingIn.compare('same')}><span>${say('counter-same-part')}</span></button>
      <button class="answer" type="button" @click=${() => work.comingIn.compare('other')}><span>${say('counter-other-part')}</span></button>
    </div>
    ${itself.length ? pictures : nothing}
  </section>`;
}

/**
 * The other decisions, and the reason that goes with one.
 * @param {import('./work.js').Work} work
 * @param {CounterCard} answer
 * @param {import('./entered.js').Otherwise} chosen
 */
export function otherwiseCard(work, answer, chosen) {
  const set = work.hand.enterOtherwise;
  return html`<section class="card screen-stack">
    <h1>${sentence(say('counter-otherwise-on', { code: answer.shown }))}</h1>
    <p class="lead">${say('counter-proposed', { decision: answer.word, why: answer.headline })}</p>
    <div class="choices" role="radiogroup" aria-label=${say('counter-your-decision')}>
      ${answer.decisions
        .filter((each) => each.overrules)
        .map(
          (each) => html`<label class="choice">
            <input
              type="radio"
              name="decision"
              .checked=${chosen.decision === each.decision}
              @change=${() => set({ decision: each.decision, asked: false })}
            />
            <span class="choice-word">${mark(DECISION_MARKS[each.decision], { word: each.word })}</span>
          </label>`,
        )}
    </div>
    <fieldset class="asked">
      <legend class="asked-words">${say('counter-your-reason')}</legend>
      <div class="choices">
        ${answer.reasons.map(
          (/** @type {string} */ words) => html`<label class="choice">
            <input
              type="radio"
              name="reason"
              .checked=${chosen.reason === words}
              @change=${() => set({ reason: words, asked: false })}
            />
            <span class="choice-word">${words}</span>
          </label>`,
        )}
      </div>
    </fieldset>
    ${typedField(say('counter-own-words'), answer.reasons.includes(chosen.reason) ? '' : chosen.reason, (reason) => set({ reason, asked: false }))}
    ${chosen.asked
      ? html`<p class="field-fault" role="alert">${say('counter-reason-wanted')}</p>`
      : nothing}
  </section>`;
}
