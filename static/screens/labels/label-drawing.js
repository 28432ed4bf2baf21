// @ts-check
/**
 * A page of labels as a drawing at its size on paper: the core says in printer dots what stands where, the
 * symbols are drawn in.
 */

import { svg } from 'lit-html';

import { labelModules } from '../../shapes/label-qr.js';

/** Left off at the foot, where nothing is ever printed: a page full to the last hair is broken into two. */
const SPARE_MM = 0.2;

/**
 * @typedef {object} Drawn      as the core's `label_pages` gives it; lengths in dots, or where it says so
 * @property {number} dpi
 * @property {[number, number]} paper  in 1/100 mm
 * @property {string} level
 * @property {number} dots      a module
 * @property {DrawnPage[]} pages
 *
 * @typedef {object} DrawnPage
 * @property {number[][]} boxes    x, y, width, height
 * @property {Array<[number, number, number, string, boolean, boolean, number]>} lines  x, y, size in 1/100 dots, text,
 *     centred, turned, from the middle of a letter to the next in 1/100 dots (0: as the face has it)
 * @property {Array<[string, number, number]>} symbols  text, x, y
 * @property {boolean} ruler       whether there is a bar at the foot to check the print with
 */

/**
 * @param {Drawn} drawn
 * @param {DrawnPage} page
 * @param {string} words  what it is, for those who hear the screen
 */
export function labelPage(drawn, { boxes, lines, symbols }, words) {
  const { dpi, paper, level, dots } = drawn;
  const width = paper[0] / 100;
  const height = paper[1] / 100 - SPARE_MM;
  const path = [
    ...boxes.map(([x, y, across, down]) => `M${x} ${y}h${across}v${down}h-${across}z`),
    ...symbols.map(([text, x, y]) => symbolPath(labelModules(text, level), x, y, dots)),
  ].join('');
  // The paper is no whole number of dots: a dot has to stay a dot.
  const view = [0, 0, (width * dpi) / 25.4, (height * dpi) / 25.4].join(' ');
  return svg`<svg class="label-page" xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm"
    viewBox=${view} role="img" aria-label=${words}>
    <path fill="#fff" d="M0 0h99999v99999H0z" />
    <path fill="#000" shape-rendering="crispEdges" d=${path} />
    <g class="label-codes" fill="#000" font-weight="700">${lines.map(textLine)}</g>
  </svg>`;
}

/** @param {[number, number, number, string, boolean, boolean, number]} line */
function textLine([x, y, size, text, centred, turned, pitch]) {
  const at = `translate(${x / 100} ${y / 100})${turned ? ' rotate(-90)' : ''}`;
  // Each letter where it stands: a spacing would stand behind the last one, too, and move the line off its middle.
  const along = pitch ? [...text].map((_, n) => ((n - (text.length - 1) / 2) * pitch) / 100).join(' ') : '0';
  return svg`<text transform=${at} x=${along} font-size=${size / 100}
    text-anchor=${centred ? 'middle' : 'start'}>${text}</text>`;
}

/**
 * The dark modules, those side by side as one box, so that no seam shows.
 * @param {string[]} rows
 * @param {number} left
 * @param {number} top
 * @param {number} dots
 */
function symbolPath(rows, left, top, dots) {
  return rows
    .flatMap((row, y) =>
      Array.from(row.matchAll(/1+/g), ({ 0: run, index }) => {
        const across = run.length * dots;
        return `M${left + index * dots} ${top + y * dots}h${across}v${dots}h-${across}z`;
      }),
    )
    .join('');
}
