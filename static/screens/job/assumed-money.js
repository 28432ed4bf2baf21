// @ts-check
/** Labour and prices, by which the app says what a move costs; nobody has to give any. */

import { html, nothing } from 'lit-html';

import { say } from '../../words/words.js';
import { textField } from '../frame/field.js';

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Array<{id: string, words: string, value: number}>} fields
 */
export function money(ctx, fields) {
  const { form } = ctx;
  const given = fields.some(({ value }) => value);
  const typed = fields.some(({ id }) => form[id] !== undefined);
  if (ctx.data.told.closed && !given) return nothing;
  return html`<section class="screen-stack">
    <h2>${say('job-money-heading')}</h2>
    <p>${given ? say('job-money-given') : say('job-money-none')}</p>
    ${ctx.data.told.closed
      ? nothing
      : html`<details class="more" ?open=${typed}>
          <summary>${given ? say('job-money-change') : say('job-money-give')}</summary>
          <div class="screen-stack">
            <p>${say('job-money-lead')}</p>
            ${fields.map(({ id, words, value }) =>
              textField(ctx, id, words, {
                most: 12,
                initial: value ? (value / 100).toFixed(2) : '',
                fault: form.moneyAsked === id ? say('job-money-fault') : '',
              }),
            )}
            <button class="small-button" type="button" ?disabled=${ctx.busy || !typed} @click=${() => setMoney(ctx, fields)}>
              ${say('job-money-record')}
            </button>
          </div>
        </details>`}
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Array<{id: string, value: number}>} fields
 */
function setMoney(ctx, fields) {
  /** @type {Record<string, number>} */
  const data = {};
  for (const { id, value } of fields) {
    const typed = (ctx.form[id] ?? (value ? String(value / 100) : '')).replace(',', '.').trim();
    if (typed && !/^\d{1,7}(\.\d{1,2})?$/.test(typed)) {
      ctx.form.moneyAsked = id;
      return ctx.redraw();
    }
    data[id] = Math.round(Number(typed || 0) * 100);
  }
  return ctx.act([{ kind: 'money_set', data }], { after: ctx.forget });
}
