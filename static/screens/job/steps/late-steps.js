// @ts-check
/**
 * The steps that no job begins with, in one script: it is read when one of them is shown, and kept like the screens
 * that are opened rarely.
 */

import { closeStep } from './close.js';
import { contradictionStep } from './contradiction.js';
import { doneStep } from './done.js';
import { foundStep } from './found.js';
import { measureStep } from './measure.js';
import { walkStep } from './walk.js';
import { withCircuitStep } from './with-circuit.js';

/** @type {Record<string, (ctx: any) => any>} */
export const LATE_STEPS = {
  circuit: withCircuitStep,
  close: closeStep,
  contradiction: contradictionStep,
  done: doneStep,
  found: foundStep,
  measure: measureStep,
  walk: walkStep,
};
