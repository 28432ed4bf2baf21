// @ts-check
/**
 * Keeps the app itself up to date: registers the service worker and tells when a new version waits.
 *
 * A new version is applied only when the person taps, never while something is being entered: the page
 * then loads once, and old page and new files never mix.
 */

import { observable } from './observable.js';
import { APP, ownName, ROOT } from '../place.js';

const TRY_AGAIN_MS = 10 * 60 * 1000;

/** Where sw.js and this file note which build is which, and the language; sw.js says why. */
const NOTES = ownName('swaptrail-builds');

/** The build of this page: it stands in the address of each of its files. */
const BUILD = /\/app\/([0-9a-f]{16})\/$/.exec(APP.pathname)?.[1] ?? '';

/** The app's own versions; `start` registers the service worker. */
export class Update {
  constructor() {
    /** Whether a new version is on the phone, complete, and waits for `apply`. */
    this.ready = observable(/** @type {boolean} */ (false));
    /** Whether all of the app starts with no network from now on, the screens that come late too. */
    this.offlineReady = observable(/** @type {boolean} */ (false));
    /** Whether the browser keeps no app from here: a certificate that was only put up with, for one. */
    this.refused = observable(/** @type {boolean} */ (false));
    this.build = BUILD;
  }

  /** @type {ServiceWorkerRegistration | null} */
  #registration = null;
  #applying = false;
  /** Whether the build of this page is one that the phone keeps. */
  #kept = false;
  #tried = { build: '', at: -Infinity };

  /** Register the service worker; without one (refused by the browser) the app runs online only. */
  async start() {
    if (!('serviceWorker' in navigator)) return;
    const { serviceWorker } = navigator;
    // The builds that come take it along.
    await note('/language', document.documentElement.lang).catch(() => undefined);
    this.#kept = Boolean(serviceWorker.controller);
    serviceWorker.addEventListener('controllerchange', () => this.#look());
    try {
      this.#registration = await serviceWorker.register(new URL('sw.js', ROOT), { updateViaCache: 'none' });
    } catch (error) {
      // By the standard's own name for it, an insecure answer; a lost network throws another.
      this.refused.set(error instanceof DOMException && error.name === 'SecurityError');
      return;
    }
    const registration = this.#registration;
    const follow = () => registration.installing?.addEventListener('statechange', () => this.#look());
    registration.addEventListener('updatefound', follow);
    follow();
    await this.#look();
  }

  /**
   * Look for a new version, because the server names a build; one that would not install is left alone
   * for a while, for each try fetches all of it.
   * @param {string} build
   */
  async checkFor(build) {
    const now = Date.now();
    if (build === this.build || (build === this.#tried.build && now - this.#tried.at < TRY_AGAIN_MS)) return;
    this.#tried = { build, at: now };
    await this.check();
  }

  /** Look for a new version; quiet when there is no network. */
  async check() {
    try {
      if (navigator.onLine) await this.#registration?.update();
    } catch {
      // The running version stays; the next look may succeed.
    }
  }

  /**
   * Change over to the newest version on this phone. Call it on a tap, with nothing being entered; the page
   * loads anew.
   */
  async apply() {
    if (this.#applying) return;
    this.#applying = true;
    await note('/before', this.build);
    await note('/chosen', await noted('/newest'));
    location.reload();
  }

  /** Of the worker that waits to take over and the present one, that of this page's build answers once all of it is here. */
  #askWhetherWhole() {
    const { waiting, active } = this.#registration ?? {};
    for (const worker of [waiting, active]) {
      if (!worker || this.offlineReady.value) continue;
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => this.offlineReady.value || this.offlineReady.set(true);
      worker.postMessage({ whole: this.build }, [port2]);
    }
  }

  /** A new version is ready when a worker has taken it whole; another tab may run on it by now. */
  async #look() {
    this.#askWhetherWhole();
    if (!navigator.serviceWorker.controller) return;
    const newest = await noted('/newest');
    // A page that came past the worker may be newer than what the phone keeps.
    this.#kept ||= newest === this.build;
    this.ready.set(this.#kept && newest !== '' && newest !== this.build);
  }
}

/**
 * Which build is noted as the newest, the chosen one, the one before it.
 * @param {string} key
 */
async function noted(key) {
  const response = await (await caches.open(NOTES)).match(key);
  return response ? response.text() : '';
}

/**
 * @param {string} key
 * @param {string} build
 */
async function note(key, build) {
  await (await caches.open(NOTES)).put(key, new Response(build));
}
