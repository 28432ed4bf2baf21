// @ts-check
/**
 * The five marks of a position, the same on the board, in the trail, in lists and on paper.
 *
 * Each has its own shape and its own word, so that none of them is told by colour.
 */
import { html, svg } from "lit-html";
import { say } from "../words/words.js";

/** @typedef {"clean"|"fault"|"untested"|"aside"|"empty"} MarkKind */

/** @type {Readonly<Record<string, string>>} */
const WORDS = Object.freeze({
  clean: "shapes-clean",
  fault: "shapes-fault",
  untested: "shapes-untested",
  aside: "shapes-aside",
  empty: "shapes-empty",
});

/**
 * The word that goes with a mark where the data brings none.
 * @param {string} kind
 */
export function markWord(kind) {
  return say(WORDS[known(kind)]);
}

/** Outlines in a box from -16 to 16. */
const OUTLINES = {
  clean: svg`<circle class="mark-body" r="13" />
    <path class="mark-sign" d="M-6 .6-1.8 5 6.4-4.8" />`,
  // The cross has a halo: on the hatching alone it would drown.
  fault: svg`<rect class="mark-body" x="-13" y="-13" width="26" height="26" rx="2" />
    <path class="mark-hatch" d="M-11-2-2-11M-11 7 7-11M-7 11 11-7M2 11 11 2" />
    <path class="mark-halo" d="M-5.5-5.5 5.5 5.5M5.5-5.5-5.5 5.5" />
    <path class="mark-sign" d="M-5.5-5.5 5.5 5.5M5.5-5.5-5.5 5.5" />`,
  untested: svg`<circle class="mark-body" r="13" />`,
  aside: svg`<circle class="mark-body" r="11.5" /><path class="mark-sign" d="M-16 0H16" />`,
  empty: svg`<rect class="mark-body" x="-12" y="-12" width="24" height="24" /><path class="mark-sign" d="M-6.5-12H-12.5V12H-6.5M6.5-12H12.5V12H6.5" />`,
};

/**
 * @param {string} kind
 * @returns {MarkKind} what cannot be drawn is drawn as not tested: nothing is claimed about it
 */
function known(kind) {
  return Object.hasOwn(OUTLINES, kind) ? /** @type {MarkKind} */ (kind) : "untested";
}

/**
 * A mark inside a picture, centred on (x, y). Its word belongs beside it in that picture.
 * @param {string} kind
 * @param {{x: number, y: number, size?: number}} place
 */
export function markShape(kind, { x, y, size = 32 }) {
  const name = known(kind);
  return svg`<g class="mark-shape mark-${name}"
    transform="translate(${x} ${y}) scale(${size / 32})">${OUTLINES[name]}</g>`;
}

/**
 * A mark with its word, for lists and sentences.
 * @param {string} kind
 * @param {{word?: string, size?: "small"|"large"}} [options] `word: ""` hides the word from the
 *   eye only; it is still read aloud
 */
export function mark(kind, { word, size = "small" } = {}) {
  const name = known(kind);
  return html`<span class="mark mark-${size}">
    <svg class="mark-picture" viewBox="-17 -17 34 34" aria-hidden="true">
      ${markShape(name, { x: 0, y: 0 })}
    </svg>
    <span class=${word === "" ? "aloud" : `mark-word mark-word-${name}`}
      >${word || markWord(name)}</span>
  </span>`;
}

/**
 * All marks with their words, as the key to a picture.
 * @param {string[]} [kinds]
 */
export function markKey(kinds = Object.keys(WORDS)) {
  return html`<ul class="mark-key">${kinds.map((kind) => html`<li>${mark(kind)}</li>`)}</ul>`;
}
