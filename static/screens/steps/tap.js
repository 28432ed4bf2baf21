// @ts-check
/**
 * A step that asks for nothing but a tap: what the core's buttons record is recorded.
 */

import { nothing } from 'lit-html';

/** @returns {import('../job.js').StepParts} */
export function tapStep() {
  return { body: nothing };
}
