// @ts-check
/**
 * The circuit of one position as a chain: sensor, plug, wire, bumper plug, control unit, and what others share.
 *
 * Each part has a number and a mark, which tells its state by shape; where the probes go is drawn beneath.
 */

import { html, nothing, svg } from 'lit-html';

import { markShape } from './marks.js';

/** @typedef {import('../core/views.js').HarnessView} HarnessView */
/** @typedef {{x: number, w: number, aside?: boolean}} Place  `aside` of the line */

/** One unit is a pixel at 320 px of screen. */
const WIDE = 288;
const HIGH = 162;
const SENSOR = 34;
/** How wide each part is drawn; one that is not known is drawn as a wire. @type {Record<string, number>} */
const WIDTHS = { pins: 24, connector: 30, wire: 40, splice: 34, loom: 40, 'control-plug': 34, channel: 52 };
/** Where the wires run. @type {Record<string, number>} */
const LINES = { signal: 62, supply: 78, ground: 94 };
const [TOP, BOTTOM] = [50, 106];
/** Below the chain: what is not a part of it, for the second probe. */
const ASIDE = { x: 182, y: 138 };
const ENDS = new Set(['ground', 'neighbour']);

/** The mark of each state: the shapes are those of a test. */
export const STATE_MARKS = /** @type {const} */ ({ sound: 'clean', possible: 'untested', named: 'fault' });

/**
 * @param {HarnessView} view
 * @param {string} said   what the picture shows, read aloud
 */
export function harness({ segments, next, pins }, said) {
  const places = placesOf(segments);
  const branch = segments.find((each) => each.branch);
  const splice = places.splice ?? { x: WIDE / 2, w: 0 };
  return html`<svg class="harness" viewBox="0 0 ${WIDE} ${HIGH}" role="img" aria-label=${said}>
    ${wires(places, splice, Boolean(branch))} ${sensor()}
    ${segments.map(({ id, branch: aside }) => (aside ? nothing : body(id, places[id], pins)))}
    ${segments.map(({ id, state }, n) => numbered(places[id], n + 1, state))} ${next ? probes(next, places) : nothing}
  </svg>`;
}

/** Where each part lies, by its id. @param {HarnessView['segments']} segments @returns {Record<string, Place>} */
function placesOf(segments) {
  const chain = segments.filter((each) => !each.branch);
  const widthOf = (/** @type {{id: string}} */ { id }) => WIDTHS[id] ?? WIDTHS.wire;
  const all = chain.reduce((sum, each) => sum + widthOf(each), 0);
  /** @type {Record<string, Place>} */
  const places = {};
  let x = SENSOR;
  for (const each of chain) {
    const w = (widthOf(each) * (WIDE - SENSOR)) / all;
    places[each.id] = { x, w };
    x += w;
  }
  for (const each of segments) {
    if (each.branch) places[each.id] = { ...(places.splice ?? { x: WIDE / 2, w: 0 }), aside: true };
  }
  return places;
}

const middle = (/** @type {Place} */ { x, w }) => x + w / 2;

/** Three wires to the bumper plug, the signal alone from there on; supply and ground leave for the others. */
function wires(/** @type {Record<string, Place>} */ places, /** @type {Place} */ splice, /** @type {boolean} */ branches) {
  const at = middle(splice);
  const end = places.channel ? places.channel.x + 10 : WIDE - 8;
  const far = branches ? at : end;
  return svg`<path class="harness-wire" d=${`M${SENSOR} ${LINES.signal}H${end}`} />
    <path class="harness-wire" d=${`M${SENSOR} ${LINES.supply}H${far + (branches ? 5 : 0)}${branches ? `V${HIGH - 8}` : ''}`} />
    <path class="harness-wire" d=${`M${SENSOR} ${LINES.ground}H${far - (branches ? 5 : 0)}${branches ? `V${HIGH - 8}` : ''}`} />`;
}

/** The three wires as they are drawn above each other, one of them thick. @param {string} line */
export function wireShape(line) {
  return html`<svg class="wire-shape" viewBox="0 0 36 24" aria-hidden="true">
    ${Object.keys(LINES).map((each, n) => svg`<path class=${each === line ? 'harness-pin' : 'harness-wire'} d=${`M3 ${4 + 8 * n}h30`} />`)}
  </svg>`;
}

function sensor() {
  return svg`<path class="harness-body" d="M${SENSOR} ${TOP + 4}H18a16 24 0 0 0 0 48H${SENSOR}z" />
    <path class="harness-line" d="M9 ${TOP + 12}a12 20 0 0 0 0 32" />`;
}

/**
 * @param {string} id
 * @param {Place} place
 * @param {string} pins  as they were typed
 */
