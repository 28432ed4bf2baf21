// @ts-check
/**
 * Keeps whole builds of the app on the phone and answers from them, so that the app starts with no network.
 *
 * A build is taken whole, checked byte by byte against its hashes, or not at all; pages run on another one
 * only after the person's tap. Every file of a page carries the build in its address (/app/<build>/...), and
 * any worker answers for any build that is here: a browser changes workers only when nothing is under way,
 * which may be minutes after the tap, and a page that loads meanwhile hangs. The screens that are opened rarely may
 * follow on a phone that had no build before: it works offline the sooner. Of the languages, only those in use are
 * taken: words and help of another one are, when a page asks for them. A classic script in one file: module workers
 * are too new for some phones.
 */

'use strict';

/** @typedef {{url: string, sha256: string}} PrecachedFile  its address as seen from this file */

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

/**
 * Filled in by the server; the first file of a language is its words.
 * @type {{build: string, files: PrecachedFile[], late: PrecachedFile[], languages: Record<string, PrecachedFile[]>}}
 */
const PRECACHE = JSON.parse('__PRECACHE__');
/** The app's folder; another app may stand in another one of the same host (place.js). */
const ROOT = new URL('.', worker.location.href).pathname;
const OWN = ROOT === '/' ? '' : `${ROOT} `;
const CACHE_PREFIX = `${OWN}swaptrail-build-`;
const CACHE = CACHE_PREFIX + PRECACHE.build;
/**
 * Which build is which, for every worker and page alike; update.js writes `/chosen` and `/before` on a tap, and the
 * language in use as `/language`.
 */
const NOTES = `${OWN}swaptrail-builds`;
/** Pictures that another app shares with this one wait here (phone/shared-pictures.js). */
const SHARED = `${OWN}swaptrail-shared`;
const SHELL_URL = './';
/** Works where the app does not start. */
const PLAIN_URL = 'plain.html';
/** In a request: say by the same name that the server cannot be reached, instead of failing (sync/request.js, words/words.js). */
const UNREACHABLE = 'X-Unreachable';
const OF_A_BUILD = /^app\/([0-9a-f]{16})(\/.*)$/;
/** Of which language a file is; two may share a picture. @type {Map<string, string>} */
const LANGUAGE_OF = new Map(Object.entries(PRECACHE.languages).flatMap(([language, own]) => own.map(({ url }) => [url, language])));
/** Of the plain page and the screens that are opened rarely. */
const LATE = new Map(PRECACHE.late.map((file) => [file.url, file]));
const KNOWN = new Set([...PRECACHE.files.map((file) => file.url), ...LATE.keys(), ...LANGUAGE_OF.keys()]);
/** Stands in where none of a phone's languages is there. */
const FIRST_LANGUAGE = 'en';
/** A server answers each address of the app with its one page; a host of files has a page for the others. */
const OTHER_PAGES = KNOWN.has('404.html') ? '404.html' : SHELL_URL;

worker.addEventListener('install', (event) => event.waitUntil(takeWholeBuild()));
worker.addEventListener('activate', (event) => event.waitUntil(takeOver()));

worker.addEventListener('message', (event) => {
  // Asked by the pages of builds that had no build in their addresses.
  if (event.data === 'SKIP_WAITING') event.waitUntil(worker.skipWaiting());
  // A page of this build hears when all of it is here (phone/update.js); without a network it may hear nothing.
  if (event.data?.whole === PRECACHE.build) {
    event.waitUntil(takeLate().then(() => event.ports[0].postMessage('here'), () => undefined));
  }
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== worker.location.origin) return;
  // The manifest names this address to the phone; where no worker is, the server answers it.
  if (request.method === 'POST' && url.pathname === `${ROOT}share`) event.respondWith(takeShared(request));
  if (!url.pathname.startsWith(ROOT)) return;
  const below = url.pathname.slice(ROOT.length);
  if (below.startsWith('api/')) {
    if (request.headers.has(UNREACHABLE)) event.respondWith(reached(() => fetch(request)));
    return;
  }
  if (request.method !== 'GET') return;
  const [, build, path] = OF_A_BUILD.exec(below) ?? [];
  const page = below === PLAIN_URL ? PLAIN_URL : below === '' || below === 'index.html' ? SHELL_URL : OTHER_PAGES;
  if (request.mode === 'navigate') event.respondWith(answer(chosen(), page, request));
  else if (build) event.respondWith(answer(CACHE_PREFIX + build, `app${path}`, request));
  else if (KNOWN.has(below)) event.respondWith(answer(chosen(), below, request));
});

