// @ts-check
/**
 * A layout as a small drawing: the vehicle from above, a dot for each sensor.
 */

import { html, nothing, svg } from 'lit-html';

/** The outline in a box of 96 by 112: front at the top. */
const BODY = { left: 18, right: 78, top: 14, bottom: 98 };

const CAR = svg`<path class="layout-body" d="M30 14Q48 9 66 14Q78 16 78 30V84Q78 98 64 98H32Q18 98 18 84V30Q18 16 30 14z" />
  <path class="layout-glass" d="M26 38Q48 29 70 38L65 49Q48 43 31 49zM31 82H65L69 90H27z" />`;

/** Where an edge runs: from, to, both just outside the body. */
const LINES = {
  front: [BODY.left + 3, BODY.top - 4, BODY.right - 3, BODY.top - 4],
  rear: [BODY.left + 3, BODY.bottom + 4, BODY.right - 3, BODY.bottom + 4],
  left: [BODY.left - 5, BODY.top + 10, BODY.left - 5, BODY.bottom - 10],
  right: [BODY.right + 5, BODY.top + 10, BODY.right + 5, BODY.bottom - 10],
};

/**
 * @param {Array<{edge: string, x?: number, y?: number}>} positions  none is drawn as places to be named
 * @param {'vehicle' | 'engine'} [outline]  of positions that have a place
 */
export function layoutTile(positions, outline = 'vehicle') {
  if (positions[0]?.x !== undefined) return planTile(positions, outline);
  const edges = Object.keys(LINES).map((edge) => ({
    edge,
    count: positions.filter((position) => position.edge === edge).length,
  }));
  return html`<svg class="layout-tile" viewBox="0 0 96 112" aria-hidden="true">
    ${CAR}
    ${edges.map(({ edge, count }) => dots(/** @type {keyof typeof LINES} */ (edge), count))}
    ${positions.length ? nothing : svg`<path class="layout-own" d="M48 54v20M38 64h20" />`}
  </svg>`;
}

/**
 * @param {Array<{x?: number, y?: number}>} positions
 * @param {'vehicle' | 'engine'} outline
 */
function planTile(positions, outline) {
  const isEngine = outline === 'engine';
  const [left, top, width, height] = isEngine ? [10, 34, 76, 42] : [18, 14, 60, 84];
  return html`<svg class="layout-tile" viewBox="0 0 96 112" aria-hidden="true">
    ${isEngine ? svg`<rect class="layout-body" x=${left} y=${top} width=${width} height=${height} rx="6" />` : CAR}
    ${positions.map(
      ({ x = 0, y = 0 }) => svg`<circle class="layout-dot" cx=${left + (width * x) / 1000} cy=${top + (height * y) / 1000} r="5" />`,
    )}
  </svg>`;
}

/**
 * @param {keyof typeof LINES} edge
 * @param {number} count
 */
function dots(edge, count) {
  const [x1, y1, x2, y2] = LINES[edge];
  return Array.from({ length: count }, (_, n) => {
    const along = (n + 0.5) / count;
    return svg`<circle class="layout-dot" cx=${x1 + (x2 - x1) * along} cy=${y1 + (y2 - y1) * along} r="4" />`;
  });
}
