// @ts-check
/**
 * The best next move as a card: why, how long, and what each result will mean before it is known.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../../words/words.js';
import { carryOn } from '../../scan/open-camera.js';
import { to } from '../../frame/router.js';
import { sentence } from '../../frame/sentence.js';
import { newUnitStep } from './new-unit.js';
import { repairScreen } from './repair.js';

/** @typedef {import('../../../core/views.js').Draft} Draft */
/** @typedef {import('../../../core/views.js').MovesStep} MovesStep */
/** @typedef {import('../../../core/views.js').Move} Move */

/** @param {import('./step-context.js').StepContext<MovesStep>} ctx */
export function movesStep(ctx) {
  const best = ctx.view.moves[0];
  const asked = askedFirst(ctx);
  if (asked) return asked;
  return {
    bare: true,
    body: moveCard(best),
    main: startButton(ctx, best),
    second: ctx.step.second ? { words: ctx.step.second.words, run: () => ctx.go(to.jobPart(ctx.job, 'moves')) } : null,
  };
}

/**
 * What has to be told before the chosen move counts: the new sensor of a replacement, where a repair was; else null.
 * @param {import('./step-context.js').StepContext} ctx
 */
export function askedFirst(ctx) {
  const { form, repair, title, cautions } = ctx.view.moves.find((each) => asksFirst(each) && each.title === ctx.form.move) ?? {};
  const act = async (/** @type {Draft[]} */ drafts, /** @type {import('../../frame/recorder.js').ActOptions} */ options = {}) => {
    const recorded = await ctx.act(drafts, options);
    if (recorded) ctx.go(to.job(ctx.job));
    return recorded;
  };
  const other = { words: say('steps-moves-not-this'), run: () => leave(ctx) };
  if (repair) return repairScreen(ctx, repair, other, { title, cautions, record: act });
  if (!form) return null;
  const parts = newUnitStep({ ...ctx, step: form, act });
  return {
    ...parts,
    bare: true,
    body: parts.bare ? parts.body : html`<div><h1>${sentence(form.title)}</h1><p class="lead">${form.text}</p></div>${parts.body}`,
    second: parts.second ?? other,
  };
}

/** @param {Move} move */
const asksFirst = ({ form, repair }) => Boolean(form ?? repair);

/** @param {import('./step-context.js').StepContext} ctx */
function leave(ctx) {
  delete ctx.form.move;
  ctx.redraw();
}

/**
 * The button that begins a move: a replacement and a repair ask first.
 * @param {import('./step-context.js').StepContext} ctx
 * @param {Move} move
 */
export function startButton(ctx, move) {
  return {
    words: move.start_words,
    run: async () => {
      if (move.move === 'listen') {
        ctx.go(to.jobPart(ctx.job, 'listen'));
        return;
      }
      if (asksFirst(move)) {
        ctx.form.move = move.title;
        ctx.redraw();
        return;
      }
      if (move.move === 'exchange') carryOn(ctx.job);
      if (await ctx.act(move.events)) {
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
    ${move.move === 'repair' ? nothing : html`<p class="move-reason">${sentence(move.reason)}</p>`}
    ${move.spares.map((told) => html`<p class="move-spare">${sentence(told)}</p>`)}
    ${move.why_not ? html`<p class="move-why-not"><strong>${say('steps-moves-why-not')}</strong> ${sentence(move.why_not)}</p>` : nothing}
    <details class="more">
      <summary>${say('steps-moves-outlook')}</summary>
      ${outlook(move)}
    </details>
    ${actions}
  </section>`;
}

/** @param {Move} move */
function outlook({ outlook: rows }) {
  if (!rows.length) return nothing;
  return html`<table class="outlook">
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
