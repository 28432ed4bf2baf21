// @ts-check
/**
 * The checks of a circuit are at their end and no part of it is named: the circuit as it stands beside what is asked.
 */

import { html } from 'lit-html';

import { choicesStep } from './choices.js';
import { aboutCircuit, circuit } from './circuit.js';
import { tapStep } from './tap.js';

/** @typedef {import('../../../core/views.js').ChoicesStep} ChoicesStep */
/** @typedef {import('../../../core/views.js').TapStep} TapStep */

/** @param {import('./step-context.js').StepContext<ChoicesStep | TapStep>} ctx @returns {import('../job.js').StepParts} */
export function withCircuitStep(ctx) {
  const { step } = ctx;
  /** @type {import('../job.js').StepParts} */
  const parts = step.form === 'choices' ? choicesStep({ ...ctx, step }) : tapStep({ ...ctx, step });
  // A form or a camera of its own.
  if (parts.bare) return parts;
  return { ...parts, body: html`${circuit(step.harness)} ${parts.body} ${aboutCircuit(ctx, step.harness)}` };
}
