// @ts-check
/**
 * The symbol of a label, made on this phone, so that paper can be printed without a network.
 */

import { correction, generate, mode } from 'lean-qr';

import { qrDrawing } from './qr.js';

const LEVELS = /** @type {const} */ (['H', 'Q', 'M', 'L']);
/** Scheme and host, which no one reads by case; then what has to stay as it is; then the code. */
const PARTS = /^([0-9A-Z:./-]+?\/\/[0-9A-Z:.-]+\/)(.*#)([0-9A-Z]+)$/;

/**
 * @param {string} address  as the core gives it
 * @param {string} label    what it is, for those who hear the screen
 */
export function labelQr(address, label) {
  return qrDrawing(labelModules(address, 'Q'), label);
}

/**
 * By level the smallest version of a symbol that holds a text; a level that none does is left out.
 * @param {string} text
 */
export function versionsOf(text) {
  /** @type {Record<string, number>} */
  const found = {};
  for (const level of LEVELS) {
    try {
      found[level] = (symbolOf(text, level).size - 17) / 4;
    } catch {
      continue; // it is too long for this level
    }
  }
  return found;
}

/**
 * The modules of a symbol as rows of 0 and 1, without its margin.
 * @param {string} text
 * @param {string} level  one of H, Q, M, L
 */
export function labelModules(text, level) {
  const symbol = symbolOf(text, level);
  const sides = Array.from({ length: symbol.size }, (_, n) => n);
  return sides.map((y) => sides.map((x) => (symbol.get(x, y) ? '1' : '0')).join(''));
}

/**
 * @param {string} text
 * @param {string} level
 */
function symbolOf(text, level) {
  const only = correction[/** @type {'H' | 'Q' | 'M' | 'L'} */ (level)];
  return generate(modesOf(text), { minCorrectionLevel: only, maxCorrectionLevel: only });
}

/**
 * Always the same modes for the same part of an address, so that the symbols of all codes are one size.
 * @param {string} text
 */
function modesOf(text) {
  const parts = PARTS.exec(text);
  if (parts) return mode.multi(mode.alphaNumeric(parts[1]), mode.ascii(parts[2]), mode.alphaNumeric(parts[3]));
  return text === text.toUpperCase() && !text.includes('#') ? mode.alphaNumeric(text) : mode.ascii(text);
}
