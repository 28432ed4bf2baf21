// @ts-check
/**
 * Everything on record of a job, newest first, or only what shows at the place that one comes from; each entry can
 * be put right in its place, or taken back with a reason. Either is itself an entry.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { clockNotice } from '../phone/clock-notice.js';
import { textField } from '../frame/field.js';
import { jobQuestion, loadJob } from './job-data.js';
import { picture } from '../frame/picture.js';
import { closeForm, fill, openForm, rightForm, would } from './put-right.js';
import { rows } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { day, time } from '../frame/when.js';

/** @typedef {import('../../core/views.js').HistoryEntry} HistoryEntry */

export const historyPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  async load(services, params) {
    const view = await loadJob(services, params);
    const { job, about } = params;
    const entries = about ? view.history.filter((entry) => entry.about.includes(about)) : view.history;
    const [{ device = '', seq = 0, may_right: may = false } = {}, other] = about ? entries : [];
    const asked = may && !other ? await services.core.call('entry', { job, device, seq }) : null;
    return { ...view, history: entries, asked: asked && { name: `${device}/${seq}`, entry: asked } };
  },
  asks: jobQuestion,

  /** @param {Record<string, string>} params */
  formKey: ({ job, about = '' }) => `history/${job}/${about}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const view = ctx.data;
    const { about } = ctx.params;
    // The one entry that it can be is open at once.
    if (view.asked && ctx.form.righting === undefined) fill(ctx.form, view.asked.name, view.asked.entry);
    return {
      title: say('job-history-title', { job: view.title }),
      titled: true,
      back: about ? whence(view.id, about) : to.job(view.id),
      body: html`
        <p class="lead">${say('job-history-lead')}</p>
        ${view.out.length > 1
          ? html`<a class="link-button" href=${linkTo(to.jobPart(view.id, 'hand'))}>${say('job-history-mixed')}</a>`
          : nothing}
        ${ctx.form.told ? would(ctx.form.told) : nothing} ${clockNotice(ctx)} ${entriesByDay(ctx, view.history)}
        ${about?.startsWith('unit:')
          ? html`<a class="link-button" href=${linkTo(to.unitEntries(about.slice(5)))}>${say('unit-entries-link')}</a>`
          : nothing}
        ${about ? html`<a class="link-button" href=${linkTo(to.jobPart(view.id, 'history'))}>${say('job-link-history')}</a>` : nothing}
      `,
      main: { words: view.closed ? say('job-back') : say('job-go-on'), run: () => ctx.go(to.job(view.id)) },
    };
  },
};

/**
 * Entries under the day that they are of, each with its forms.
 * @param {import('../frame/context.js').Context} ctx
 * @param {HistoryEntry[]} history
 */
export function entriesByDay(ctx, history) {
  return byDay(history).map(
    ({ words, entries }) => html`<section>
      <h2>${words}</h2>
      <ol class="list">
        ${rows(entries, (entry) => row(ctx, entry))}
      </ol>
    </section>`,
  );
}

/** Where it shows. @param {string} job @param {string} about */
function whence(job, about) {
  const [what, id] = about.split(/:(.*)/s);
  if (what === 'photo') return to.photo(job, id);
  if (what === 'position') return to.position(job, id);
  if (what === 'vehicle') return to.vehicle(id);
  return what === 'unit' ? to.unit(id) : to.jobPart(job, 'trail');
}

/**
 * What tells an entry from others in the same words: which test it was, or its picture.
 * @param {import('../frame/context.js').Context} ctx
 * @param {HistoryEntry} entry
 */
function which({ services }, { about, sentence: words }) {
  const [what, id] = (about[0] ?? '').split(':');
  return {
    number: what === 'test' ? ` · ${say('shapes-test', { number: Number(id) })}` : '',
    image: what === 'photo' ? html`<span class="history-picture">${picture(services, id, { alt: words, small: true })}</span>` : nothing,
  };
}

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
  const { number, image } = which(ctx, entry);
  const told = html`${image}<span class="list-main">
    <span class="list-note">${time(entry.at)} · ${entry.who || entry.actor || say('job-history-no-name')}${number}</span>
    <span class=${entry.undone ? 'history-text history-struck' : 'history-text'}>${sentence(entry.sentence)}</span>
    ${entry.righted ? righted(entry.righted) : nothing} ${entry.undone ? undone(entry.undone) : nothing}
    ${(entry.flags ?? []).map((flag) => html`<span class="history-undone">${flag}</span>`)}
  </span>`;
  if (!entry.may_undo && !entry.may_right && !entry.back) return html`<li class="list-row">${told}</li>`;
  const { form } = ctx;
  const name = `${entry.device}/${entry.seq}`;
  const isOpen = form.taking === name || form.righting === name;
  return html`<li>
    <button
      class="list-row"
      type="button"
      aria-expanded=${isOpen}
      @click=${() => {
        form.taking = isOpen ? '' : name;
        form.reason = '';
        closeForm(ctx);
      }}
    >
      ${told}<span class="list-end">${icon(isOpen ? 'cross' : 'undo')}</span>
    </button>
    ${form.righting === name ? rightForm(ctx, entry) : nothing} ${form.taking === name ? ways(ctx, entry) : nothing}
  </li>`;
}

/**
 * What can be done about an entry that is not right: enter it anew, or take it back.
 * @param {import('../frame/context.js').Context} ctx
 * @param {HistoryEntry} entry
 */
function ways(ctx, entry) {
  const open = () => {
    ctx.form.taking = '';
    return openForm(ctx, entry);
  };
  return html`<div class="screen-stack">
    ${entry.may_right
      ? html`<div class="card-actions">
          <button class="small-button" type="button" data-do="anew" @click=${open}>${icon('tick')} ${say('job-right-open')}</button>
        </div>`
      : nothing}
    ${entry.may_undo ? takeBack(ctx, entry) : nothing} ${entry.back ? bringBack(ctx, entry.back) : nothing}
  </div>`;
}

/**
 * It was no mistake after all: it counts again, in its place.
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../core/views.js').Draft[]} back
 */
function bringBack(ctx, back) {
  return html`<div class="card-actions">
    <button class="small-button" type="button" data-do="back" ?disabled=${ctx.busy} @click=${() => ctx.act(back, { after: ctx.forget })}>
      ${icon('tick')} ${say('job-history-bring-back')}
    </button>
  </div>`;
}

/** @param {{actor: string, said: string}} correction */
function righted({ actor, said }) {
  return html`<span class="history-undone">${actor ? say('job-right-by', { actor }) : say('job-right-was')}</span>
    <span class="history-text history-struck">${sentence(said)}</span>`;
}

/** @param {{actor: string, reason: string}} correction */
function undone({ actor, reason }) {
  const words = actor ? say('job-history-undone-by', { actor, reason }) : say('job-history-undone', { reason });
  return html`<span class="history-undone">${words}</span>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {HistoryEntry} entry
 */
function takeBack(ctx, { device, seq, over }) {
  const reason = (ctx.form.reason ?? '').trim();
  return html`<div class="card screen-stack take-back">
    ${textField(ctx, 'reason', say('job-history-reason'), { note: say('job-history-reason-note'), most: 500 })}
    <div class="card-actions">
      <button
        class="small-button"
        type="button"
        ?disabled=${!reason || ctx.busy}
        @click=${() => ctx.act([{ kind: 'corrected', data: { device, seq, reason, over } }], { after: ctx.forget })}
      >
        ${icon('undo')} ${say('job-history-take-back')}
      </button>
      <button class="link-button" type="button" @click=${ctx.forget}>${say('job-history-leave')}</button>
    </div>
  </div>`;
}
