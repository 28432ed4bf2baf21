// @ts-check
/**
 * A QR symbol drawn from its rows of 0 and 1, dark on white in every theme: readers want it so.
 */

import { html } from 'lit-html';

const MARGIN = 4;

/**
 * @param {string[]} rows
 * @param {string} label
 */
export function qrDrawing(rows, label) {
  const side = rows.length + 2 * MARGIN;
  const dots = rows.flatMap((row, y) =>
    Array.from(row.matchAll(/1+/g), ({ 0: run, index }) => `M${index + MARGIN} ${y + MARGIN}h${run.length}v1h-${run.length}z`),
  );
  return html`<svg class="qr" viewBox="0 0 ${side} ${side}" role="img" aria-label=${label} shape-rendering="crispEdges">
    <path class="qr-ground" d="M0 0h${side}v${side}h-${side}z" />
    <path class="qr-dots" d=${dots.join('')} />
  </svg>`;
}
