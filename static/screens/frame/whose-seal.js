// @ts-check
/**
 * Whose seal a record from elsewhere bears. Until a person has compared the fingerprint with its owner, every check
 * says so, however often the seal was seen before.
 */

import { html, nothing } from 'lit-html';

import { confirmMaker } from '../../record/foreign-record.js';
import { icon } from '../../shapes/icons.js';
import { ApiError } from '../../sync/request.js';
import { say } from '../../words/words.js';
import { textField } from './field.js';
import { day } from './when.js';

/** How a fingerprint can be confirmed. */
const HOWS = ['called', 'met', 'written'];

/**
 * @param {import('./context.js').Context} ctx
 * @param {import('../../record/foreign-record.js').ForeignRecord} record
 */
export function whoseSeal(ctx, record) {
  const { confirmed, known_since: since } = record.answer.maker;
  if (confirmed) {
    const { name, how, by, at } = confirmed;
    return html`<section class="panel panel-good">
      <p class="panel-kicker">${icon('tick')} ${say('sealed-whose-confirmed', { name })}</p>
      <p>${say('sealed-whose-how', { how, by, at: day(at) })}</p>
    </section>`;
  }
  return html`<section class="panel panel-stop" role="alert">
    <p class="panel-kicker">${icon('stop')} ${say('sealed-whose-unknown')}</p>
    <p>${say('sealed-whose-unknown-do')}</p>
    ${since ? html`<p>${say('sealed-view-known', { since: day(since) })}</p>` : nothing}
    ${form(ctx, record)}
  </section>`;
}

/**
 * @param {import('./context.js').Context} ctx
 * @param {import('../../record/foreign-record.js').ForeignRecord} record
 */
function form(ctx, record) {
  const { whose = {} } = ctx.form;
  const set = (/** @type {object} */ more) => {
    ctx.form.whose = { ...ctx.form.whose, ...more };
    ctx.redraw();
  };
  return html`<details class="more" ?open=${whose.open} @toggle=${(/** @type {any} */ { target }) => target.open !== Boolean(whose.open) && set({ open: target.open })}>
    <summary>${say('sealed-whose-confirm')}</summary>
    <div class="screen-stack">${textField(ctx, 'whoseName', say('sealed-whose-name'), { most: 80 })}
    <fieldset class="asked">
      <legend class="asked-words">${say('sealed-whose-ask')}</legend>
      <div class="choices">
        ${HOWS.map(
          (how) => html`<label class="choice">
            <input type="radio" name="whose-how" .checked=${whose.how === how} @change=${() => set({ how, fault: '' })} />
            <span class="choice-word">${say('sealed-whose-way', { how })}</span>
          </label>`,
        )}
      </div>
    </fieldset>
    ${whose.fault ? html`<p class="field-fault" role="alert">${whose.fault}</p>` : nothing}
    <button class="small-button wide-button" type="button" @click=${() => confirm(ctx, record, set)}>${say('sealed-whose-same')}</button></div>
  </details>`;
}

/**
 * @param {import('./context.js').Context} ctx
 * @param {import('../../record/foreign-record.js').ForeignRecord} record
 * @param {(more: object) => void} set
 */
async function confirm(ctx, record, set) {
  const name = (ctx.form.whoseName ?? '').trim();
  const { how } = ctx.form.whose ?? {};
  if (!name || !how) {
    set({ fault: say('sealed-whose-wanted') });
    return;
  }
  try {
    await confirmMaker(ctx.services, record, { name, how });
    delete ctx.form.whoseName;
    delete ctx.form.whose;
    ctx.redraw();
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    set({ fault: error.sentence });
  }
}
