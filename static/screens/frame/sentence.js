// @ts-check
/**
 * A sentence of the core with the label codes in it set as codes: one face, never broken over a line. Nor is
 * a figure parted from its percent sign.
 */

export { withCodes as sentence } from '../../shapes/code.js';

/**
 * A sentence cut into its single sentences, for large type: each on a line of its own.
 * @param {string} text
 * @returns {string[]}
 */
export function singleSentences(text) {
  return text.split(/(?<=[.?])\s+(?=[A-ZÁÉÍÓÚ¿¡0-9])/);
}
