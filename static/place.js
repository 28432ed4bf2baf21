// @ts-check
/**
 * Where the app lies: every address of a page, of the API and of a worker is built from here, so that the
 * app also runs in a folder of a host that it shares with others.
 */

/** This file stands at app/<build>/place.js of the root folder, or at app/place.js. */
const OF_THE_APP = /app\/(?:[0-9a-f]{16}\/)?[^/]*$/;

/** The app's root folder, ending in '/'; on a server that is its origin. */
export const ROOT = new URL('.', import.meta.url.replace(OF_THE_APP, ''));

/** The folder of this build's files, ending in '/'. */
export const APP = new URL('.', import.meta.url);

/** False where the app is only files on a host: one person's tool, with nothing to send to. */
export const HAS_SERVER = globalThis.document?.documentElement.dataset.server !== 'none';

/**
 * A name for a database, lock or setting that no other app on the same host uses: hosts of files put many
 * people's pages on one origin, and the origin is what browsers keep storage by.
 * @param {string} name
 */
export function ownName(name) {
  return ROOT.pathname === '/' ? name : `${ROOT.pathname} ${name}`;
}
