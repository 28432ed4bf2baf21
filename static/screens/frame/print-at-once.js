// @ts-check
/**
 * A slip that is printed as soon as it is shown, once, without a tap.
 */

import { routeOf } from './router.js';

/** Of which unit a slip is still to be shown. */
let due = '';
/** The path of the slip that is shown to be printed, until it was. */
let sheet = '';

/**
 * Have the slip of a unit printed when it is shown next.
 * @param {string} unit
 * @param {string} path  where it is shown
 * @param {() => void} after  once it was printed, or not, as the person said to the browser
 */
export function printAtOnce(unit, path, after) {
  due = unit;
  sheet = path;
  const printed = () => {
    sheet = '';
    after();
  };
  addEventListener('afterprint', printed, { once: true });
}

/**
 * Whether the slip that is shown is to be printed; only the first who asks is told so.
 * @param {string} unit
 */
export function isDueAtOnce(unit) {
  const isDue = due === unit;
  due = '';
  return isDue;
}

/** Whether a slip is there to be printed and was not yet: whoever leaves it now has none. */
export const isPrinting = () => sheet !== '' && routeOf(location).path === sheet;
