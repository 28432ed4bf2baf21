// @ts-check
/**
 * Our own line icons, one hand and one stroke: cautions, and the few signs that buttons need.
 *
 * An icon never stands for a word: it is hidden from reading aloud unless it gets a label.
 */
import { html, nothing, svg } from "lit-html";

/** Paths in a box of 32, drawn with a round stroke of 2.6. @type {Record<string, unknown>} */
const DRAWINGS = {
  // Cautions
  ground: svg`<circle cx="12.5" cy="15" r="9.5" /><circle cx="12.5" cy="15" r="3" /><path d="M3 27h26M18.5 26.5h9.5l-1-10z" />`,
  reverse: svg`<path d="M3 27.5h11.5l8.5-8-4-4.5-6 4.5H4.5z" /><path d="m18 9.5 10 10.5M23 14.5 28 4M6 13.5V5m-3 3 3-3 3 3" />`,
  key_off: svg`<circle cx="9" cy="22" r="5.5" /><path d="m13 18 12-12M21 10l4 4M5 5l22 22" />`,
  stand: svg`<path d="M4 7h24M16 7v6M12.5 13h7M13.5 13 7 27M18.5 13 25 27M4.5 27h5M22.5 27h5M10.5 20h11" />`,
  hot: svg`<path d="M4 26h24M4 21h17a7 7 0 0 0 7-0M10 16c-3-3 3-5 0-9M17 16c-3-3 3-5 0-9M24 16c-3-3 3-5 0-9" />`,
  airbag: svg`<circle cx="21" cy="12" r="7.5" /><circle cx="9" cy="7.5" r="3.2" /><path d="M9 14v7h8l3 7M5 14v13h8" />`,
  battery: svg`<rect x="3.5" y="10" width="25" height="16" rx="2" /><path d="M8 10V6h4v4M20 10V6h4v4M8 18h5M19.5 18h5M22 15.5v5" />`,
  aid: svg`<path d="M3 14c4-6 8-8.5 13-8.5S25 8 29 14c-4 6-8 8.5-13 8.5S7 20 3 14z" /><circle cx="16" cy="14" r="4" /><path d="M8 28h16" />`,
  local: svg`<path d="M7 4h13l6 6v18H7zM19 4v7h7M12 17h9M12 22.5h9" />`,
  caution: svg`<path d="M16 4 29.5 27.5H2.5z" /><path d="M16 12.5v7" /><circle class="icon-full" cx="16" cy="23.5" r="1.7" />`,
  // Doing
  camera: svg`<path d="M4 10h5l2.5-4h9L23 10h5v16H4z" /><circle cx="16" cy="17.5" r="5" />`,
  scan: svg`<path d="M4 11V4h7M21 4h7v7M28 21v7h-7M11 28H4v-7M4 16h24" />`,
  torch: svg`<path d="M10 4h12v5l-3 4v15h-6V13l-3-4zM10 9h12M16 17v3" />`,
  keys: svg`<rect x="3" y="8" width="26" height="17" rx="2" /><path d="M8 13.5h.1M13.4 13.5h.1M18.8 13.5h.1M24 13.5h.1M10 20h12" />`,
  swap: svg`<path d="M5 10h21M20 4l6 6-6 6M27 22H6M12 16l-6 6 6 6" />`,
  out: svg`<path d="M16 4v16M9.5 10.5 16 4l6.5 6.5M4 20v8h24v-8" />`,
  in: svg`<path d="M16 4v16M9.5 13.5 16 20l6.5-6.5M4 20v8h24v-8" />`,
  label: svg`<path d="M4 16 14 6h14v20H14z" /><circle cx="13" cy="16" r="1.6" /><path d="M18.5 13h5M18.5 19h5" />`,
  sound: svg`<path d="M4 12v8h5l7 6V6l-7 6zM21 11.5c3 2.5 3 6.5 0 9M24.5 7.5c5.5 5 5.5 12 0 17" />`,
  print: svg`<path d="M9 12V4h14v8M9 24H4V12h24v12h-5M9 19h14v9H9z" />`,
  send: svg`<path d="M16 27V6M8 14l8-8 8 8M5 28.5h22" />`,
  undo: svg`<path d="M11 5 4.5 11.5 11 18M5 11.5h14a8 8 0 0 1 0 16h-7" />`,
  // Saying
  tick: svg`<path d="m5 17 7.5 8L27 7" />`,
  cross: svg`<path d="m7 7 18 18M25 7 7 25" />`,
  stop: svg`<path d="M11 3h10l8 8v10l-8 8H11l-8-8V11z" /><path d="M10 16h12" />`,
  ask: svg`<path d="M10.5 11.5a5.5 5.5 0 1 1 8.5 4.6c-2 1.4-3 2.4-3 4.4" /><circle class="icon-full" cx="16" cy="26" r="1.8" />`,
  back: svg`<path d="M20 5 9 16l11 11" />`,
  forward: svg`<path d="m12 5 11 11-11 11" />`,
  plus: svg`<path d="M16 5v22M5 16h22" />`,
  minus: svg`<path d="M5 16h22" />`,
  more: svg`<circle class="icon-full" cx="6.5" cy="16" r="2.4" /><circle class="icon-full" cx="16" cy="16" r="2.4" /><circle class="icon-full" cx="25.5" cy="16" r="2.4" />`,
  list: svg`<path d="M11 8h17M11 16h17M11 24h17M4 8h1M4 16h1M4 24h1" />`,
  clock: svg`<circle cx="16" cy="16" r="12" /><path d="M16 9v7l5 4" />`,
  person: svg`<circle cx="16" cy="10" r="5.5" /><path d="M5 28c1-7 5-9.5 11-9.5S26 21 27 28" />`,
  car: svg`<path d="M3 23v-7l4-2 3-7h12l3 7 4 2v7zM7 14h18" /><circle cx="9.5" cy="24" r="3" /><circle cx="22.5" cy="24" r="3" />`,
  help: svg`<path d="M16 8.5C13 6 9 5 3.5 5v19.5c5.5 0 9.5 1 12.5 3.5 3-2.5 7-3.5 12.5-3.5V5C23 5 19 6 16 8.5zM16 8.5V28" />`,
  counter: svg`<path d="M3 13h26M5 13v14h22V13M13 13V6h6v7" />`,
};

/** Names an icon can be asked for by. */
export const ICON_NAMES = Object.freeze(Object.keys(DRAWINGS));

/**
 * @param {string} name one of ICON_NAMES; anything else is drawn as the plain caution sign
 * @param {{size?: "small"|"large", label?: string}} [options]
 */
export function icon(name, { size = "small", label = "" } = {}) {
  const drawing = Object.hasOwn(DRAWINGS, name) ? DRAWINGS[name] : DRAWINGS.caution;
  return html`<svg class="icon icon-${size}" viewBox="0 0 32 32" role=${label ? "img" : nothing}
    aria-hidden=${label ? nothing : "true"} aria-label=${label || nothing}>${drawing}</svg>`;
}
