// @ts-check
/**
 * The trail: which unit sat where in each test, and where the fault went.
 *
 * Tests run from left to right, positions from top to bottom, one line per unit. A broad band
 * joins the faults from test to test: where it runs along with the thick line, the fault has
 * followed the suspect; where it goes straight on while the thick line leaves, it has stayed.
 */
import { html, nothing, svg } from "lit-html";

import { withCodes } from "./code.js";
import { markShape, markWord } from "./marks.js";
import { HEAD, NEAR, step, trailGeometry, trailPieces, UNITS_PER_REM, WIDE } from "./trail-geometry.js";
import { moreTests } from "./trail-more.js";
import { rowsThatMatter } from "./trail-rows.js";
import { say } from "../words/words.js";

/** @typedef {import("./trail-geometry.js").TrailView} TrailView */

const LETTERS_IN_A_HEAD = 9;
/** So many suspects differ by their line; a further one begins anew, and has its code. */
const LINES = 3;
/** Rows beside a verdict that can have their names; more are a picture alone. */
const NAMED_SMALL = 2;
/** How much wider than high a small picture is drawn. */
const SMALL_SHAPE = 2.8;

/**
 * A test's name on at most two lines.
 * @param {string} label
 */
function headLines(label) {
  const lines = [""];
  for (const word of label.split(" ")) {
    const last = lines.length - 1;
    const longer = lines[last] ? `${lines[last]} ${word}` : word;
    if (longer.length <= LETTERS_IN_A_HEAD || !lines[last]) {
      lines[last] = longer;
    } else {
      lines.push(word);
    }
  }
  return lines.slice(0, 2);
}

/**
 * @param {TrailView["tests"][number]} test
 * @param {number} x
 * @param {number} bottom
 */
function column(test, x, bottom) {
  const words = headLines(test.label || say("shapes-test", { number: test.n }));
  if (!test.counted) {
    words.splice(1, 1, markWord("aside"));
  }
  return svg`<g class=${test.counted ? "trail-test" : "trail-test trail-aside"}>
    ${test.counted ? nothing : svg`<rect class="trail-aside-ground" x=${x - 34} y=${HEAD - 4}
      width="68" height=${bottom - HEAD + 2} rx="8" />`}
    <path class="trail-rule" d="M${x} ${HEAD - 4}V${bottom - 4}" />
    ${words.map((word, n) => svg`<text class=${n ? "trail-head trail-head-more" : "trail-head"}
      x=${x} y=${(words.length > 1 ? 15 : 26) + n * 17} text-anchor="middle">${word}</text>`)}
  </g>`;
}

/** @param {ReturnType<typeof trailGeometry>["lines"][number]} line */
function linePath(line) {
  if (line.places.length === 1) {
    const { x, y } = line.places[0];
    return `M${x - 26} ${y}H${x + 26}`;
  }
  return line.places.slice(1).map((place, n) => step(line.places[n], place)).join("");
}

/** @param {ReturnType<typeof trailGeometry>["lines"][number]} line */
function readings(line) {
  return line.places.map((place) => svg`
    ${place.position === null
      ? svg`<circle class="trail-hand" cx=${place.x} cy=${place.y} r="7" />`
      : markShape(place.mark, { x: place.x, y: place.y, size: 32 })}
    ${place.named && line.shown
      ? svg`<text class=${line.suspect ? "trail-code trail-code-suspect" : "trail-code"} x=${place.x}
          y=${place.y + (place.position === null ? 22 : 32)} text-anchor="middle">${line.shown}</text>`
      : nothing}`);
}

/** @param {TrailView["tests"][number]} test */
function testWords({ label, n, counted }) {
  const test = label || say("shapes-test", { number: n });
  return counted ? test : say("shapes-test-aside", { test });
}

/**
 * The same facts as a table, for those who hear the screen.
 * @param {TrailView} view
 */
function aloud(view) {
  /** @param {string} position @param {number} test */
  const said = (position, test) => {
    for (const line of view.lines) {
      const point = line.points.find((one) => one.test === test && one.position === position);
      if (point) {
        return `${line.shown} ${markWord(point.mark)}`;
      }
    }
    return markWord("empty");
  };
  // The box is what is hidden: a table would not be kept to its width.
  return html`<div class="aloud"><table>
    <tr><th>${say("shapes-position")}</th>${view.tests.map((test) => html`<th>${testWords(test)}</th>`)}</tr>
    ${view.rows.map((row) => html`<tr><th>${row.name}</th>${view.tests.map((_, n) =>
      html`<td>${said(row.position, n)}</td>`)}</tr>`)}
  </table></div>`;
}

/**
 * @param {TrailView} view
 * @param {ReturnType<typeof trailGeometry>} geometry
 * @param {string} width
 */