function body(id, { x, w }, pins) {
  const high = BOTTOM - TOP;
  switch (id) {
    case 'pins':
      return pinsOf(pins).map(
        (number, n) => svg`<path class="harness-pin" d=${`M${x} ${Object.values(LINES)[n]}h${w - 3}`} />
          ${number ? svg`<text class="harness-pin-number" x=${x - 9} y=${Object.values(LINES)[n] + 5}>${number}</text>` : nothing}`,
      );
    case 'connector':
    case 'control-plug':
      return svg`<rect class="harness-body" x=${x + 1} y=${TOP} width=${w - 2} height=${high} rx="4" />
        <path class="harness-line" d=${`M${x + 6} ${TOP}v-5h${w - 12}v5M${x + w / 2} ${TOP + 6}v${high - 12}`} />`;
    case 'splice':
      return svg`<rect class="harness-body" x=${x + 1} y=${TOP} width=${w / 2 - 2} height=${high} rx="3" />
        <rect class="harness-body" x=${x + w / 2 + 1} y=${TOP} width=${w / 2 - 2} height=${high} rx="3" />`;
    case 'channel':
      return svg`<rect class="harness-body" x=${x + 1} y=${TOP - 4} width=${w - 3} height=${high + 10} rx="3" />
        <rect class="harness-slot" x=${x + 6} y=${LINES.signal - 7} width=${w - 14} height="14" rx="2" />
        <path class="harness-line" d=${`M${x + 8} ${LINES.supply}h${w - 18}M${x + 8} ${LINES.ground}h${w - 18}`} />`;
    default:
      return nothing;
  }
}

/** The numbers of up to three pins, in the order in which they were typed. @param {string} pins */
function pinsOf(pins) {
  const typed = pins.split(/[,;/]/).map((each) => each.trim().split(/\s+/)[0]);
  return [0, 1, 2].map((n) => (typed.length <= 3 && (typed[n] ?? '').length <= 2 ? (typed[n] ?? '') : ''));
}

/**
 * @param {Place} place
 * @param {number} number
 * @param {'sound' | 'possible' | 'named'} state
 */
function numbered(place, number, state) {
  const at = middle(place);
  // Beside the wires that lead down to it, else above the part.
  const [x, y, textX, textY] = place.aside ? [at - 36, HIGH - 20, at - 56, HIGH - 15] : [at, 31, at, 14];
  return svg`<g data-segment=${number} data-state=${state}>
    <text class="harness-number" x=${textX} y=${textY}>${number}</text>
    ${markShape(STATE_MARKS[state], { x, y, size: 23 })}
  </g>`;
}

/**
 * Two probes and the wire between them, or a glass over what is looked at.
 * @param {NonNullable<HarnessView['next']>} next
 * @param {Record<string, Place>} places
 */
function probes({ from, to, line }, places) {
  const first = places[from];
  if (!first) return nothing;
  if (!line) return glass(first);
  const y = LINES[line];
  const last = places[to];
  const end = last && !last.aside ? last.x + last.w : first.x + first.w;
  return svg`<path class="harness-measured" d=${`M${first.x} ${y}H${end}`} />
    ${probe(first.x + 2, y)} ${ENDS.has(to) ? svg`${aside(to)}${probe(ASIDE.x, ASIDE.y, -1)}` : probe(end - 2, y)}`;
}

/** Its tip is at (x, y); it comes from below, or from above. @param {number} x @param {number} y @param {1 | -1} from */
function probe(x, y, from = 1) {
  return svg`<g class="harness-probe" transform=${`translate(${x} ${y}) scale(1 ${from})`}><path d="M0 0l5 16h-10z" /><rect x="-5" y="16" width="10" height="28" rx="4" /></g>`;
}

/** What the second probe touches besides the chain: bare metal, the wire beside it. @param {string} what */
function aside(what) {
  const { x, y } = ASIDE;
  if (what === 'neighbour') return svg`<path class="harness-wire" d=${`M${x - 16} ${y}h76`} />`;
  return svg`<path class="harness-line" d=${`M${x - 16} ${y}h52M${x - 12} ${y + 8}l6-7M${x} ${y + 8}l6-7M${x + 12} ${y + 8}l6-7M${x + 24} ${y + 8}l6-7`} />`;
}

/** @param {Place} place */
function glass(place) {
  const [x, y, r] = place.aside ? [middle(place), HIGH - 26, 17] : [middle(place), (TOP + BOTTOM) / 2, 33];
  return svg`<g class="harness-glass"><circle cx=${x} cy=${y} r=${r} /><path d=${`M${x + r * 0.7} ${y + r * 0.7}l14 16`} /></g>`;
}
