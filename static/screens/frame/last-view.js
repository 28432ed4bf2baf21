// @ts-check
/**
 * Paints what an address showed last while the core still starts, so that there is something to read at once.
 *
 * It is a picture and no more: nothing on it can be tapped, and a line says that it is being checked. It is
 * kept beside the log with the point at which the log stood then; where the log has moved on, or the app is
 * of another build or language, there is none.
 */

import { APP } from '../../place.js';
import { early, wantedLanguage } from '../../words/words.js';

const KEY = 'last_views';
const MOST_VIEWS = 8;
const MOST_CHARACTERS = 200_000;
/** A screen that is replaced at once is not worth the writing. */
const SETTLED_MS = 400;

/** Screens that show what the core says of the log; forms, links for pairing and the like are not kept. */
const KEPT = new Set(['jobs', 'job', 'moves', 'trail', 'history', 'position', 'unit', 'hand']);

/** The last views of this phone. */
export class LastViews {
  /**
   * @param {import('../../log/store.js').Store} store
   * @param {HTMLElement} root  what the screens are drawn into
   */
  constructor(store, root) {
    this.#store = store;
    this.#root = root;
  }

  #store;
  #root;
  /** Whether the app has drawn a screen of its own. */
  #over = false;
  #timer = 0;
  /** @type {HTMLElement | null} */
  #line = null;

  /**
   * Show what stood at an address, if it still holds; settles when it can be seen, or there is none.
   * @param {string} path  of the route
   */
  async paint(path) {
    const { stamp, views } = await this.#read().catch(() => ({ stamp: '', views: undefined }));
    const view = views?.stamp === stamp ? views.pages.find((/** @type {{path: string}} */ page) => page.path === path) : null;
    if (!view || this.#over) return;
    this.#root.inert = true;
    this.#root.innerHTML = view.html;
    this.#line = document.createElement('p');
    this.#line.className = 'checking';
    this.#line.setAttribute('role', 'status');
    this.#line.textContent = early('begin-as-it-was');
    document.body.append(this.#line);
    await shown();
  }

  /** Make room for the screen itself; call it right before the first one is drawn. */
  end() {
    if (this.#over) return;
    this.#over = true;
    this.#line?.remove();
    this.#root.replaceChildren();
    this.#root.inert = false;
  }

  /** At which point the log stands; what is shown later belongs to it. */
  async stamp() {
    return (await this.#read().catch(() => ({ stamp: '' }))).stamp;
  }

  /**
   * Keep what is on the screen, once it has settled.
   * @param {import('./router.js').Route} route
   * @param {string} stamp  where the log stood before the screen was loaded
   */
  keep({ name, path }, stamp) {
    clearTimeout(this.#timer);
    if (!KEPT.has(name) || !stamp) return;
    this.#timer = setTimeout(() => this.#keep(path, stamp).catch(() => undefined), SETTLED_MS);
  }

  /**
   * @param {string} path
   * @param {string} stamp
   */
  async #keep(path, stamp) {
    const html = picture(this.#root);
    if (html.length > MOST_CHARACTERS) return;
    const { stamp: now, views } = await this.#read();
    if (now !== stamp) return;
    const others = views?.stamp === stamp ? views.pages.filter((/** @type {{path: string}} */ page) => page.path !== path) : [];
    const pages = [{ path, html }, ...others].slice(0, MOST_VIEWS);
    // Not as an event is written: this may be lost.
    await this.#store.withDb((db) => db.put('meta', { stamp, pages }, KEY));
  }

  #read() {
    return this.#store.withDb(async (db) => {
      const meta = db.transaction('meta').store;
      const [views, ...stands] = await Promise.all(
        [KEY, 'head', 'cursor', 'setting.role', 'setting.file', 'setting.install_put_off', 'actor'].map((key) => meta.get(key)),
      );
      return { views, stamp: JSON.stringify([APP.href, wantedLanguage(), ...stands]) };
    });
  }
}

/** Settles once the browser has painted, or could have: a page in the background paints nothing. */
function shown() {
  return new Promise((resolve) => {
    requestAnimationFrame(() => setTimeout(resolve));
    setTimeout(resolve, 100);
  });
}

/**
 * The screen as a picture of itself: no pictures that lived only in that page, nothing that runs.
 * @param {HTMLElement} root
 */
function picture(root) {
  // In a document of its own, so that copying loads nothing.
  const copy = document.implementation.createHTMLDocument().importNode(root, true);
  for (const image of copy.querySelectorAll('img')) image.removeAttribute('src');
  // The policy allows no styles in attributes.
  for (const styled of copy.querySelectorAll('[style]')) styled.removeAttribute('style');
  // What is said of the phone itself is not of the log: it may have been read or be over since.
  for (const gone of copy.querySelectorAll('video, canvas, iframe, .banner, .screen-others')) gone.remove();
  return copy.innerHTML.replace(/<!--.*?-->/g, '');
}
