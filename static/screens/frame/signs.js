// @ts-check
/**
 * Keeps signs that nobody sees visible in all that is drawn, whoever draws it. What is recorded stays as it was
 * typed, so it is done to the texts on the page: one that lit-html changes comes by here again.
 */

import { visible } from '../../words/visible.js';

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
  const shown = visible(text.data);
  if (shown !== text.data) text.data = shown;
}
