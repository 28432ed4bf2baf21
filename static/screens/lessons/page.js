// @ts-check
/**
 * What the yard's closed jobs teach: how verdicts came out, causes on the car, minutes beside the plan. The
 * server works it out and says it.
 */

import { html, nothing } from 'lit-html';

import { ApiError } from '../../sync/request.js';
import { saveFile } from '../../phone/save-file.js';
import { board } from '../../shapes/board.js';
import { linkTo, to } from '../frame/router.js';
import { say } from '../../words/words.js';
import { figureRows, jobList, offered } from './rows.js';
import { yards } from './yards.js';

/**
 * @typedef {object} Section
 * @property {string} id
 * @property {string} title
 * @property {string} note
 * @property {import('./rows.js').FigureRow[]} rows
 * @property {import('../../shapes/board.js').BoardView | null} board
 */

export const lessonsPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  async load({ sync }, { span = 'all' }) {
    try {
      return { ...(await sync.api.get(`/api/lessons?span=${span}`)), span };
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      return { problem: error.sentence, span };
    }
  },

  /** @param {Record<string, string>} params */
  formKey: ({ span = 'all' }) => `lessons/${span}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { problem, sections = [], summary = [], spans = [], words } = ctx.data;
    const told = ctx.form.problem || problem;
    return {
      title: say('you-lessons'),
      back: to.you(),
      body: html`
        <h1>${say('you-lessons')}</h1>
        ${told ? html`<p class="field-fault" role="alert">${told}</p>` : nothing}
        <nav class="card-actions" aria-label=${say('you-lessons')}>
          ${spans.map(
            (/** @type {{id: string, words: string, on: boolean}} */ each) =>
              html`<a class="small-button" aria-current=${each.on ? 'page' : 'false'} href=${linkTo(to.lessons(each.id))}
                >${each.on ? html`<strong>✓ ${each.words}</strong>` : each.words}</a
              >`,
          )}
        </nav>
        ${spans.filter((/** @type {{on: boolean}} */ { on }) => on).map((/** @type {{words: string}} */ each) => html`<p class="on-paper">${each.words}</p>`)}
        ${summary.map((/** @type {string} */ said) => html`<p class="lead">${said}</p>`)}
        ${words?.axis ? html`<p class="soft">${words.axis}</p>` : nothing}
        ${ctx.data.offer ? offered(ctx, ctx.data.offer, () => ctx.reload()) : nothing}
        ${sections.map((/** @type {Section} */ each) => section(ctx, each))}
        ${ctx.data.yards ? yards(ctx, ctx.data.yards) : nothing}
        ${words && sections.length
          ? html`<div class="card-actions">
              ${['csv', 'json'].map(
                (kind) => html`<button class="small-button" type="button" @click=${() => save(ctx, kind)}>${words[kind]}</button>`,
              )}
            </div>`
          : nothing}
      `,
      main: mainButton(ctx),
    };
  },
};

/** Print what there is; where nothing is closed yet, back to the work. @param {import('../frame/context.js').Context} ctx */
function mainButton({ data: { words, sections = [], summary = [] }, go, reload }) {
  if (sections.length) return { words: words.print, run: () => print() };
  const waits = !words || summary.length > 1;
  return waits ? { words: say('you-look-again'), run: () => reload() } : { words: say('frame-show-jobs'), run: () => go(to.jobs()) };
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Section} section
 */
function section(ctx, { id, title, note, rows, board: drawn }) {
  return html`<section class="screen-stack">
    <h2>${title}</h2>
    ${note ? html`<p>${note}</p>` : nothing} ${drawn ? onTheCar(ctx, drawn) : nothing}
    ${figureRows(ctx, id, rows, ctx.data.jobs)}
  </section>`;
}

/**
 * What was found where; a tap on a position opens its jobs.
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../shapes/board.js').BoardView} drawn
 */
function onTheCar(ctx, drawn) {
  const chosen = ctx.form.place ?? '';
  const position = /** @type {any} */ (drawn.positions.find(({ id }) => id === chosen));
  const pick = (/** @type {string} */ place) => {
    ctx.form.place = place === chosen ? '' : place;
    ctx.redraw();
  };
  return html`${board(drawn, { onPick: pick, chosen })} ${position ? jobList(position.jobs, ctx.data.jobs) : nothing}`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} kind  csv or json
 */
async function save(ctx, kind) {
  ctx.form.problem = '';
  try {
    const file = await ctx.services.sync.api.file(`/api/lessons.${kind}?span=${ctx.data.span}`);
    saveFile(new File([file], `lessons.${kind}`, { type: file.type }));
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    ctx.form.problem = error.sentence;
  }
  ctx.redraw();
}
