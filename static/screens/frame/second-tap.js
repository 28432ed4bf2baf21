// @ts-check
/**
 * The second tap of a double tap is no answer to what the first one brought: buttons that have only just come
 * under the finger, where the last screen had its own, wait until it is over.
 */

/** A finger taps twice within this time. Common practice, no source. */
const DOUBLE_TAP_MS = 250;

let tappedAt = -Infinity;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let ends;

/** @param {HTMLElement} root */
export function watchTaps(root) {
  root.addEventListener('click', () => (tappedAt = performance.now()), true);
}

/**
 * Other buttons than before stand on the screen.
 * @param {HTMLElement} root
 */
export function holdSecondTap(root) {
  const left = tappedAt + DOUBLE_TAP_MS - performance.now();
  if (left <= 0) return;
  root.toggleAttribute('data-came', true);
  clearTimeout(ends);
  ends = setTimeout(() => root.toggleAttribute('data-came', false), left);
}
