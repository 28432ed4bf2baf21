// @ts-check
/**
 * What begins at once, before the rest of the app has been read: the core in its worker, the store, and the last
 * view of the address. A file of its own and small, for on a slow phone reading the rest takes a while.
 */

import { Core } from './core/client.js';
import './phone/install-prompt.js';
import { LastViews } from './screens/frame/last-view.js';
import { routeOf } from './screens/frame/router.js';
import { applyTheme } from './phone/theme.js';
import { Store } from './log/store.js';
import { ROOT } from './place.js';
import { early, startWords } from './words/words.js';

/** What the screens are drawn into. */
export const root = /** @type {HTMLElement} */ (document.getElementById('app'));

/** The core, once it runs or cannot. */
export const starting = Core.start();

/** To be opened by `openStore`. */
export const store = new Store();

export const lastViews = new LastViews(store, root);

/** So long the rest waits for the last view at most: reading it blocks the page, and a store may hang. */
const LATE_MS = 300;
/** A start takes so long where something hangs, or on a very weak line. */
const HANGS_MS = 20_000;

applyTheme();
for (const place of root.querySelectorAll('[data-early]')) {
  if (place instanceof HTMLElement) place.textContent = early(place.dataset.early ?? '');
}
// Read meanwhile; who hears of a failure waits below.
startWords().catch(() => undefined);
Promise.race([
  lastViews.paint(routeOf(location).path),
  new Promise((resolve) => setTimeout(resolve, LATE_MS)),
])
  .then(() => Promise.all([import('./main.js'), startWords()]))
  .then(([main]) => void main.begin())
  .catch(notWhole);
setTimeout(() => {
  root.querySelector('.starting')?.append(paragraph(early('begin-long')), plainLink());
}, HANGS_MS);

/** The way to what was recorded where the app does not start (plain.js). */
export function plainLink() {
  return Object.assign(document.createElement('a'), {
    className: 'link-button',
    href: new URL('plain.html', ROOT).href,
    textContent: early('begin-plain'),
  });
}

/** @param {string} textContent */
function paragraph(textContent) {
  return Object.assign(document.createElement('p'), { textContent });
}

/** A line that breaks off must not leave a screen that says it is starting, or a picture of one, for good. */
function notWhole() {
  lastViews.end();
  const panel = document.createElement('main');
  panel.className = 'panel panel-stop';
  panel.setAttribute('role', 'alert');
  const again = Object.assign(document.createElement('button'), {
    type: 'button',
    className: 'small-button',
    textContent: early('begin-again'),
    onclick: () => location.reload(),
  });
  panel.append(
    Object.assign(document.createElement('h1'), { textContent: early('begin-broken-heading') }),
    paragraph(early('begin-broken')),
    again,
    plainLink(),
  );
  root.replaceChildren(panel);
}
