// @ts-check
/**
 * Everything on record of a job, newest first; each entry can be taken back with a reason, which is
 * itself an entry.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { clockNotice } from '../phone/clock-notice.js';
import { textField } from '../frame/field.js';
import { jobQuestion, loadJob } from './job-data.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { day, time } from '../frame/when.js';

/** @typedef {import('../../core/views.js').HistoryEntry} HistoryEntry */

export const historyPage = {
  load: loadJob,
  asks: jobQuestion,

  /** @param {Record<string, string>} params */
  formKey: ({ job }) => `history/${job}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const view = ctx.data;
    return {
      title: `History · ${view.title}`,
      titled: true,
      back: to.job(view.id),
      body: html`
        <p class="lead">Nothing is ever deleted. Tap an entry that was a mistake to take it back.</p>
        ${view.out.length > 1
          ? html`<a class="link-button" href=${linkTo(to.jobPart(view.id, 'hand'))}>Sensors in hand got mixed up</a>`
          : nothing}
        ${clockNotice(ctx)} ${byDay(view.history).map(
          ({ words, entries }) => html`<section>
            <h2>${words}</h2>
            <ol class="list">
              ${entries.map((entry) => row(ctx, entry))}
            </ol>
          </section>`,
        )}
      `,
      main: { words: view.closed ? 'Back to the job' : 'Go on with the job', run: () => ctx.go(to.job(view.id)) },
    };
  },
};

/**
 * @param {HistoryEntry[]} history
 * @returns {Array<{words: string, entries: HistoryEntry[]}>}
 */
function byDay(history) {
  /** @type {Array<{words: string, entries: HistoryEntry[]}>} */
  const days = [];
  for (const entry of history) {
    const words = day(entry.at);
    if (days[days.length - 1]?.words !== words) days.push({ words, entries: [] });
    days[days.length - 1].entries.push(entry);
  }
  return days;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {HistoryEntry} entry
 */
function row(ctx, entry) {
  const told = html`<span class="list-main">
    <span class="list-note">${time(entry.at)} · ${entry.actor || 'no name'}</span>
    <span class=${entry.undone ? 'history-text history-struck' : 'history-text'}>${sentence(entry.sentence)}</span>
    ${entry.undone ? undone(entry.undone) : nothing}
  </span>`;
  if (!entry.may_undo) return html`<li class="list-row">${told}</li>`;
  const { form } = ctx;
  const name = `${entry.device}/${entry.seq}`;
  const isOpen = form.taking === name;
  return html`<li>
    <button
      class="list-row"
      type="button"
      aria-expanded=${isOpen}
      @click=${() => {
        form.taking = isOpen ? '' : name;
        form.reason = '';
        ctx.redraw();
      }}
    >
      ${told}<span class="list-end">${icon(isOpen ? 'cross' : 'undo')}</span>
    </button>
    ${isOpen ? takeBack(ctx, entry) : nothing}
  </li>`;
}

/** @param {{actor: string, reason: string}} correction */
function undone({ actor, reason }) {
  return html`<span class="history-undone">Taken back${actor ? ` by ${actor}` : ''}: ${reason}</span>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {HistoryEntry} entry
 */
function takeBack(ctx, { device, seq }) {
  const reason = (ctx.form.reason ?? '').trim();
  return html`<div class="card screen-stack take-back">
    ${textField(ctx, 'reason', 'Why was it wrong?', { note: 'The entry stays, struck through, with your reason.', most: 500 })}
    <div class="card-actions">
      <button
        class="small-button"
        type="button"
        ?disabled=${!reason || ctx.busy}
        @click=${() => ctx.act([{ kind: 'corrected', data: { device, seq, reason } }], { after: ctx.forget })}
      >
        ${icon('undo')} Take it back
      </button>
      <button class="link-button" type="button" @click=${ctx.forget}>Leave it</button>
    </div>
  </div>`;
}
