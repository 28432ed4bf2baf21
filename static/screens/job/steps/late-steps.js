// @ts-check
/**
 * The steps that no job begins with, in one script: it is read when one of them is shown, and kept like the screens
 * that are opened rarely.
 */

import { closeStep } from './close.js';
import { contradictionStep } from './contradiction.js';
import { doneStep } from './done.js';
import { measureStep } from './measure.js';
import { walkStep } from './walk.js';

/** @type {Record<string, (ctx: any) => any>} */
export const LATE_STEPS = {
  close: closeStep,
  contradiction: contradictionStep,
  done: doneStep,
  measure: measureStep,
  walk: walkStep,
};
