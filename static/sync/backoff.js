// @ts-check
/**
 * How long to wait before the server is asked once more: longer each time in vain, and never all phones of a
 * workshop at the same instant.
 */

const FIRST_MS = 2000;
const LAST_MS = 300_000;

/** How long to wait before the next try. @param {number} times  in a row in vain, from 1 @returns {number} milliseconds */
export function retryAfter(times) {
  return spread(Math.min(FIRST_MS * 2 ** (times - 1), LAST_MS));
}

/** About so long. @param {number} ms */
export function spread(ms) {
  return ms * (0.5 + Math.random());
}
