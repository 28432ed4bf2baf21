// @ts-check
/**
 * Sensors that are held for one reason, decided together: those of which the same is proposed now are alike.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../shapes/code.js';
import { mark } from '../../shapes/marks.js';
import { textField } from '../frame/field.js';
import { DECISION_MARKS } from './card.js';
import { say } from '../../words/words.js';

/** @typedef {import('./asking.js').Current} Current */

/** @param {import('./work.js').Work} work */
export function severalParts(work) {
  const { ctx } = work;
  const { several } = ctx.form;
  const leave = () => {
    ctx.form.several = null;
    ctx.redraw();
  };
  return {
    key: 'several',
    body: html`<section class="card screen-stack">
      <h1>${say('counter-several', { why: several.why })}</h1>
      ${textField(ctx, 'together', say('counter-together-reason'), { most: 500, fault: several.asked ? say('counter-reason-wanted') : '' })}
      ${Object.keys(DECISION_MARKS).map((proposed) => alike(work, several.cards.filter((/** @type {Current} */ { answer }) => answer.proposed === proposed)))}
    </section>`,
    main: null,
    second: { words: say('frame-back'), run: leave },
  };
}

/**
 * @param {import('./work.js').Work} work
 * @param {Current[]} cards  of which the same is proposed
 */
function alike(work, cards) {
  if (!cards.length) return nothing;
  const { ctx } = work;
  const [{ answer }] = cards;
  const decide = (/** @type {import('../../core/views.js').CounterCard['decisions'][0]} */ { decision, overrules }) => {
    const why = (ctx.form.together ?? '').trim();
    if (!overrules || why) return work.deciding.decideSeveral(cards, decision, overrules ? why : '');
    ctx.form.several = { ...ctx.form.several, asked: true };
    return ctx.redraw();
  };
  return html`<p class="decision-title">${mark(DECISION_MARKS[answer.proposed], { word: answer.word })} <span>${answer.headline}</span></p>
    <p class="ways-row">${cards.map((each) => code(each.answer.shown))}</p>
    <div class="ways-row">
      ${answer.decisions
        .filter(({ decision }) => decision !== 'hold')
        .map(
          (each) =>
            html`<button class="small-button" type="button" @click=${() => decide(each)}>
              ${say('counter-decide-several', { decision: each.word, count: cards.length })}
            </button>`,
        )}
    </div>`;
}
