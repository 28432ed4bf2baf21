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
import { wearLooks } from './looks.js';

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
  wearLooks();
  return html`<ul class="list figures">
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
 * What can be taken of the figures for the jobs to come, and what was.
 * @typedef {{words: string, events: import('../../log/log.js').Draft[]}} Choice
 * @typedef {{says: string, note: string, choices: Choice[], taken: Array<Choice & {says: string}>, rows: FigureRow[]}} Offer
 *
 * @param {import('../frame/context.js').Context} ctx
 * @param {Offer} offer
 * @param {() => unknown} again  look once more, when something was taken
 */
export function offered(ctx, { says, note, choices, taken }, again) {
  if (ctx.services.device.role.value === 'counter') return nothing;
  const button = (/** @type {Choice} */ { words, events }) => html`<button
    class="small-button"
    type="button"
    ?disabled=${ctx.busy}
    @click=${() => take(ctx, events, again)}
  >
    ${words}
  </button>`;
  if (!says && !choices.length && !taken.length) return nothing;
  // Paper offers nothing: there it is said what was found and what was taken.
  return html`<div class="card screen-stack ${says || taken.length ? '' : 'on-screen'}">
    ${says ? html`<p>${says}</p>` : nothing}
    ${taken.map((each) => html`<p>${each.says}</p><div class="card-actions">${button(each)}</div>`)}
    ${choices.length ? html`<p class="on-screen">${note}</p><div class="card-actions">${choices.map(button)}</div>` : nothing}
  </div>`;
}

/**
 * The server has to hear of it before it is asked again.
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../log/log.js').Draft[]} events
 * @param {() => unknown} again
 */
async function take(ctx, events, again) {
  if (!(await ctx.act(events, { job: null }))) return;
  await ctx.services.sync.now();
  await again();
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
