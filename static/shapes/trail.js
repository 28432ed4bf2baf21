// @ts-check
/**
 * The trail: which unit sat where in each test, and where the fault went.
 *
 * Tests run from left to right, positions from top to bottom, one line per unit. A broad band
 * joins the faults from test to test: where it runs along with the thick line, the fault has
 * followed the suspect; where it goes straight on while the thick line leaves, it has stayed.
 */
import { html, nothing, svg } from "lit-html";

import { markShape, markWord } from "./marks.js";
import { HEAD, step, trailGeometry, trailPieces, UNITS_PER_REM, WIDE } from "./trail-geometry.js";
import { say } from "../words/words.js";

/** @typedef {import("./trail-geometry.js").TrailView} TrailView */

const LETTERS_IN_A_HEAD = 9;

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
function lineKind(line) {
  if (line.suspect) {
    return "trail-line trail-suspect";
  }
  return line.changesPlace ? "trail-line trail-moved" : "trail-line";
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
    ${behind.map((line) => svg`<path class=${lineKind(line)} d=${linePath(line)} />`)}
    ${suspects.map((line) => svg`<path class="trail-suspect-edge" d=${linePath(line)} />
      <path class=${lineKind(line)} d=${linePath(line)} />`)}
    ${geometry.suspectRows.map((path) => svg`<path class="trail-suspect-edge" d=${path} />
      <path class="trail-line trail-suspect" d=${path} />`)}
    ${[...behind, ...suspects].map(readings)}
  </svg>`;
}

/**
 * The trail of a job.
 * @param {TrailView} view
 */
export function trail(view) {
  const geometry = trailGeometry(view);
  const hand = Array.from({ length: geometry.lanes }, (_, n) => (n ? "" : say("shapes-in-hand")));
  return html`<figure class="trail ${geometry.tall ? "trail-tall" : ""}">
    ${aloud(view)}
    <div class="trail-scroll" tabindex="0" role="group" aria-label=${say("shapes-trail")}>
      <ol class="trail-names" aria-hidden="true">
        ${view.rows.map((row) => html`<li class="trail-name"><span
          class=${row.suspect ? "trail-name-suspect" : nothing}>${row.name}</span></li>`)}
        ${hand.map((word) => html`<li class="trail-name trail-lane">${word}</li>`)}
      </ol>
      ${view.tests.length === 2 ? picture(view, trailGeometry(view, WIDE), "trail-wide") : nothing}
      ${picture(view, geometry, "")}
    </div>
  </figure>`;
}

/**
 * A trail as a small picture, without names: whether a line went along or a row stayed is seen at a glance.
 * @param {TrailView} view
 */
export function trailSmall(view) {
  return html`<span class="trail trail-small" aria-hidden="true">${picture(view, trailGeometry(view), "")}</span>`;
}

/**
 * A trail as paper takes it: nothing scrolls there, so it goes on below in pieces.
 * @param {TrailView} view
 * @param {number} most   tests beside each other
 */
export function trailOnPaper(view, most) {
  return html`<div class="trail-pieces">${trailPieces(view, most).map((piece) => trail(piece))}</div>`;
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
