// @ts-check
/**
 * Keeps the screen lit while a job is on it: hands in gloves cannot wake a phone between two steps.
 *
 * An extra: a browser that has no such lock, or refuses it, goes on without. The lock ends by itself whenever
 * the page is hidden, so it is asked for again when the page is seen.
 */

let wanted = false;
/** @type {WakeLockSentinel | null} */
let lock = null;
/** @type {Promise<void>} */
let queue = Promise.resolve();

/**
 * Keep the screen lit from now on, or let it go dark again.
 * @param {boolean} want
 */
export function keepAwake(want) {
  if (want === wanted) return;
  wanted = want;
  if (want) document.addEventListener('visibilitychange', look);
  else document.removeEventListener('visibilitychange', look);
  look();
}

/** One request at a time, or a lock that nobody knows of would stay. */
function look() {
  queue = queue.then(async () => {
    if (!wanted) {
      await lock?.release().catch(() => undefined);
      lock = null;
    } else if (document.visibilityState === 'visible' && (!lock || lock.released)) {
      lock = (await navigator.wakeLock?.request('screen').catch(() => null)) ?? null;
    }
  });
}
