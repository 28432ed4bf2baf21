// @ts-check
/**
 * All next moves of a job: the best one large, the next two small, each with what it would tell.
 */

import { html, nothing } from 'lit-html';

import { to } from './router.js';
import { moveCard, replacing, startButton } from './steps/moves.js';

const OTHERS = 2;

/**
 * @param {any} ctx  that of the job's present step, whose form it shares
 * @returns {import('./frame.js').Parts}
 */
export function movesPage(ctx) {
  const { view, job } = ctx;
  const head = { title: 'Next moves', back: to.job(job), stages: view.stages };
  const open = view.step.form === 'moves';
  if (!open || !view.moves.length) {
    return {
      ...head,
      body: html`<div class="nothing">
        <h2>No move to choose now</h2>
        <p>The job is at another step: ${view.step.title}</p>
      </div>`,
      main: { words: 'Go on with the job', run: () => ctx.go(to.job(job)) },
    };
  }
  const asked = replacing(ctx);
  if (asked) return { ...head, ...asked };
  const [best, ...rest] = view.moves;
  const others = rest.slice(0, OTHERS);
  return {
    ...head,
    body: html`
      ${moveCard(best)}
      ${others.length ? html`<h2 class="moves-others">Or one of these</h2>` : nothing}
      ${others.map((/** @type {any} */ move) =>
        moveCard(move, { small: true, actions: smallStart(startButton(ctx, move)) }),
      )}
    `,
    main: startButton(ctx, best),
  };
}

/** @param {{words: string, run: () => unknown}} button */
function smallStart({ words, run }) {
  return html`<div class="card-actions">
    <button class="small-button" type="button" @click=${run}>${words}</button>
  </div>`;
}
