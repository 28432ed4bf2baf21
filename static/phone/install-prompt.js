// @ts-check
/**
 * What some browsers hand over for putting the app on the home screen. They do so once, soon after the page has
 * loaded, so this listens before the rest of the app has been read.
 */

import { observable } from './observable.js';

/** @typedef {{prompt: () => Promise<{outcome?: string} | undefined>}} InstallPrompt */

/** The prompt to show when somebody asks for it; null when there is none. */
export const installPrompt = observable(/** @type {InstallPrompt | null} */ (null));

addEventListener('beforeinstallprompt', (event) => {
  event.preventDefault();
  installPrompt.set(/** @type {any} */ (event));
});
