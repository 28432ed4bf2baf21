// @ts-check
/** What the situation suggests that a test showed: one tap records it, with what came before the test. */

import { html } from 'lit-html';

import { markShape } from '../../../shapes/marks.js';
import { say } from '../../../words/words.js';
import { afterProvoking, provokedField } from './provoked.js';

/** @typedef {import('../../../core/views.js').TestStep} TestStep */

/**
 * @param {import('./step-context.js').StepContext<TestStep>} ctx
 * @returns {import('../job.js').StepParts}
 */
export function answers(ctx) {
  const { step, form, act, busy, redraw } = ctx;
  const other = () => {
    form.whole = true;
    redraw();
  };
  return {
    body: html`${provokedField(ctx)}
      <h2 class="asked-words">${step.expects.asks.asked}</h2>
      <div class="answers">
        ${step.choices.map(
          ({ id, words, mark, events }) => html`<button class="answer answer-marked" type="button" data-answer=${id} ?disabled=${busy} @click=${() => act(events.map((test) => afterProvoking(ctx, test)))}>
            <svg class="walk-mark" viewBox="-17 -17 34 34" aria-hidden="true">${markShape(mark, { x: 0, y: 0 })}</svg>
            <span>${words}</span>
          </button>`,
        )}
        <button class="answer" type="button" data-answer="other" @click=${other}>${say('steps-test-other')}</button>
      </div>`,
    main: null,
    second: step.second?.events.length ? undefined : null,
  };
}
