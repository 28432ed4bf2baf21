// @ts-check
/**
 * Keeps the app itself up to date: registers the service worker and tells when a new version waits.
 *
 * A new version is applied only when the person taps, never while something is being entered: the page
 * then loads once, and old page and new files never mix.
 */

import { observable } from './observable.js';

const BUILD_ANSWER_MS = 3000;
const TRY_AGAIN_MS = 10 * 60 * 1000;

/** The app's own versions; `start` registers the service worker. */
export class Update {
  constructor() {
    /** Whether a new version is on the phone, complete, and waits for `apply`. */
    this.ready = observable(/** @type {boolean} */ (false));
    /** Whether the app starts with no network from now on. */
    this.offlineReady = observable(/** @type {boolean} */ (false));
    /** The build id of this page; empty at the very first visit. */
    this.build = '';
  }

  /** @type {ServiceWorkerRegistration | null} */
  #registration = null;
  #applying = false;
  #old = false;
  #tried = { build: '', at: -Infinity };

  /** Register the service worker; without one (refused by the browser) the app runs online only. */
  async start() {
    if (!('serviceWorker' in navigator)) return;
    const { serviceWorker } = navigator;
    let wasControlled = Boolean(serviceWorker.controller);
    serviceWorker.addEventListener('controllerchange', () => {
      if (this.#applying) location.reload();
      // The very first worker takes over a page of its own build.
      else if (wasControlled) this.#noteOld();
      wasControlled = true;
    });
    this.build = await askBuild(serviceWorker.controller);
    try {
      this.#registration = await serviceWorker.register('/sw.js', { updateViaCache: 'none' });
    } catch {
      return;
    }
    this.#watch(this.#registration);
    // Never settles where the install fails, so nothing may wait for it.
    serviceWorker.ready.then(async ({ active }) => {
      this.offlineReady.set(true);
      if (!this.build) this.build = await askBuild(active);
    });
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
   * Change over to the version that waits. Call it on a tap, with nothing being entered; the page loads
   * anew.
   */
  apply() {
    const waiting = this.#registration?.waiting;
    this.#applying = true;
    if (waiting) waiting.postMessage('SKIP_WAITING');
    else location.reload();
  }

  /** Another tab has changed over: this page is old now and has to be loaded anew as well. */
  #noteOld() {
    this.#old = true;
    this.ready.set(true);
  }

  /** @param {ServiceWorkerRegistration} registration */
  #watch(registration) {
    const look = () => {
      const waits = Boolean(registration.waiting && navigator.serviceWorker.controller);
      this.ready.set(waits || this.#old);
    };
    const follow = () => registration.installing?.addEventListener('statechange', look);
    registration.addEventListener('updatefound', follow);
    follow();
    look();
  }
}

/**
 * @param {ServiceWorker | null} worker
 * @returns {Promise<string>}
 */
function askBuild(worker) {
  if (!worker) return Promise.resolve('');
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    setTimeout(() => resolve(''), BUILD_ANSWER_MS);
    worker.postMessage('BUILD', [port2]);
  });
}
