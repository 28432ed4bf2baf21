// @ts-check
/**
 * The board: the vehicle, its positions, what each one read and which unit sits in it.
 *
 * Where the names fit, they stand under their marks; where they do not (many positions, a narrow
 * screen, large text), the marks are numbered and the names follow as a list. The style sheet
 * switches between the two, so that one markup serves every width and text size.
 */
import { html, nothing, svg } from "lit-html";

import { arrowShapes } from "./board-arrows.js";
import { EDGES, aroundGeometry, endGeometry, namesFitFrom, planGeometry } from "./board-geometry.js";
import { code } from "./code.js";
import { icon } from "./icons.js";
import { mark, markShape, markWord } from "./marks.js";
import { DRAWING_WIDTH, engineAbove, vehicleAbove, vehicleEnd } from "./vehicle.js";
import { say } from "../words/words.js";

/** @typedef {import("./board-geometry.js").Position} Position */
/** @typedef {import("./board-geometry.js").Spot} Spot */
/** @typedef {{kind: import("../core/views.js").BoardKind, positions: Position[]}} BoardView */
/** @typedef {import("./board-arrows.js").Arrow} Arrow */
/**
 * @typedef {{onPick?: ((position: string) => void)|null, chosen?: string|Iterable<string>,
 *   arrows?: Arrow[], quiet?: boolean | "units", folded?: boolean}} BoardOptions  `folded` keeps a list round the vehicle
 *   behind a line, and any other close together, for something else comes first; `quiet` leaves what was read, and missing labels,
 *   to those who hear the screen, but for the chosen ones; "units" the missing labels alone
 */

const FROM_ABOVE = "shapes-seen-around";
const SEEN = { rear: "shapes-seen-rear", front: "shapes-seen-front", around: FROM_ABOVE, vehicle: FROM_ABOVE, engine: FROM_ABOVE };

/** @type {Record<string, string>} */
const EDGES_SAID = {
  front: "shapes-edge-front",
  left: "shapes-edge-left",
  right: "shapes-edge-right",
  rear: "shapes-edge-rear",
};

/**
 * Where the names stand apart from the picture its marks can be tapped, too.
 * @param {Spot} spot
 * @param {boolean} chosen
 * @param {BoardOptions["onPick"]} onPick
 */
function spotShape(spot, chosen, onPick) {
  return svg`<g class="board-spot" data-position=${spot.id} @click=${onPick ? () => onPick(spot.id) : nothing}>
    <rect class="board-aim" x=${spot.x - spot.size / 2 - 3} y=${spot.y - 24} width=${spot.size + 6} height="48" />
    ${chosen ? svg`<rect class="board-ring" x=${spot.x - spot.size / 2 - 3} y=${spot.y - spot.size / 2 - 3}
      width=${spot.size + 6} height=${spot.size + 6} rx="7" />` : nothing}
    ${markShape(spot.mark, spot)}
    <text class="board-number" x=${spot.numberX} y=${spot.numberY}
      text-anchor=${spot.anchor}>${spot.number}</text>
  </g>`;
}

/**
 * One position in words: a button where it can be picked.
 * @param {Spot} spot
 * @param {boolean} chosen
 * @param {BoardOptions["onPick"]} onPick
 * @param {boolean | "units"} quiet
 */
function cell(spot, chosen, onPick, quiet) {
  const inside = html`
    <span class="board-key" aria-hidden="true">${spot.number}</span>
    <span class="board-mark" aria-hidden="true">${mark(spot.mark, { word: "" })}</span>
    <span class="board-name">${spot.name}</span>
    <span class="board-word mark-word-${spot.mark} ${quiet === true && !chosen ? "aloud" : ""}">${spot.word || markWord(spot.mark)}${
      spot.photo ? html`<span class="board-photo">${icon("camera", { label: say("shapes-photo-taken") })}</span>` : nothing}</span>
    <span class="board-unit ${quiet && !spot.unit?.shown ? "aloud" : ""}">${spot.unit ? code(spot.unit.shown) : nothing}</span>`;
  return html`<li class="board-cell">${onPick
    ? html`<button type="button" class="board-position" data-position=${spot.id}
        aria-pressed=${chosen ? "true" : "false"} @click=${() => onPick(spot.id)}>${inside}</button>`
    : html`<div class="board-position" data-position=${spot.id}
        data-chosen=${chosen ? "true" : nothing}>${inside}</div>`}</li>`;
}

/**
 * @param {BoardView} view
 * @returns {{spots: Spot[], height: number, outline: unknown}}
 */
