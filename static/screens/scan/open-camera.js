// @ts-check
/**
 * The camera that stays open from one label to the next: for which work, and which label was taken last.
 */

import { prepareTones } from '../../phone/tones.js';

/** The works whose camera is open from step to step. @type {Set<string>} */
const open = new Set();

/** The label that was taken last, and when it was seen: it may still be before the lens at the next step. */
let taken = { text: '', at: 0 };
const STILL_THERE_MS = 4000;

/**
 * Open the camera of a work with its next step; call it on a tap.
 * @param {string} work
 */
export function carryOn(work) {
  prepareTones();
  open.add(work);
}

/**
 * The steps that want labels are over, or another way was chosen: the next ones begin with a tap again.
 * @param {string} work
 */
export function putDown(work) {
  open.delete(work);
}

/** @param {string} work */
export function isCarried(work) {
  return open.has(work);
}

/**
 * This label was taken just now.
 * @param {string} text
 */
export function noteTaken(text) {
  taken = { text, at: performance.now() };
}

/**
 * Whether this is the label that was just taken, not put away yet.
 * @param {string[]} texts
 */
export function isStillThere(texts) {
  if (texts.length !== 1 || texts[0] !== taken.text) return false;
  const since = performance.now() - taken.at;
  taken.at = performance.now();
  return since < STILL_THERE_MS;
}
