// @ts-check
/**
 * The second tap of a double tap, or of somebody who waited too long, is no answer to what the first one brought:
 * buttons that have only just come under the finger, where the last screen had its own, wait until it is over.
 */

/** A finger taps twice within this time. Common practice, no source. */
const DOUBLE_TAP_MS = 250;
/** Nobody can have seen sooner what was painted, and answer it. Common practice, no source. */
const SEEN_MS = 150;

let tappedAt = -Infinity;
let tapped = false;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let ends;

/** @param {HTMLElement} root */
export function watchTaps(root) {
  root.addEventListener('click', () => {
    tappedAt = performance.now();
    tapped = true;
  }, true);
}

/**
 * Other buttons than before stand on the screen. Where no tap brought them nothing waits.
 * @param {HTMLElement} root
 */
export function holdSecondTap(root) {
  if (!tapped && !ends) return;
  tapped = false;
  root.toggleAttribute('data-came', true);
  // A slow phone paints long after the tap: what came in between stands in line behind the paint.
  requestAnimationFrame(() => {
    clearTimeout(ends);
    ends = setTimeout(() => {
      ends = undefined;
      root.toggleAttribute('data-came', false);
    }, Math.max(tappedAt + DOUBLE_TAP_MS - performance.now(), SEEN_MS));
  });
}
