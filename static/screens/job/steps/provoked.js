// @ts-check
/** What came before a test of a fault that comes and goes: what may have brought it out, or nothing. */

import { html, nothing } from 'lit-html';

import { say } from '../../../words/words.js';
import { sentenceCase } from '../../frame/sentence-case.js';

/** @typedef {import('./step-context.js').StepContext<import('../../../core/views.js').TestStep>} TestContext */
/** @typedef {import('../../../core/views.js').Draft} Draft */

/** @param {TestContext} ctx */
export function provokedField(ctx) {
  const { form, redraw } = ctx;
  const { provoking } = ctx.step.expects;
  if (!provoking) return nothing;
  const now = chosen(ctx);
  const choose = (/** @type {{target: HTMLSelectElement}} */ { target }) => {
    form.provoked = target.value;
    redraw();
  };
  const option = (/** @type {string} */ id, /** @type {string} */ words) =>
    html`<option value=${id} .selected=${id === now}>${sentenceCase(words)}</option>`;
  return html`<label class="field">
    <span class="field-name">${say('steps-test-provoked')}</span>
    <select data-provoked @change=${choose}>
      ${provoking.of.map(({ id, words }) => option(id, words))} ${option('', say('steps-test-provoked-else'))}
    </select>
  </label>`;
}

/**
 * A test with what came before it.
 * @param {TestContext} ctx
 * @param {Draft} test
 * @returns {Draft}
 */
export function afterProvoking(ctx, test) {
  const provoked = chosen(ctx);
  return provoked ? { ...test, data: { ...test.data, provoked } } : test;
}

/** @param {TestContext} ctx @returns {string} */
function chosen({ form, step }) {
  return form.provoked ?? step.expects.provoking?.chosen ?? '';
}
