// @ts-check
/**
 * A job: where it stands on the board, and the one step that comes next.
 */

import { html, nothing } from 'lit-html';

import { board } from '../shapes/board.js';
import { loadJob } from './job-data.js';
import { to } from './router.js';
import { stepFor } from './steps/index.js';

/**
 * @typedef {object} StepParts   what a step module returns
 * @property {unknown} body
 * @property {import('./frame.js').Button | null} [main]
 * @property {import('./frame.js').Button | null} [second]
 * @property {boolean} [bare]    the body brings its own heading
 */

/** Steps that are told best beside the board; the others need the room for themselves. */
const BESIDE_BOARD = new Set([null, 'moves', 'close', 'done']);

export const jobPage = {
  load: loadJob,

  /** @param {Record<string, string>} params @param {any} view */
  formKey: ({ job }, view) => `job/${job}/${stepKey(view.step)}`,

  /** @param {import('./app.js').Context} ctx */
  draw(ctx) {
    const view = ctx.data;
    const { step } = view;
    const parts = stepFor(step.form)({ ...ctx, view, step, job: view.id });
    return {
      title: step.progress ? `${view.title} · ${step.progress.now} of ${step.progress.total}` : view.title,
      back: to.jobs(),
      stages: view.stages,
      key: stepKey(step),
      body: jobBody(ctx, view, parts),
      main: parts.main === undefined ? actionButton(ctx, step.action) : parts.main,
      second: parts.second === undefined ? actionButton(ctx, step.second) : parts.second,
    };
  },
};

/**
 * Tells one step from the next, so that a form belongs to exactly one of them.
 * @param {any} step
 */
export function stepKey({ id, expects }) {
  const { do: what, unit, position, check, number, old } = expects;
  return [id, what, unit, position, check, number, old].filter((part) => part !== undefined).join('/');
}

/**
 * @param {import('./app.js').Context} ctx
 * @param {{words: string, events: any[]} | null} action
 */
function actionButton(ctx, action) {
  if (!action?.events.length) return null;
  return { words: action.words, run: () => ctx.act(action.events) };
}

/**
 * @param {import('./app.js').Context} ctx
 * @param {any} view
 * @param {StepParts} parts
 */
function jobBody(ctx, view, parts) {
  const { step } = view;
  const drawing = board(view.board, {
    onPick: (position) => ctx.go(to.position(view.id, position)),
  });
  const heading = parts.bare ? nothing : html`<h1>${step.title}</h1><p class="lead">${step.text}</p>`;
  const told = html`<div class="screen-stack" data-step=${step.id}>${heading}${parts.body}</div>`;
  return BESIDE_BOARD.has(step.form) ? html`${drawing}${told}` : html`${told}${drawing}`;
}
