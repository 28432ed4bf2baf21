// @ts-check
/**
 * Takes the app off the phones that hold it offline, for the day when a build has to be withdrawn at once.
 *
 * Put it in place of sw.js: each phone drops its cached builds and runs from the server again. What people
 * recorded lies in IndexedDB and is not touched. The server fills in the list that this script ignores:
 * '__PRECACHE__'
 */

'use strict';

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const ROOT = new URL('.', worker.location.href).pathname;
const OWN = ROOT === '/' ? '' : `${ROOT} `;

worker.addEventListener('install', (event) => event.waitUntil(worker.skipWaiting()));

worker.addEventListener('activate', (event) => event.waitUntil(retire()));

async function retire() {
  for (const name of await caches.keys()) {
    if (name.startsWith(`${OWN}swaptrail-build`)) await caches.delete(name);
  }
  await worker.registration.unregister();
}
