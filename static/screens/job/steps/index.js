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

import { cautionsStep } from './cautions.js';
import { checklistStep } from './checklist.js';
import { choicesStep } from './choices.js';
import { closeStep } from './close.js';
import { contradictionStep } from './contradiction.js';
import { doneStep } from './done.js';
import { lookStep } from './look.js';
import { measureStep } from './measure.js';
import { movesStep } from './moves.js';
import { newUnitStep } from './new-unit.js';
import { photoStep } from './photo.js';
import { scanUnitStep } from './scan-unit.js';
import { tapStep } from './tap.js';
import { testEntryStep } from './test-entry.js';
import { walkStep } from './walk.js';
import { whereToStep } from './where-to.js';

/** @type {Record<string, (ctx: any) => any>} */
const BY_FORM = {
  cautions: cautionsStep,
  checklist: checklistStep,
  choices: choicesStep,
  close: closeStep,
  contradiction: contradictionStep,
  done: doneStep,
  look: lookStep,
  measure: measureStep,
  moves: movesStep,
  new_unit: newUnitStep,
  photo: photoStep,
  scan: scanUnitStep,
  test: testEntryStep,
  walk: walkStep,
  where_to: whereToStep,
};

/**
 * @param {string | null} form
 * @returns {(ctx: any) => import('../job.js').StepParts}
 */
export function stepFor(form) {
  return BY_FORM[form ?? ''] ?? tapStep;
}
