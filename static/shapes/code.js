// @ts-check
/**
 * A label code as it stands on the label: two groups, one unmistakable face, never broken.
 */
import { html } from "lit-html";
import { say } from "../words/words.js";

/** What a label code looks like in a sentence; only how it is set hangs on this, not what it means. */
export const CODE = /\b([2-9A-Y]{3}-[2-9A-Y]{2})\b/;
/** Such as self-test: so short that even the largest text has room for it. */
const SHORT = /\b([a-z]{1,4}-[a-z]{1,5})\b/i;

/**
 * @param {string} shown the code as the core shows it, "K7F-3M"; "" where a unit has no label yet
 * @param {{size?: "small"|"large"|"plain", none?: string}} [options] `plain` stands inside a
 *   sentence, without the outline of a label; `none` is said where there is no code
 */
export function code(shown, { size = "small", none = say("shapes-no-label") } = {}) {
  if (!shown) {
    return html`<span class="code-none">${none}</span>`;
  }
  const groups = shown.split("-");
  // The hyphen stays in the text, so that a copied or spoken code is the whole code.
  return html`<span class="code code-${size}" translate="no"
    >${groups.map((group, n) => html`${n ? html`<span class="code-join">-</span>` : ""}<span
        class="code-group">${group}</span>`)}</span>`;
}

/**
 * A text of the core with the label codes in it set as codes, and no figure parted from its percent sign.
 * @param {string} text
 * @returns {unknown}
 */
export function withCodes(text) {
  return between(text.replaceAll(" %", "\u00a0%"), CODE, (found) => code(found, { size: "plain" }), (rest) => between(rest, SHORT, whole, String));
}

/** A short word is not broken at its hyphen. @param {string} word */
const whole = (word) => html`<span class="whole">${word}</span>`;

/**
 * @param {string} text
 * @param {RegExp} pattern with one group: every second part of the text is one
 * @param {(found: string) => unknown} as
 * @param {(rest: string) => unknown} other
 * @returns {unknown}
 */
function between(text, pattern, as, other) {
  const parts = text.split(pattern);
  return parts.length === 1 ? other(text) : html`${parts.map((part, n) => (n % 2 ? as(part) : other(part)))}`;
}
