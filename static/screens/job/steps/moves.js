// @ts-check
/**
 * The best next move as a card: why, how long, and what each result will mean before it is known.
 */

import { html, nothing } from 'lit-html';

import { to } from '../../frame/router.js';
import { sentence } from '../../frame/sentence.js';
import { newUnitStep } from './new-unit.js';

/**
 * @typedef {object} Move
 * @property {string} move
 * @property {string} title
 * @property {string} reason
 * @property {string} why_not         why it proves little; empty for a good move
 * @property {string} minutes_words   said in the reason already
 * @property {string} start_words
 * @property {Array<{chance_words: string, result: string, then: string}>} outlook
 * @property {any[]} events
 * @property {string[]} spares        why the spares it uses are trusted, or not
 * @property {any} [form]    for a replacement: the step that asks for the new sensor
 */

/** @param {any} ctx */
export function movesStep(ctx) {
  const best = ctx.view.moves[0];
  const asked = replacing(ctx);
  if (asked) return asked;
  return {
    bare: true,
    body: moveCard(best),
    main: startButton(ctx, best),
    second: ctx.step.second ? { words: ctx.step.second.words, run: () => ctx.go(to.jobPart(ctx.job, 'moves')) } : null,
  };
}

/**
 * The form for a new sensor, once a replacement was chosen among the moves; else null.
 * @param {any} ctx
 */
export function replacing(ctx) {
  const move = ctx.view.moves.find((/** @type {Move} */ each) => each.form && each.title === ctx.form.replacing);
  if (!move) return null;
  const act = async (/** @type {any[]} */ drafts) => {
    const recorded = await ctx.act(drafts);
    if (recorded) ctx.go(to.job(ctx.job));
    return recorded;
  };
  const parts = newUnitStep({ ...ctx, step: move.form, act });
  return {
    ...parts,
    bare: true,
    body: parts.bare ? parts.body : html`<div><h1>${sentence(move.form.title)}</h1><p class="lead">${move.form.text}</p></div>${parts.body}`,
    second: parts.second ?? { words: 'Not this', run: () => leave(ctx) },
  };
}

/** @param {any} ctx */
function leave(ctx) {
  delete ctx.form.replacing;
  ctx.redraw();
}

/**
 * The button that begins a move: a replacement asks for the new sensor first.
 * @param {any} ctx
 * @param {Move} move
 */
export function startButton(ctx, move) {
  return {
    words: move.start_words,
    run: async () => {
      if (move.form) {
        ctx.form.replacing = move.title;
        ctx.redraw();
      } else if (await ctx.act(move.events)) {
        ctx.go(to.job(ctx.job));
      }
    },
  };
}

/**
 * @param {Move} move
 * @param {{actions?: unknown, small?: boolean}} [options]
 */
export function moveCard(move, { actions = nothing, small = false } = {}) {
  return html`<section class=${small ? 'card move' : 'card card-now move'}>
    ${small ? html`<h2 class="move-title">${sentence(move.title)}</h2>` : html`<h1>${sentence(move.title)}</h1>`}
    <p class="move-reason">${sentence(move.reason)}</p>
    ${move.spares.map((told) => html`<p class="move-spare">${sentence(told)}</p>`)}
    ${move.why_not ? html`<p class="move-why-not"><strong>Why not:</strong> ${sentence(move.why_not)}</p>` : nothing}
    ${small
      ? html`<details class="more">
          <summary>What each result will mean</summary>
          ${outlook(move, nothing)}
        </details>`
      : outlook(move, 'What each result will mean')}
    ${actions}
  </section>`;
}

/**
 * @param {Move} move
 * @param {unknown} caption
 */
function outlook({ outlook: rows }, caption) {
  if (!rows.length) return nothing;
  return html`<table class="outlook">
    ${caption === nothing ? nothing : html`<caption class="outlook-caption">${caption}</caption>`}
    ${rows.map(
      ({ chance_words: chance, result, then }) =>
        html`<tr>
          <th class="outlook-chance" scope="row">${chance}</th>
          <td>
            <span class="outlook-result">${sentence(result)}</span>
            <span class="outlook-then">${sentence(then)}</span>
          </td>
        </tr>`,
    )}
  </table>`;
}
