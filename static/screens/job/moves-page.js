// @ts-check
/**
 * All next moves of a job: the best one large, the next two small, the rest on request, each with what it
 * would tell.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../words/words.js';
import { waysLink } from './ways-link.js';
import { to } from '../frame/router.js';
import { askedFirst, moveCard, startButton } from './steps/moves.js';

/** @typedef {import('../../core/views.js').Move} Move */

const OTHERS = 2;

/**
 * @param {import('./steps/step-context.js').StepContext} ctx  that of the job's present step, whose form it shares
 * @returns {import('../frame/frame.js').Parts}
 */
export function movesPage(ctx) {
  const { view, job } = ctx;
  const head = { title: say('job-moves-title'), back: to.job(job), stages: view.stages };
  if (!view.may_choose) {
    return {
      ...head,
      body: html`<div class="nothing">
        <h2>${say('job-moves-none')}</h2>
        <p>${say('job-moves-elsewhere', { step: view.step.title })}</p>
      </div>`,
      main: { words: say('job-go-on'), run: () => ctx.go(to.job(job)) },
    };
  }
  const asked = askedFirst(ctx);
  if (asked) return { ...head, ...asked };
  const [best, ...rest] = view.moves;
  const small = (/** @type {Move} */ move) =>
    moveCard(move, { small: true, actions: smallStart(startButton(ctx, move)) });
  const more = rest.slice(OTHERS);
  return {
    ...head,
    body: html`
      ${moveCard(best)}
      ${rest.length ? html`<h2 class="moves-others">${say('job-moves-others')}</h2>` : nothing}
      ${rest.slice(0, OTHERS).map(small)}
      ${more.length
        ? html`<details class="more">
            <summary>${say('job-moves-more', { count: more.length })}</summary>
            <div class="screen-stack">${more.map(small)}</div>
          </details>`
        : nothing}
      ${waysLink(view)}
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
