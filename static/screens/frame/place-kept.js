// @ts-check
/**
 * Where somebody was on a screen: how far it was scrolled, what was searched for. It is kept in the entry of the
 * browser's history, so that Back comes to the same place, also when the phone has ended the page meanwhile.
 */

/**
 * @typedef {object} Place
 * @property {number} [top]     how far the body was scrolled
 * @property {string} [screen]  what stood there then: a job goes on to another step at the same address
 * @property {string} [text]    what is searched for
 * @property {string} [stands]  what is shown alone
 * @property {number} [most]    rows
 */

/** Browsers allow so many changes of the history a second and no more. */
const CALM_MS = 300;

/** @type {Place} */
let here = {};
let timer = 0;
/** What stands there now. */
let shown = '';

/** The place in the present entry. */
export const placeKept = () => here;

/** @param {Place} change */
export function keepPlace(change) {
  here = { ...here, ...change };
  clearTimeout(timer);
  timer = setTimeout(write, CALM_MS);
}

/** Another entry of the history is the present one. */
export function enterPlace() {
  clearTimeout(timer);
  timer = 0;
  here = history.state?.place ?? {};
}

/** Note the place before whatever a tap leads to, or before the page ends. */
export function watchPlace() {
  addEventListener('click', leave, true);
  addEventListener('pagehide', leave);
}

/** Another screen stands there. @param {string} screen  tells it from others */
export function showsScreen(screen) {
  shown = screen;
}

/** Scroll the body to where it was left, if what was read there still stands there. */
export function returnToPlace() {
  const body = document.querySelector('main');
  if (body && here.top && here.screen === shown) body.scrollTop = here.top;
}

function leave() {
  const top = Math.round(document.querySelector('main')?.scrollTop ?? 0);
  if (top !== (here.top ?? 0) || (top && here.screen !== shown)) here = { ...here, top, screen: shown };
  else if (!timer) return;
  write();
}

function write() {
  clearTimeout(timer);
  timer = 0;
  try {
    history.replaceState({ ...history.state, place: here }, '');
  } catch {
    // Too many at once: the next one is kept.
  }
}
