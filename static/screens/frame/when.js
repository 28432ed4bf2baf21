// @ts-check
/**
 * Times and sizes in words.
 */

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

const DAY_FORM = new Intl.DateTimeFormat(undefined, { day: 'numeric', month: 'short', year: 'numeric' });
const DAY_OF_THIS_YEAR_FORM = new Intl.DateTimeFormat(undefined, { day: 'numeric', month: 'short' });
const TIME_FORM = new Intl.DateTimeFormat(undefined, { hour: '2-digit', minute: '2-digit' });

/**
 * A moment as this phone's clock shows it.
 * @param {number} at  ms
 */
export function dayAndTime(at) {
  return `${day(at)}, ${TIME_FORM.format(at)}`;
}

/** @param {number} at  ms */
export function day(at) {
  const isThisYear = new Date(at).getFullYear() === new Date().getFullYear();
  return (isThisYear ? DAY_OF_THIS_YEAR_FORM : DAY_FORM).format(at);
}

/**
 * A day as it stands on paper, which is read in other years too.
 * @param {number} at  ms
 */
export function dayOnPaper(at) {
  return DAY_FORM.format(at);
}

/** @param {number} at  ms */
export function momentOnPaper(at) {
  return `${dayOnPaper(at)}, ${TIME_FORM.format(at)}`;
}

/** @param {number} at  ms */
export function time(at) {
  return TIME_FORM.format(at);
}

/**
 * How long ago, roughly.
 * @param {number} at  ms
 */
export function ago(at) {
  const passed = Date.now() - at;
  return passed < MINUTE ? 'just now' : `${span(passed)} ago`;
}

/**
 * How long, roughly.
 * @param {number} ms  at least a minute
 */
export function span(ms) {
  if (ms < HOUR) return amount(Math.floor(ms / MINUTE), 'minute');
  if (ms < 2 * DAY) return amount(Math.floor(ms / HOUR), 'hour');
  return amount(Math.floor(ms / DAY), 'day');
}

/**
 * @param {number} whole
 * @param {string} unit
 */
function amount(whole, unit) {
  return `${whole} ${unit}${whole === 1 ? '' : 's'}`;
}

/**
 * How long from now, in whole seconds or minutes.
 * @param {number} at  ms
 */
export function until(at) {
  const seconds = Math.max(1, Math.ceil((at - Date.now()) / 1000));
  return seconds < 100 ? amount(seconds, 'second') : amount(Math.round(seconds / 60), 'minute');
}

/** @param {number} bytes */
export function size(bytes) {
  if (bytes < 1e6) return `${Math.ceil(bytes / 1000)} kB`;
  return bytes < 1e9 ? `${(bytes / 1e6).toFixed(1)} MB` : `${(bytes / 1e9).toFixed(1)} GB`;
}
