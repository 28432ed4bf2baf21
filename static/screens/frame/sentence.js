// @ts-check
/**
 * A sentence of the core with the label codes in it set as codes: one face, never broken over a line. Nor is
 * a figure parted from its percent sign.
 */

import { html } from 'lit-html';

import { code } from '../../shapes/code.js';

/** What a label code looks like in a sentence; only how it is set hangs on this, not what it means. */
export const CODE = /\b([2-9A-Y]{3}-[2-9A-Y]{2})\b/;

/**
 * @param {string} text
 * @returns {unknown}
 */
export function sentence(text) {
  // Split on a pattern with one group: every second part is a code.
  const parts = text.replaceAll(' %', '\u00a0%').split(CODE);
  return parts.length === 1 ? parts[0] : html`${parts.map((part, n) => (n % 2 ? code(part, { size: 'plain' }) : part))}`;
}

/**
 * A sentence cut into its single sentences, for large type: each on a line of its own.
 * @param {string} text
 * @returns {string[]}
 */
export function singleSentences(text) {
  return text.split(/(?<=[.?])\s+(?=[A-ZÁÉÍÓÚ¿¡0-9])/);
}