/** Fetch every file and check it; one that is wrong fails the whole install. */
async function takeWholeBuild() {
  const isFirst = !(await caches.keys()).some((name) => name.startsWith(CACHE_PREFIX));
  const cache = await caches.open(CACHE);
  const taken = [...PRECACHE.files.map((file) => take(cache, file)), takeLanguages()];
  try {
    await Promise.all(taken);
    const late = takeLate();
    // Whoever had all screens offline keeps them so.
    if (isFirst) late.catch(() => undefined);
    else await late;
  } catch (error) {
    // A language that is still coming would open the cache anew.
    await Promise.allSettled(taken);
    await caches.delete(CACHE);
    throw error;
  }
  await note('/newest', PRECACHE.build);
  // Pages of the build before may still be open.
  await dropOldBuilds([PRECACHE.build, await noted('/chosen'), await noted('/before')]);
}

/** What is taken of what may come late; null between two tries. @type {Promise<unknown> | null} */
let taking = null;

/** Take what may come late and is not here yet. */
function takeLate() {
  taking ??= takeMissing().finally(() => {
    taking = null;
  });
  return taking;
}

async function takeMissing() {
  if (!(await caches.has(CACHE))) throw new Error('this build is not here any more');
  const cache = await caches.open(CACHE);
  await Promise.all(PRECACHE.late.map(async (file) => (await cache.match(file.url)) ?? take(cache, file)));
}

/** Take what belongs to the language in use, and to those that a build before has here: their pages went offline with them. */
async function takeLanguages() {
  const used = await languageInUse();
  for (const [language, [words]] of Object.entries(PRECACHE.languages)) {
    if (language === used || (await isHere(words.url))) await takeLanguage(language);
  }
}

/**
 * Take the words of a language. Its help and the pictures of that follow by themselves: no step waits for them.
 * @param {string} language
 */
async function takeLanguage(language) {
  const cache = await caches.open(CACHE);
  const [words, ...others] = PRECACHE.languages[language];
  await take(cache, words);
  for (const file of others) take(cache, file).catch(() => undefined);
}

/** As a page noted it, else as the phone is set. */
async function languageInUse() {
  const ofThePhone = worker.navigator.languages.map((tag) => tag.split('-')[0].toLowerCase());
  return [await noted('/language'), ...ofThePhone].find((each) => each in PRECACHE.languages) ?? FIRST_LANGUAGE;
}

/** Whether any build on this phone holds a file. @param {string} url */
async function isHere(url) {
  for (const name of await caches.keys()) {
    if (name.startsWith(CACHE_PREFIX) && (await (await caches.open(name)).match(url))) return true;
  }
  return false;
}

/**
 * Put one file into the cache: as another build on this phone holds it, or from the browser's own cache, for
 * the page has fetched many a moment ago, or from the server. Whatever is not the file of this build is
 * fetched once more past all caches: hosts of files let stale copies live for minutes.
 * @param {Cache} cache
 * @param {PrecachedFile} file
 */
async function take(cache, file) {
  const good = (await kept(file)) ?? (await fetched(file, 'default')) ?? (await fetched(file, 'reload'));
  if (!good) throw new Error(`${file.url} is not the file of this build`);
  await cache.put(file.url, good);
}

/** Return a file that did not change since a build that is here, or null. @param {PrecachedFile} file */
async function kept({ url, sha256 }) {
  for (const name of await caches.keys()) {
    if (!name.startsWith(CACHE_PREFIX)) continue;
    const response = await (await caches.open(name)).match(url);
    if (!response) continue;
    const body = await response.arrayBuffer();
    if ((await hexDigest(body)) === sha256) return new Response(body, { headers: response.headers });
  }
  return null;
}

