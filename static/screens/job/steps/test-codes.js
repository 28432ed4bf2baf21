// @ts-check
/**
 * Trouble codes as the screen shows them, one per faulted position and one of no position, explained while they
 * are typed. What a maker's code means is what people here say of it, now or on an earlier job.
 * Read when somebody opens it: test-entry.js.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../../words/words.js';
import { ask } from '../../frame/ask.js';
import { sentence } from '../../frame/sentence.js';

/** @typedef {import('../../../core/views.js').TestStep} TestStep */
/** @typedef {import('../../../core/views.js').CodeTyped} CodeTyped */
/** @typedef {import('./step-context.js').StepContext<TestStep>} StepContext */
/** @typedef {{code: string, failure_type: string, means: string}} Entered */

/**
 * @param {StepContext} ctx   its form keeps `codes`: position ("" for none) -> Entered, and `openList`
 * @param {Array<{id: string, name: string}>} faulted
 */
export function codeFields(ctx, faulted) {
  const { form, redraw } = ctx;
  const types = Object.values(form.codes).some((/** @type {Entered} */ each) => each.failure_type || typed(ctx, each)?.failure_type);
  return html`${faulted.map(({ id, name }) => codeField(ctx, id, say('steps-codes-at', { position: name })))}
  ${codeField(ctx, '', say('steps-codes-elsewhere'))}
  ${types
    ? html`<label class="check">
          <input
            type="checkbox"
            .checked=${Boolean(form.openList)}
            @change=${() => {
              form.openList = !form.openList;
              redraw();
            }}
          />
          <span>${say('steps-codes-open-list')}</span>
        </label>
        <p class="field-note">${say('steps-codes-open-list-note')}</p>`
    : nothing}`;
}

/**
 * @param {StepContext} ctx
 * @param {string} id
 * @param {string} legend
 */
function codeField(ctx, id, legend) {
  /** @type {Entered} */
  const entered = ctx.form.codes[id] ?? { code: '', failure_type: '', means: '' };
  const answer = entered.code || entered.failure_type ? typed(ctx, entered) : null;
  const put = (/** @type {Partial<Entered>} */ changed) => {
    ctx.form.codes[id] = { ...entered, ...changed };
    ctx.redraw();
  };
  const field = (/** @type {keyof Entered} */ name, /** @type {string} */ words, /** @type {number} */ most) =>
    html`<label class=${name === 'means' ? 'field code-means' : 'field'}>
      <span class="field-note">${words}</span>
      <input
        class=${name === 'means' ? nothing : 'field-code'}
        type="text"
        maxlength=${most}
        autocapitalize=${name === 'means' ? 'sentences' : 'characters'}
        autocomplete="off"
        spellcheck="false"
        .value=${entered[name]}
        @input=${(/** @type {{target: HTMLInputElement}} */ { target }) => put({ [name]: target.value })}
      />
    </label>`;
  return html`<fieldset class="code-entry">
    <legend class="field-name">${legend}</legend>
    ${field('code', say('steps-codes-code'), 12)} ${field('failure_type', say('steps-codes-failure'), 2)}
    <p class=${answer && !answer.ok ? 'field-fault' : 'field-note'} role="status">${sentence(answer?.sentence ?? '')}</p>
    ${entered.code
      ? html`${(answer?.before ?? [])
          .filter(({ means }) => means !== entered.means)
          .map(
            ({ means, words }) => html`<p class="field-note">
              ${sentence(words)}
              <button class="small-button" type="button" @click=${() => put({ means })}>${say('steps-codes-use')}</button>
            </p>`,
          )}
        ${field('means', say('steps-codes-means'), 80)}`
      : nothing}
  </fieldset>`;
}

/**
 * What the core says of a code; null until it has answered.
 * @param {StepContext} ctx
 * @param {Entered} entered
 * @returns {CodeTyped | null}
 */
function typed(ctx, { code, failure_type }) {
  return ask(ctx, 'code_typed', { job: ctx.job, code, failure_type, open_list: Boolean(ctx.form.openList) })?.value ?? null;
}

/**
 * What is recorded of the codes that were entered, in the form in which the core reads them.
 * @param {StepContext} ctx
 * @param {string[]} faulted
 * @returns {{codes: Array<{position: string, code: string, failure_type: string}>, open_list?: boolean, means?: Array<{code: string, means: string}>}}
 */
export function codesOf(ctx, faulted) {
  const codes = [];
  /** @type {Map<string, string>} */
  const means = new Map();
  for (const position of [...faulted, '']) {
    /** @type {Entered | undefined} */
    const entered = ctx.form.codes[position];
    if (!entered?.code.trim() && !entered?.failure_type.trim()) continue;
    const read = typed(ctx, entered) ?? entered;
    const code = read.code.trim();
    codes.push({ position, code, failure_type: read.failure_type.trim() });
    if (code && entered.means.trim() && !means.has(code)) means.set(code, entered.means.trim());
  }
  if (!codes.length) return { codes };
  const said = [...means].map(([code, meant]) => ({ code, means: meant }));
  return { codes, open_list: Boolean(ctx.form.openList), ...(said.length ? { means: said } : {}) };
}
