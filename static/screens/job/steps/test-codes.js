// @ts-check
/**
 * Trouble codes as the screen shows them, one per faulted position, explained while they are typed.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../../words/words.js';
import { ask } from '../../frame/ask.js';

/** @typedef {import('../../../core/views.js').TestStep} TestStep */

/**
 * @param {import('./step-context.js').StepContext<TestStep>} ctx   its form keeps `codes`: position -> {code, failure_type}
 * @param {Array<{id: string, name: string}>} faulted
 */
export function codeFields(ctx, faulted) {
  if (!faulted.length) return nothing;
  const { form } = ctx;
  const begun = faulted.some(({ id }) => form.codes[id]?.code || form.codes[id]?.failure_type);
  return html`<details class="more" ?open=${begun}>
    <summary>${say('steps-codes-enter')}</summary>
    <div class="screen-stack">${faulted.map((position) => codeField(ctx, position))}</div>
  </details>`;
}

/**
 * @param {import('./step-context.js').StepContext<TestStep>} ctx
 * @param {{id: string, name: string}} position
 */
function codeField(ctx, { id, name }) {
  const entered = ctx.form.codes[id] ?? { code: '', failure_type: '' };
  const answer = entered.code || entered.failure_type ? ask(ctx, 'trouble_code', entered) : null;
  const set = (/** @type {string} */ field) => (/** @type {{target: HTMLInputElement}} */ { target }) => {
    ctx.form.codes[id] = { ...entered, [field]: target.value };
    ctx.redraw();
  };
  return html`<fieldset class="code-entry">
    <legend class="field-name">${say('steps-codes-at', { position: name })}</legend>
    <label class="field">
      <span class="field-note">${say('steps-codes-code')}</span>
      <input
        class="field-code"
        type="text"
        maxlength="12"
        autocapitalize="characters"
        autocomplete="off"
        spellcheck="false"
        .value=${entered.code}
        @input=${set('code')}
      />
    </label>
    <label class="field">
      <span class="field-note">${say('steps-codes-failure')}</span>
      <input
        class="field-code"
        type="text"
        maxlength="2"
        autocapitalize="characters"
        autocomplete="off"
        spellcheck="false"
        .value=${entered.failure_type}
        @input=${set('failure_type')}
      />
    </label>
    <p class=${answer && !answer.value?.ok ? 'field-fault' : 'field-note'} role="status">
      ${answer?.value?.sentence ?? ''}
    </p>
  </fieldset>`;
}

/**
 * The codes that were entered, in the form in which the core reads them.
 * @param {import('./step-context.js').StepContext<TestStep>} ctx
 * @param {string[]} faulted
 */
export function codesOf(ctx, faulted) {
  const { codes } = ctx.form;
  return faulted
    .filter((position) => codes[position]?.code.trim() || codes[position]?.failure_type.trim())
    .map((position) => {
      const { code, failure_type: type } = ask(ctx, 'trouble_code', codes[position])?.value ?? codes[position];
      return { position, code: code.trim(), failure_type: type.trim() };
    });
}
