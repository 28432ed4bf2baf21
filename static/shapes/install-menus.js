// @ts-check
/**
 * Where the home screen is in the menus of a phone's browser, for both families: an outline with the two places
 * to tap, numbered as in the words beside it. Drawn as little like any one version as will do: they change.
 */

import { html, svg } from 'lit-html';
import { say } from '../words/words.js';

/** A sheet from below, opened by the square with an arrow. */
export function iphoneMenu() {
  return phone(
    say('phone-menu-iphone'),
    svg`
      <rect class="menu-sheet" x="26" y="52" width="228" height="148" rx="10" />
      ${otherEntry(78)}${otherEntry(178)}
      <rect class="menu-here" x="34" y="104" width="212" height="46" rx="8" />
      <text class="menu-words" x="44" y="133">${say('phone-menu-iphone-entry')}</text>
      <rect class="menu-sign" x="212" y="116" width="22" height="22" rx="5" />
      <path class="menu-sign" d="M223 121v12M217 127h12" />
      <path class="menu-bar" d="M12 212h256" />
      <circle class="menu-here" cx="140" cy="236" r="21" />
      <path class="menu-sign" d="M134 233h-5v14h22v-14h-5M140 240v-17M135 228l5-5 5 5" />
      ${number(1, 178, 236)}${number(2, 254, 104)}
    `,
  );
}

/** A list from above, opened by three dots. */
export function androidMenu() {
  return phone(
    say('phone-menu-android'),
    svg`
      <path class="menu-bar" d="M12 56h256" />
      <path class="menu-other" d="M34 34h150" />
      <circle class="menu-here" cx="238" cy="34" r="19" />
      <circle class="menu-dot" cx="238" cy="25" r="2.6" /><circle class="menu-dot" cx="238" cy="34" r="2.6" />
      <circle class="menu-dot" cx="238" cy="43" r="2.6" />
      <rect class="menu-sheet" x="44" y="66" width="212" height="152" rx="10" />
      ${otherEntry(92)}${otherEntry(190)}
      <rect class="menu-here" x="52" y="112" width="196" height="54" rx="8" />
      <text class="menu-words" x="62" y="134">${say('phone-menu-android-entry')}</text>
      <text class="menu-words" x="62" y="155">${say('phone-menu-android-or')}</text>
      ${number(1, 202, 34)}${number(2, 254, 112)}
    `,
  );
}

/**
 * @param {string} label
 * @param {unknown} drawing
 */
function phone(label, drawing) {
  return html`<svg class="menu-picture" viewBox="0 0 280 272" role="img" aria-label=${label}>
    <rect class="menu-phone" x="10" y="6" width="260" height="260" rx="22" />
    ${drawing}
  </svg>`;
}

/** @param {number} y */
function otherEntry(y) {
  return svg`<path class="menu-other" d=${`M62 ${y}h120`} />`;
}

/** @param {number} which @param {number} x @param {number} y */
function number(which, x, y) {
  return svg`<circle class="menu-number" cx=${x} cy=${y} r="13" />
    <text class="menu-figure" x=${x} y=${y + 6} text-anchor="middle">${which}</text>`;
}