/**
 * Return a file as it goes into the cache, or null where its bytes are not those of this build.
 * @param {PrecachedFile} file
 * @param {RequestCache} mode
 */
async function fetched({ url, sha256 }, mode) {
  const address = url.replace(/^app\//, `app/${PRECACHE.build}/`);
  const response = await fetch(address, { cache: mode, credentials: 'same-origin' });
  // Whatever way it came: some hosts send `x.html` on to `x`, or answer a 404.html with that status.
  const body = await response.arrayBuffer();
  if ((await hexDigest(body)) !== sha256) return null;
  // A fresh response: no trace of a redirect or of the encoding it came in.
  const headers = new Headers(response.headers);
  headers.delete('Content-Encoding');
  headers.delete('Content-Length');
  return new Response(body, { headers });
}

/** @param {ArrayBuffer} body */
async function hexDigest(body) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', body));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** With no page open any more, the build of this worker is the one that the next page runs on. */
async function takeOver() {
  await note('/chosen', PRECACHE.build);
  await dropOldBuilds([PRECACHE.build]);
  await worker.clients.claim();
}

/** @param {string[]} kept  ids of builds */
async function dropOldBuilds(kept) {
  const names = kept.map((build) => CACHE_PREFIX + build);
  for (const name of await caches.keys()) {
    if (name.startsWith(CACHE_PREFIX) && !names.includes(name)) await caches.delete(name);
  }
}

/** Return the name of the cache with the build that the person chose. */
async function chosen() {
  const name = CACHE_PREFIX + (await noted('/chosen'));
  return (await caches.has(name)) ? name : CACHE;
}

/**
 * Answer from a build. What it lacks comes from the network: a language that was not in use and what may come late, which
 * stay, and any file where the browser has thrown the cache away.
 * @param {string | Promise<string>} build  the name of its cache
 * @param {string} url
 * @param {Request} request
 */
async function answer(build, url, request) {
  const name = await build;
  const cache = (await caches.has(name)) ? await caches.open(name) : null;
  const found = await cache?.match(url);
  if (found) return found;
  const language = LANGUAGE_OF.get(url);
  const late = LATE.get(url);
  const far = async () => {
    if (!cache || name !== CACHE) return fetch(request);
    if (language) await takeLanguage(language);
    else if (late) await take(cache, late);
    return (await cache.match(url)) ?? fetch(request);
  };
  return request.headers.has(UNREACHABLE) ? reached(far) : far();
}

/**
 * Answer from the server or, where it cannot be reached, with nothing but saying so.
 * @param {() => Promise<Response>} far
 */
async function reached(far) {
  try {
    return await far();
  } catch {
    return new Response(null, { headers: { [UNREACHABLE]: 'yes' } });
  }
}

/** @param {string} key @param {string} build */
async function note(key, build) {
  await (await caches.open(NOTES)).put(key, new Response(build));
}

/** @param {string} key */
async function noted(key) {
  const response = await (await caches.open(NOTES)).match(key);
  return response ? response.text() : '';
}

/** Put shared pictures aside before anything else, all or none; the page then asks what they show. @param {Request} request */
async function takeShared(request) {
  /** @type {string[]} */
  const put = [];
  try {
    const cache = await caches.open(SHARED);
    for (const file of (await request.formData()).getAll('pictures')) {
      if (typeof file === 'string' || !file.size) continue;
      const key = new URL(`shared/${Date.now()}-${put.length}`, worker.location.href).href;
      put.push(key);
      await cache.put(key, new Response(file, { headers: { 'X-Name': encodeURIComponent(file.name) } }));
    }
  } catch (error) {
    for (const key of put) await (await caches.open(SHARED)).delete(key);
    return shown(error instanceof DOMException && error.name === 'QuotaExceededError' ? 'shared/full' : 'shared/missed');
  }
  return shown(put.length ? 'shared' : 'shared/nothing');
}

/** Lead the phone from what it sent to a screen of the app. @param {string} screen */
function shown(screen) {
  return Response.redirect(new URL(`./#/${screen}`, worker.location.href), 303);
}
