// @ts-check
/**
 * Times and sizes in words.
 */

import { isKnown } from '../../words/figures.js';
import { render, say } from '../../words/words.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/**
 * A moment as this phone's clock shows it.
 * @param {number} at  ms
 */
export function dayAndTime(at) {
  if (!isKnown(at)) return time(at);
  return say('figures-moment', { day: day(at), time: time(at) });
}

/** @param {number} at  ms */
export function day(at) {
  const then = new Date(at);
  if (then.getFullYear() !== new Date().getFullYear()) return dayOnPaper(at);
  return say('frame-day-of-this-year', { day: String(then.getDate()), month: shortMonth(then) });
}

/**
 * A day as it stands on paper, which is read in other years too.
 * @param {number} at  ms
 */
export function dayOnPaper(at) {
  if (!isKnown(at)) return render({ figure: 'day', of: at });
  const then = new Date(at);
  return say('figures-day', { day: String(then.getDate()), month: shortMonth(then), year: String(then.getFullYear()) });
}

/** @param {Date} then */
function shortMonth(then) {
  return say('frame-short-month', { month: then.getMonth() + 1 });
}

/** @param {number} at  ms */
export function momentOnPaper(at) {
  if (!isKnown(at)) return time(at);
  return say('figures-moment', { day: dayOnPaper(at), time: time(at) });
}

/** @param {number} at  ms */
export function time(at) {
  return render({ figure: 'time', of: at });
}

/**
 * How long ago, roughly.
 * @param {number} at  ms
 */
export function ago(at) {
  const passed = Date.now() - at;
  return passed < MINUTE ? say('frame-just-now') : say('frame-ago', { span: span(passed) });
}

/**
 * How long, roughly.
 * @param {number} ms  at least a minute
 */
export function span(ms) {
  if (ms < HOUR) return say('frame-minutes', { count: Math.floor(ms / MINUTE) });
  if (ms < 2 * DAY) return say('frame-hours', { count: Math.floor(ms / HOUR) });
  return say('frame-days', { count: Math.floor(ms / DAY) });
}

/**
 * How long from now, in whole seconds or minutes.
 * @param {number} at  ms
 */
export function until(at) {
  const seconds = Math.max(1, Math.ceil((at - Date.now()) / 1000));
  return seconds < 100 ? say('frame-seconds', { count: seconds }) : say('frame-minutes', { count: Math.round(seconds / 60) });
}

/** @param {number} bytes */
export function size(bytes) {
  if (bytes < 1e6) return say('frame-kilobytes', { number: { figure: 'whole', of: Math.ceil(bytes / 1000) } });
  if (bytes < 1e9) return say('frame-megabytes', { number: { figure: 'decimal', of: [Math.round(bytes / 1e5), 1] } });
  return say('frame-gigabytes', { number: { figure: 'decimal', of: [Math.round(bytes / 1e8), 1] } });
}
