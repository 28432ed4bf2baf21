// @ts-check
/**
 * Shows the signs of a text that nobody sees, or that turn the writing round, as their codes: two names that look
 * alike are alike. The rule of server/words/visible.py, to the letter.
 */

/** Controls but tab and line end, soft hyphen, marks of direction, blanks without width, tags. */
const SIGNS = /[\0-\x08\x0b-\x1f\x7f-\x9f\xad\u061c\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e007f}]/gu;
/** They join emoji and letters of some scripts; behind Latin ones they only hide. */
const JOINERS = /(^|[\0-\u024f])([\u200c\u200d]+)/gu;

/** A text with its unseen signs as codes, such as [U+200B]. @param {string} text */
export function visible(text) {
  return text.replace(SIGNS, code).replace(JOINERS, (_, before, joiners) => before + [...joiners].map(code).join(''));
}

/** @param {string} sign */
function code(sign) {
  return `[U+${/** @type {number} */ (sign.codePointAt(0)).toString(16).toUpperCase().padStart(4, '0')}]`;
}
