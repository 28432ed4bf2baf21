/**
 * Keeps one whole build of the app on the phone and answers from it, so that the app starts with no network.
 *
 * A build is taken whole, checked byte by byte against its hashes, or not at all; it replaces the running
 * one only on the person's tap. A classic script in one file: module workers are too new for some phones.
 */

'use strict';

/** Filled in by the server: {build, files: [{url, sha256}]}. */
const PRECACHE = JSON.parse('__PRECACHE__');
const CACHE_PREFIX = 'swaptrail-build-';
const CACHE = CACHE_PREFIX + PRECACHE.build;
const SHELL_URL = '/';
const KNOWN = new Set(PRECACHE.files.map((file) => file.url));

self.addEventListener('install', (event) => event.waitUntil(takeWholeBuild()));
self.addEventListener('activate', (event) => event.waitUntil(dropOtherBuilds()));

self.addEventListener('message', (event) => {
  if (event.data === 'SKIP_WAITING') event.waitUntil(self.skipWaiting());
  if (event.data === 'BUILD') event.ports[0].postMessage(PRECACHE.build);
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== self.location.origin || request.method !== 'GET') return;
  if (url.pathname.startsWith('/api/')) return;
  if (request.mode === 'navigate') event.respondWith(answer(SHELL_URL, request));
  else if (KNOWN.has(url.pathname)) event.respondWith(answer(url.pathname, request));
});

/** Fetch every file and check it; one that is wrong fails the whole install. */
async function takeWholeBuild() {
  await caches.delete(CACHE);
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(PRECACHE.files.map((file) => take(cache, file)));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

/**
 * The page has fetched many of these a moment ago, so the server is first asked whether that copy still
 * holds; what then is not the file of this build is fetched past the HTTP cache.
 */
async function take(cache, file) {
  const good = (await fetched(file, 'no-cache')) ?? (await fetched(file, 'reload'));
  if (!good) throw new Error(`${file.url} is not the file of this build`);
  await cache.put(file.url, good);
}

/** Return a file as it goes into the cache, or null where its bytes are not those of this build. */
async function fetched({ url, sha256 }, mode) {
  const response = await fetch(url, { cache: mode, credentials: 'same-origin' });
  if (!response.ok || response.redirected) throw new Error(`${url} answered ${response.status}`);
  const body = await response.arrayBuffer();
  if ((await hexDigest(body)) !== sha256) return null;
  // A fresh response: no trace of a redirect or of the encoding it came in.
  const headers = new Headers(response.headers);
  headers.delete('Content-Encoding');
  headers.delete('Content-Length');
  return new Response(body, { headers });
}

async function hexDigest(body) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', body));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

async function dropOtherBuilds() {
  for (const name of await caches.keys()) {
    if (name.startsWith(CACHE_PREFIX) && name !== CACHE) await caches.delete(name);
  }
  await self.clients.claim();
}

/** Answer from this build; only where the browser has thrown the cache away, from the network. */
async function answer(url, request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(url)) ?? fetch(request);
}
