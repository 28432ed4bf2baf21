// @ts-check
/**
 * Finds units by code, part, serial, vehicle, complaint or name: on the server, or without a network on
 * this phone.
 */

import { html, nothing } from 'lit-html';

import { ApiError } from '../../sync/request.js';
import { icon } from '../../shapes/icons.js';
import { textField } from '../frame/field.js';
import { checkRow } from '../frame/file-link.js';
import { rows } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { dayAndTime } from '../frame/when.js';
import { decisionLine } from './decision-line.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').FoundReturn} FoundReturn */

/** What is typed here is kept under this name; whoever sends here puts it there. */
export const SEARCH_FORM = 'search';

export const searchPage = {
  load: () => null,

  formKey: () => SEARCH_FORM,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { found, where } = ctx.form;
    const onKey = (/** @type {KeyboardEvent} */ event) => event.key === 'Enter' && search(ctx);
    return {
      title: say('counter-search'),
      titled: true,
      back: to.jobs(),
      body: html`
        <div @keydown=${onKey}>
          ${textField(ctx, 'text', say('counter-search-for'), {
            note: say('counter-search-note'),
          })}
        </div>
        ${found
          ? html`<p class="soft" role="status">${say('counter-found', { count: found.length, where })}</p>
              ${found.length ? nothing : waysOn(where)} ${found[0]?.near ? html`<p>${say('job-list-near')}</p>` : nothing}
              <ul class="list">
                ${rows(found, (/** @type {FoundReturn} */ line) => decisionLine(line, line.decided, line.decided ? dayAndTime(line.decided.at) : ''))}
              </ul>`
          : nothing}
      `,
      main: { words: say('counter-search'), disabled: !(ctx.form.text ?? '').trim(), run: () => search(ctx) },
    };
  },
};

/** Where nothing was found: what else may find it, and what to do without it. @param {string} where  it was looked for */
function waysOn(where) {
  return html`<p>${say('counter-found-nothing')}</p>
    ${where === 'phone' ? html`<p>${say('counter-found-nothing-here')}</p>` : nothing}
    <ul class="list">
      <li>
        <a class="list-row" href=${linkTo(to.jobs())}>${icon('camera')}<span class="list-main">${say('counter-found-scan')}</span><span class="list-end">${icon('forward')}</span></a>
      </li>
      ${checkRow()}
    </ul>`;
}

/** @param {import('../frame/context.js').Context} ctx */
async function search(ctx) {
  const { form, services } = ctx;
  const text = (form.text ?? '').trim();
  try {
    form.found = await services.sync.api.get(`/api/search?text=${encodeURIComponent(text)}`);
    form.where = 'server';
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    form.found = await services.core.call('find', { text });
    form.where = 'phone';
  }
  ctx.redraw();
}
