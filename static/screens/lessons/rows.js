// @ts-check
/**
 * Figures as rows: each with the bar of where it may lie, and the jobs behind it a tap away.
 *
 * Colours stand in the drawing itself, for these screens are read late and the style sheet is not.
 */

import { html, nothing, svg } from 'lit-html';

import { sentence } from '../frame/sentence.js';
import { linkTo, to } from '../frame/router.js';
import { dayOnPaper } from '../frame/when.js';

/**
 * @typedef {{low: number, value: number, high: number, mark: number, most: number}} Band
 * @typedef {{words: string, figure: string, note: string, jobs: number[], band: Band | null}} FigureRow
 * @typedef {[string, string, number]} JobLine  id, name of its vehicle, when it was closed
 */

const WIDTH = 280;
const EDGE = 8;

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} section
 * @param {FigureRow[]} rows
 * @param {JobLine[]} jobs
 */
export function figureRows(ctx, section, rows, jobs) {
  return html`<ul class="list">
    ${rows.map(
      ({ words, figure, note, jobs: behind, band }, n) => html`<li class="list-row">
        <span class="list-main">
          <span class="list-title">${words}</span>
          <strong>${sentence(figure)}</strong>
          ${band ? bar(band) : nothing}
          ${note ? html`<span class="list-note">${sentence(note)}</span>` : nothing}
          ${behind.length ? jobsBehind(ctx, `${section}/${n}`, behind, jobs) : nothing}
        </span>
      </li>`,
    )}
  </ul>`;
}

/**
 * The list is only made once it is open: there may be a thousand.
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} key
 * @param {number[]} behind
 * @param {JobLine[]} jobs
 */
function jobsBehind(ctx, key, behind, jobs) {
  const open = ctx.form.open === key;
  const toggled = (/** @type {Event} */ event) => {
    const isOpen = /** @type {HTMLDetailsElement} */ (event.target).open;
    if (isOpen === open) return;
    ctx.form.open = isOpen ? key : '';
    ctx.redraw();
  };
  return html`<details class="more" .open=${open} @toggle=${toggled}>
    <summary>${ctx.data.words.behind} (${behind.length})</summary>
    ${open
      ? jobList(behind, jobs)
      : nothing}
  </details>`;
}

/**
 * @param {number[]} behind
 * @param {JobLine[]} jobs
 */
export function jobList(behind, jobs) {
  return html`<ul class="list">
    ${behind.map((number) => {
      const [id, name, closed] = jobs[number];
      return html`<li>
        <a class="list-row" href=${linkTo(to.job(id))}
          ><span class="list-main"
            ><span class="list-title">${name}</span><span class="list-note">${dayOnPaper(closed)}</span></span
          ></a
        >
      </li>`;
    })}
  </ul>`;
}

/**
 * From `low` to `high` a bar, the figure a dot, and what it stands beside a diamond.
 * @param {Band} band
 */
function bar({ low, value, high, mark, most }) {
  const at = (/** @type {number} */ x) => EDGE + (Math.min(x, most) / most) * (WIDTH - 2 * EDGE);
  return html`<svg viewBox="0 0 ${WIDTH} 26" width="100%" height="26" preserveAspectRatio="xMinYMid meet" aria-hidden="true">
    ${svg`<path d="M${EDGE} 13H${WIDTH - EDGE}" stroke="var(--line)" stroke-width="2" />
      <rect x=${at(low)} y="8" width=${Math.max(2, at(high) - at(low))} height="10" rx="3"
        fill="var(--act-ground)" stroke="var(--act)" stroke-width="2" />
      <path d="M${at(mark)} 4l6 9-6 9-6-9z" fill="var(--card)" stroke="var(--ink)" stroke-width="2" />
      <circle cx=${at(value)} cy="13" r="5" fill="var(--ink)" />`}
  </svg>`;
}
