// @ts-check
/**
 * A name at the beginning of a line.
 */

/** @param {string} text */
export function sentenceCase(text) {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