function drawn({ kind, positions }) {
  if (kind === "rear" || kind === "front") {
    const { spots, height, bottom } = endGeometry(positions, kind);
    return { spots, height, outline: vehicleEnd(kind, bottom) };
  }
  const { spots, height, box } = kind === "around" ? aroundGeometry(positions) : planGeometry(positions, kind);
  return { spots, height, outline: kind === "engine" ? engineAbove(box) : svg`${vehicleAbove(box)}${aboveWords({ box })}` };
}

/** @param {{box: {left: number, right: number, top: number, bottom: number}}} geometry */
function aboveWords({ box }) {
  const roof = box.top + (box.bottom - box.top) * 0.3 + 54;
  const boot = box.bottom - (box.bottom - box.top) * 0.2 - 32;
  return svg`<text class="board-way" x="144" y=${roof} text-anchor="middle">${say("shapes-front")}</text>
    <path class="board-arrow" d="M144 ${roof - 15}v-12m-5 5 5-5 5 5" />
    <text class="board-way" x="144" y=${boot} text-anchor="middle">${say("shapes-rear")}</text>`;
}

/**
 * The board of a job as small as a list has it: the vehicle and its marks. What it says stands beside it.
 * @param {import("../core/views.js").SmallBoard} view
 */
export function smallBoard({ kind, positions }) {
  /** @type {Position[]} */
  const placed = positions.map((each) => ({ ...each, name: "", word: "", unit: null }));
  const { spots, height, outline } = drawn({ kind, positions: placed });
  return html`<svg class="board-small" viewBox="0 0 ${DRAWING_WIDTH} ${height}">
    ${outline} ${spots.map((spot) => markShape(spot.mark, spot))}
  </svg>`;
}

/**
 * The board of a job.
 * @param {BoardView} view
 * @param {BoardOptions} [options] `onPick` gets the id of the position that was tapped; `chosen`
 *   is one id or several
 */
export function board(view, { onPick = null, chosen = [], arrows = [], quiet = false, folded = false } = {}) {
  const picked = new Set(typeof chosen === "string" ? [chosen] : chosen);
  const around = view.kind === "around";
  const ofAnEnd = view.kind === "rear" || view.kind === "front";
  const geometry = drawn(view);
  const fit = ofAnEnd ? namesFitFrom(view.positions) : 0;
  const groups = around
    ? EDGES.map((edge) => ({ edge, spots: geometry.spots.filter((spot) => spot.edge === edge) }))
      .filter((group) => group.spots.length)
    : [{ edge: "", spots: geometry.spots }];
  // Seen from the front, the vehicle's left is on the right of the picture.
  const [first, last] = view.kind === "front" ? ["shapes-right", "shapes-left"] : ["shapes-left", "shapes-right"];
  return html`<figure class="board board-${ofAnEnd ? view.kind : "around"} ${
    fit ? `board-fit-${String(fit).replace(".", "-")}` : "board-keyed"} ${folded ? "board-folded" : ""}">
    <figcaption class="board-caption">
      ${view.kind === "engine" ? nothing : html`<span class="board-side">${say(first)}</span>`}
      <span class="board-seen">${say(SEEN[view.kind])}</span>
      ${view.kind === "engine" ? nothing : html`<span class="board-side">${say(last)}</span>`}
    </figcaption>
    <svg class="board-drawing ${fit ? "board-columns-drawing" : ""}" viewBox="0 0 ${DRAWING_WIDTH} ${geometry.height}" aria-hidden="true">
      ${geometry.outline}
      ${geometry.spots.map((spot) => spotShape(spot, picked.has(spot.id), onPick))}
      ${arrowShapes(arrows, geometry, !ofAnEnd && view.kind !== "engine")}
    </svg>
    ${folded && !ofAnEnd ? html`<details class="more board-more"><summary>${say("shapes-positions", { count: view.positions.length })}</summary>${lists()}</details>`
      : lists()}
  </figure>`;

  function lists() {
    return groups.map((group) => html`
      ${around ? html`<p class="board-edge" aria-hidden="true">${say(EDGES_SAID[group.edge])}</p>` : nothing}
      <ol class="board-list ${fit ? `board-columns board-count-${group.spots.length}` : ""}"
        aria-label=${around ? say(EDGES_SAID[group.edge]) : nothing}>${group.spots.map((spot) =>
        cell(spot, picked.has(spot.id), onPick, quiet))}</ol>`);
  }
}
