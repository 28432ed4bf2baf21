// @ts-check
/**
 * A field of a form: its name, what is typed, what is meant, what is wrong with it.
 */

import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';

/**
 * @typedef {object} FieldOptions
 * @property {unknown} [note]          what is meant
 * @property {string} [fault]          what is wrong
 * @property {unknown} [answer]        what the core says of what was typed
 * @property {number} [lines]          more than one makes it a box
 * @property {number} [most]           characters
 * @property {boolean} [capitals]      letters and digits as on a label
 * @property {boolean} [digits]        a figure: the phone shows its keys for those
 * @property {boolean} [wide]          set in the wide face of codes, small enough for a long one
 * @property {string} [autocomplete]
 * @property {string} [initial]        shown while nothing was typed
 */

/**
 * A text field bound to `ctx.form[key]`.
 * @param {import('./context.js').Context} ctx
 * @param {string} key
 * @param {string} words
 * @param {FieldOptions} [options]
 */
export function textField(ctx, key, words, options = {}) {
  const { note = '', fault = '', answer = nothing, lines = 1, most = 200, capitals = false, digits = false, wide = false } = options;
  const typed = (/** @type {{target: HTMLInputElement}} */ { target }) => {
    ctx.form[key] = target.value;
    ctx.redraw();
  };
  const id = `field-${key}`;
  const told = [note ? `${id}-note` : '', fault ? `${id}-fault` : ''].filter(Boolean).join(' ');
  return html`<div class="field">
    <label class="field-name" for=${id}>${words}</label>
    ${note ? html`<p class="field-note" id=${`${id}-note`}>${note}</p>` : nothing}
    ${lines > 1
      ? html`<textarea
          id=${id}
          rows=${lines}
          maxlength=${most}
          autocomplete="off"
          aria-invalid=${fault ? 'true' : 'false'}
          aria-describedby=${told || nothing}
          .value=${live(ctx.form[key] ?? options.initial ?? '')}
          @input=${typed}
        ></textarea>`
      : html`<input
          id=${id}
          class=${wide ? 'field-wide' : ''}
          type="text"
          inputmode=${digits ? 'decimal' : nothing}
          maxlength=${most}
          autocomplete=${options.autocomplete ?? 'off'}
          autocapitalize=${capitals ? 'characters' : 'sentences'}
          spellcheck=${capitals ? 'false' : nothing}
          aria-invalid=${fault ? 'true' : 'false'}
          aria-describedby=${told || nothing}
          .value=${live(ctx.form[key] ?? options.initial ?? '')}
          @input=${typed}
        />`}
    ${fault ? html`<p class="field-fault" id=${`${id}-fault`}>${fault}</p>` : nothing}${answer}
  </div>`;
}

/**
 * A plain text field for what lies elsewhere than in `ctx.form`.
 * @param {string} words
 * @param {string} value
 * @param {(value: string) => unknown} set
 * @param {Pick<FieldOptions, 'note' | 'most' | 'lines'>} [options]
 */
export function typedField(words, value, set, { note = '', most = 500, lines = 1 } = {}) {
  const typed = (/** @type {{target: HTMLInputElement}} */ { target }) => set(target.value);
  return html`<label class="field">
    <span class="field-name">${words}</span>
    ${note ? html`<span class="field-note">${note}</span>` : nothing}
    ${lines > 1
      ? html`<textarea rows=${lines} maxlength=${most} .value=${live(value)} @input=${typed}></textarea>`
      : html`<input type="text" maxlength=${most} autocomplete="off" .value=${live(value)} @input=${typed} />`}
  </label>`;
}
