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
 *
 * The steps of late-steps.js are read when a job is first at one of them; `readStep` has to settle before `stepFor`.
 */

import { readLateSteps } from '../../frame/read-late.js';
import { cautionsStep } from './cautions.js';
import { checklistStep } from './checklist.js';
import { choicesStep } from './choices.js';
import { lookStep } from './look.js';
import { movesStep } from './moves.js';
import { newUnitStep } from './new-unit.js';
import { photoStep } from './photo.js';
import { scanUnitStep } from './scan-unit.js';
import { tapStep } from './tap.js';
import { testEntryStep } from './test-entry.js';
import { whereToStep } from './where-to.js';

/** @type {Record<string, (ctx: any) => any>} */
const BY_FORM = {
  cautions: cautionsStep,
  checklist: checklistStep,
  choices: choicesStep,
  look: lookStep,
  moves: movesStep,
  new_unit: newUnitStep,
  photo: photoStep,
  scan: scanUnitStep,
  test: testEntryStep,
  where_to: whereToStep,
};

/** The circuit is drawn beside what is asked: a choice, a tap. */
const WITH_CIRCUIT = 'circuit';
const LATE = new Set(['close', 'contradiction', 'done', 'found', 'measure', WITH_CIRCUIT, 'walk']);
/** @type {Record<string, (ctx: any) => any>} */
let late = {};

/** @param {import('../../../core/views.js').Step} step */
function formOf(step) {
  const { form } = step;
  if ((form === 'choices' || form === null) && step.harness) return WITH_CIRCUIT;
  return form ?? '';
}

/**
 * Have the script there that draws a step.
 * @param {import('../../../core/views.js').Step} step
 */
export async function readStep(step) {
  if (LATE.has(formOf(step))) late = (await readLateSteps()).LATE_STEPS;
}

/**
 * @param {import('../../../core/views.js').Step} step
 * @returns {(ctx: any) => import('../job.js').StepParts}
 */
export function stepFor(step) {
  const form = formOf(step);
  return BY_FORM[form] ?? late[form] ?? tapStep;
}
