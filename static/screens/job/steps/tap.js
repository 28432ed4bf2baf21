// @ts-check
/**
 * A step that asks for nothing but a tap: what the core's buttons record is recorded. Only a repair wants
 * words of its own.
 */

import { repairStep } from './repair.js';

/** @param {any} ctx @returns {import('../job.js').StepParts} */
export function tapStep(ctx) {
  return repairStep(ctx);
}
