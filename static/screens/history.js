// @ts-check
/**
 * Everything on record of a job, newest first; each entry can be taken back with a reason, which is
 * itself an entry.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../shapes/icons.js';
import { textField } from './field.js';
import { loadJob } from './job-data.js';
import { to } from './router.js';
import { sentence } from './sentence.js';
import { dayAndTime } from './when.js';

export const historyPage = {
  load: loadJob,

  /** @param {Record<string, string>} params */
  formKey: ({ job }) => `history/${job}`,

  /** @param {import('./app.js').Context} ctx */
  draw(ctx) {
    const view = ctx.data;
    return {
      title: `History · ${view.title}`,
      back: to.job(view.id),
      body: html`<ol class="history">
        ${view.history.map((/** @type {any} */ entry) => row(ctx, entry))}
      </ol>`,
      main: { words: view.closed ? 'Back to the job' : 'Go on with the job', run: () => ctx.go(to.job(view.id)) },
    };
  },
};

/**
 * @param {import('./app.js').Context} ctx
 * @param {any} entry
 */
function row(ctx, entry) {
  const { form } = ctx;
  const name = `${entry.device}/${entry.seq}`;
  const asked = form.taking === name;
  return html`<li class="history-row ${entry.undone ? 'undone' : ''}">
    <span class="history-when">${dayAndTime(entry.at)} · ${entry.actor || 'no name'}</span>
    <p class="history-what">${sentence(entry.sentence)}</p>
    ${entry.undone ? undone(entry.undone) : nothing}
    ${entry.may_undo && !asked
      ? html`<button
          class="link-button"
          type="button"
          @click=${() => {
            form.taking = name;
            form.reason = '';
            ctx.redraw();
          }}
        >
          ${icon('undo')} Take it back<span class="aloud">: ${entry.sentence}</span>
        </button>`
      : nothing}
    ${asked ? takeBack(ctx, entry) : nothing}
  </li>`;
}

/** @param {{actor: string, reason: string}} correction */
function undone({ actor, reason }) {
  return html`<p class="history-undone">Taken back${actor ? ` by ${actor}` : ''}: ${reason}</p>`;
}

/**
 * @param {import('./app.js').Context} ctx
 * @param {any} entry
 */
function takeBack(ctx, { device, seq }) {
  const { form } = ctx;
  const reason = (form.reason ?? '').trim();
  return html`<div class="card screen-stack take-back">
    ${textField(ctx, 'reason', 'Why was it wrong?', { note: 'The entry stays, marked with your reason.', most: 500 })}
    <div class="card-actions">
      <button
        class="small-button"
        type="button"
        ?disabled=${!reason || ctx.busy}
        @click=${() => ctx.act([{ kind: 'corrected', data: { device, seq, reason } }], { after: ctx.forget })}
      >
        Take it back
      </button>
      <button class="link-button" type="button" @click=${ctx.forget}>Leave it</button>
    </div>
  </div>`;
}
