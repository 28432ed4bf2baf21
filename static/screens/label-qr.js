// @ts-check
/**
 * The symbol of a label, as the label itself has it: made on this phone, so that paper can be printed
 * without a network.
 */

import { correction, generate, mode } from 'lean-qr';

import { qrDrawing } from './qr.js';

/**
 * @param {string} address  upper case throughout, as the core gives it
 * @param {string} label    what it is, for those who hear the screen
 */
export function labelQr(address, label) {
  const symbol = generate(mode.alphaNumeric(address), { minCorrectionLevel: correction.Q });
  const sides = Array.from({ length: symbol.size }, (_, n) => n);
  return qrDrawing(sides.map((y) => sides.map((x) => (symbol.get(x, y) ? '1' : '0')).join('')), label);
}
