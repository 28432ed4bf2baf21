// @ts-check
/**
 * Which module draws which step of a job.
 *
 * A step module is a function `(ctx) => {body, main, second, bare?}`. Title, text and cautions of the step
 * are drawn around it by job.js (`bare: true` leaves title and text out, for a stop that fills the
 * screen). `main` and `second` are `{words, run, disabled?}`; left out (undefined), the step's own
 * `action` and `second` are used and record their drafts as they are; null means no button.
 *
 * `ctx`, besides what every screen gets (see app.js):
 *   ctx.view, ctx.step, ctx.job   the job's view, its present step, its id
 *   ctx.form                      kept for this step, survives a reload, gone when the step changes
 */

import { tapStep } from './tap.js';

/** @type {Record<string, (ctx: any) => any>} */
const BY_FORM = {};

/**
 * @param {string | null} form
 * @returns {(ctx: any) => import('../job.js').StepParts}
 */
export function stepFor(form) {
  return BY_FORM[form ?? ''] ?? tapStep;
}
