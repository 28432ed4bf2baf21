// @ts-check
/**
 * A step that asks for nothing but a tap: what the core's buttons record is recorded. Only a repair wants
 * words of its own.
 */

import { repairStep } from './repair.js';

/** @typedef {import('../../../core/views.js').TapStep} TapStep */

/** @param {import('./step-context.js').StepContext<TapStep>} ctx @returns {import('../job.js').StepParts} */
export function tapStep(ctx) {
  return repairStep(ctx);
}
