// @ts-check
/**
 * Keeps signs that nobody sees visible in all that is drawn, whoever draws it. What is recorded stays as it was
 * typed, so it is done to the texts on the page: one that lit-html changes comes by here again.
 */

import { visible } from '../../words/visible.js';

/** Hebrew, Arabic and their like, a name of several words; once drawn, with the marks that keep it apart. */
const RIGHT_TO_LEFT = /\u2068?([\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc](?:[ \u200c]?[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc])*)\u2069?/g;

/** @param {HTMLElement} root */
export function showSigns(root) {
  new MutationObserver((changes) => {
    for (const { target, addedNodes } of changes) {
      if (target instanceof Text) show(target);
      for (const added of addedNodes) {
        const texts = document.createTreeWalker(added, NodeFilter.SHOW_TEXT);
        if (added instanceof Text) show(added);
        while (texts.nextNode()) show(/** @type {Text} */ (texts.currentNode));
      }
    }
  }).observe(root, { characterData: true, childList: true, subtree: true });
}

/** @param {Text} text */
function show(text) {
  // Else a figure behind such a name is set in the midst of it.
  const shown = visible(text.data.replace(RIGHT_TO_LEFT, '$1')).replace(RIGHT_TO_LEFT, '\u2068$1\u2069');
  if (shown !== text.data) text.data = shown;
}
