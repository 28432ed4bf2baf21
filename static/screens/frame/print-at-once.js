// @ts-check
/**
 * A slip that is printed as soon as it is shown, once, without a tap.
 */

let due = '';

/**
 * Have the slip of a unit printed when it is shown next.
 * @param {string} unit
 * @param {() => void} after  once it was printed, or not, as the person said to the browser
 */
export function printAtOnce(unit, after) {
  due = unit;
  addEventListener('afterprint', after, { once: true });
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
