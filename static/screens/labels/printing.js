// @ts-check
/**
 * The labels that were recorded as printed just now, for their page. They are kept only while the app is
 * open: whoever comes back later might print a label twice, so the batch asks first.
 */

/** @typedef {{batch: string, codes: string[], options: import('./press.js').Options}} Printing */

/** @type {Printing | null} */
let printing = null;

/** @param {Printing} made */
export function keepPrinting(made) {
  printing = made;
}

/**
 * @param {string} batch  its id
 * @returns {Printing | null}
 */
export function printingOf(batch) {
  return printing?.batch === batch ? printing : null;
}
