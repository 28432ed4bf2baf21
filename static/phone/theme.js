// @ts-check
/**
 * Light or dark: as the phone has it, or as the person chose.
 */

import { ownName } from '../place.js';

const KEY = ownName('swaptrail.theme');

/** @typedef {'phone' | 'light' | 'dark'} Theme */

/** What was chosen on this phone; the phone's own where nothing was. @returns {Theme} */
export function chosenTheme() {
  try {
    const kept = localStorage.getItem(KEY);
    return kept === 'light' || kept === 'dark' ? kept : 'phone';
  } catch {
    return 'phone';
  }
}

/** Keep what is chosen, and wear it. @param {Theme} theme */
export function chooseTheme(theme) {
  try {
    if (theme === 'phone') localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, theme);
  } catch {
    // Without storage it holds until the page is closed.
  }
  applyTheme(theme);
}

/** Wear it until the page is closed. @param {Theme} [theme] */
export function applyTheme(theme = chosenTheme()) {
  if (theme === 'phone') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
}
