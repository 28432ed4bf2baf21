/**
 * Takes the app off the phones that hold it offline, for the day when a build has to be withdrawn at once.
 *
 * Put it in place of sw.js: each phone drops its cached builds and runs from the server again. What people
 * recorded lies in IndexedDB and is not touched. The server fills in the list that this script ignores:
 * '__PRECACHE__'
 */

'use strict';

const ROOT = new URL('.', self.location).pathname;
const OWN = ROOT === '/' ? '' : `${ROOT} `;

self.addEventListener('install', (event) => event.waitUntil(self.skipWaiting()));

self.addEventListener('activate', (event) => event.waitUntil(retire()));

async function retire() {
  for (const name of await caches.keys()) {
    if (name.startsWith(`${OWN}swaptrail-build`)) await caches.delete(name);
  }
  await self.registration.unregister();
}