function picture(view, geometry, width) {
  const behind = geometry.lines.filter((line) => !line.suspect);
  const suspects = geometry.lines.filter((line) => line.suspect);
  const handTop = HEAD + view.rows.length * geometry.rowHeight - 2;
  return html`<svg class="trail-picture ${width}" viewBox="0 0 ${geometry.width} ${geometry.height}"
    width="${geometry.width / UNITS_PER_REM}rem" height="${geometry.height / UNITS_PER_REM}rem"
    aria-hidden="true">
    ${geometry.lanes ? svg`<path class="trail-hand-rule" d="M0 ${handTop}H${geometry.width}" />` : nothing}
    ${view.tests.map((test, n) => column(test, geometry.column(n), geometry.height))}
    ${geometry.faultPath.map((path) => svg`<path class="trail-band-edge" d=${path} />`)}
    ${geometry.faultPath.map((path) => svg`<path class="trail-band" d=${path} />`)}
    ${geometry.maybePaths.map((path) => svg`<path class="trail-line trail-maybe" d=${path} />`)}
    ${behind.map((line) => svg`<path class=${line.changesPlace ? "trail-line trail-moved" : "trail-line"} d=${linePath(line)} />`)}
    ${[...suspects.map(linePath), ...geometry.suspectRows].map((path, n) => svg`<path class="trail-suspect-edge" d=${path} />
      <path class="trail-line trail-suspect trail-suspect-${n % LINES}" d=${path} />`)}
    ${[...behind, ...suspects].map(readings)}
  </svg>`;
}

/** @param {TrailView} view  @param {ReturnType<typeof trailGeometry>} geometry */
function names(view, geometry) {
  const hand = Array.from({ length: geometry.lanes }, (_, n) => (n ? "" : say("shapes-in-hand")));
  return html`<ol class="trail-names" aria-hidden="true">
    ${view.rows.map((row) => html`<li class="trail-name"><span
      class=${row.suspect ? "trail-name-suspect" : nothing}>${row.name}</span></li>`)}
    ${hand.map((word) => html`<li class="trail-name trail-lane">${word}</li>`)}
  </ol>`;
}

/** The picture as wide as there is room. @param {TrailView} view  @param {ReturnType<typeof trailGeometry>} geometry */
function pictures(view, geometry) {
  return html`${view.tests.length === 2 ? picture(view, trailGeometry(view, WIDE), "trail-wide") : nothing}
    ${picture(view, geometry, "")}`;
}

/**
 * @param {TrailView} view
 * @param {boolean} [whole]  as for paper: nothing lies beyond an edge
 */
function rows(view, whole = false) {
  const geometry = trailGeometry(view);
  return html`<div class="trail-rows ${geometry.tall ? "trail-tall" : ""}">
    ${whole ? nothing : moreTests()}
    <div class="trail-scroll" tabindex="0" role="group" aria-label=${say("shapes-trail")}>
      ${names(view, geometry)} ${pictures(view, geometry)}
    </div>
  </div>`;
}

/**
 * The trail of a job. With many positions, those where nothing was are folded away.
 * @param {TrailView} view
 * @param {{whole?: boolean}} [how]  whole: nothing is folded, as for paper
 */
export function trail(view, { whole = false } = {}) {
  const { shown, folded } = whole ? { shown: view, folded: null } : rowsThatMatter(view);
  return html`<figure class="trail">
    ${aloud(view)} ${rows(shown, whole)}
    ${folded
      ? html`<details class="more trail-folded"><summary>${say("shapes-trail-folded", { count: folded.rows.length })}</summary>
          ${rows(folded)}</details>`
      : nothing}
    ${view.mixed_words ? html`<figcaption class="trail-mixed">${withCodes(view.mixed_words)}</figcaption>` : nothing}
  </figure>`;
}

/**
 * A trail beside its verdict: whether a line went along or a row stayed is seen at a glance. Only the rows that
 * tell something, with their names where there are few.
 * @param {TrailView} view
 */
export function trailSmall(view) {
  const { shown } = rowsThatMatter(view, NAMED_SMALL);
  const geometry = trailGeometry(shown);
  if (shown.rows.length <= NAMED_SMALL && shown.tests.length <= 2) {
    return html`<span class="trail trail-named ${geometry.tall ? "trail-tall" : ""}" aria-hidden="true">
      <span class="trail-scroll">${names(shown, geometry)} ${pictures(shown, geometry)}</span>
    </span>`;
  }
  const apart = (geometry.height * SMALL_SHAPE) / Math.max(1, shown.tests.length - 1);
  return html`<span class="trail trail-small" aria-hidden="true">
    ${picture(shown, trailGeometry(shown, Math.max(NEAR, apart)), "")}
  </span>`;
}

/**
 * A trail as paper takes it: nothing scrolls there, so it goes on below in pieces.
 * @param {TrailView} view
 * @param {number} most   tests beside each other
 */
export function trailOnPaper(view, most) {
  return html`<div class="trail-pieces">${trailPieces(view, most).map((piece) => trail(piece, { whole: true }))}</div>`;
}

/**
 * Scrolls a trail to its newest test, once it stands on the page.
 * @param {ParentNode} page
 */
export function showNewest(page) {
  for (const box of page.querySelectorAll(".trail-scroll")) {
    box.scrollLeft = box.scrollWidth;
  }
}
