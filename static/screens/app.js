// @ts-check
/**
 * The screens of the app: draws the one the address means, and records what a person enters.
 *
 * A screen (pages.js) is `load(services, params)`, which fetches what it shows, and `draw(ctx)`, which
 * returns the parts of its frame (`Parts` in frame.js) and changes nothing. After each record, sync or
 * change in another tab the present screen is loaded and drawn again.
 */

import { html, render } from 'lit-html';

import { keepAwake } from '../phone/awake.js';
import { banners } from './phone/banners.js';
import { Drafts } from './frame/drafts.js';
import { OthersLine } from './job/others.js';
import { frame } from './frame/frame.js';
import { part } from './frame/part.js';
import { showSigns } from './frame/signs.js';
import { watchInstall } from './phone/install.js';
import { faultPage, pageFor } from './pages.js';
import { placeKept, returnToPlace, showsScreen } from './frame/place-kept.js';
import { Recorder } from './frame/recorder.js';
import { refusalPanel } from './frame/refusal.js';
import { Router } from './frame/router.js';
import { holdSecondTap, watchTaps } from './frame/second-tap.js';
import { markOf } from './phone/standing.js';
import { applyTheme } from '../phone/theme.js';
import { visible } from '../words/visible.js';

/** @typedef {import('./frame/context.js').Context} Context */
/** @typedef {import('./frame/context.js').Services} Services */
/** @typedef {Omit<Services, 'drafts'> & {root: HTMLElement}} AppParts */

/**
 * Draw the app into `root` and keep it in step; settles once the first screen is drawn.
 * @param {AppParts} parts
 */
export function startApp({ root, ...below }) {
  const app = new App(root, { ...below, drafts: new Drafts(below.store) });
  return app.start();
}

class App {
  /**
   * @param {HTMLElement} root
   * @param {Services} services
   */
  constructor(root, services) {
    this.#root = root;
    this.#services = services;
    this.#others = new OthersLine(services);
    this.#router = new Router((route) => this.#show(route));
    this.#recorder = new Recorder({
      log: services.log,
      job: () => this.#route.params.job ?? null,
      place: () => this.#route.path,
      following: () => this.#page?.asks?.(this.#route.params) ?? null,
      // A record has set off a load before it comes back.
      loaded: () => this.#loading,
      redraw: () => this.#draw(),
    });
  }

  #root;
  #services;
  #router;
  #recorder;
  #others;
  /** @type {import('./frame/router.js').Route} */
  #route = { name: '', params: {}, path: '' };
  /** The route whose data is on the screen. */
  #shownPath = '';
  #shownKey = '';
  /** The screen and the words of its main button. */
  #asked = '';
  /** The screen was opened, and has not been drawn yet. */
  #opened = false;
  /** @type {any} */
  #data = null;
  /** Where the log stood before the data was loaded. */
  #stamp = '';
  /** What the data belongs to. @type {import('./pages.js').Page | null} */
  #page = null;
  #formKey = '';
  /** @type {import('./frame/drafts.js').Form} */
  #form = {};
  #loads = 0;
  /** What went wrong and was shown already. @type {WeakSet<Element>} */
  #troubles = new WeakSet();
  /** A load that has not begun. @type {Promise<void> | null} */
  #waiting = null;
  /** Settles when the load that has begun is over. @type {Promise<void>} */
  #present = Promise.resolve();
  /** @type {Promise<void>} */
  #loading = Promise.resolve();

  start() {
    const { sync, saved, update, core, device, store, log } = this.#services;
    const redraw = () => this.#draw();
    applyTheme();
    showSigns(this.#root);
    watchTaps(this.#root);
    watchInstall(device, redraw);
    this.#router.start();
    for (const observed of [sync.status, update.ready, update.offlineReady, device.notice, device.kept, store.trouble, log.unsaved]) {
      observed.subscribe(redraw);
    }
    device.server.standing.subscribe(redraw);
    update.refused.subscribe(redraw);
    saved?.standing.subscribe(redraw);
    this.#others.line.subscribe(redraw);
    this.#others.start();
    log.changes.subscribe(() => this.#reload());
    // Without the core other screens are left.
    core.trouble.subscribe(() => this.#reload());
    // The other role has other screens.
    device.role.subscribe(() => this.#reload());
    return this.#loading;
  }

  /** @param {import('./frame/router.js').Route} route */
  #show(route) {
    if (route.path === this.#route.path && route.name === this.#route.name) return;
    this.#route = route;
    this.#opened = true;
    this.#recorder.refusal = null;
    this.#recorder.arrive(route.params.job);
    // What the screen that is left still waits for does not hold this one up.
    this.#waiting = null;
    this.#present = Promise.resolve();
    this.#reload();
  }

  /**
   * Load and draw. Several reasons at one moment, or while this screen is being loaded, are one load: a long
   * sending gives more of them than the core can answer, and whatever is tapped next would stand behind them.
   */
  #reload() {
    this.#waiting ??= this.#next();
    this.#loading = this.#waiting;
    return this.#loading;
  }

  /** @returns {Promise<void>} the load after the present one */
  #next() {
    const next = this.#present.then(() => {
      // Another screen was opened meanwhile.
      if (this.#waiting !== next) return this.#loading;
      this.#waiting = null;
      const load = this.#load();
      this.#present = load.catch(() => undefined);
      return load;
    });
    return next;
  }

  async #load() {
    this.#loads += 1;
    const load = this.#loads;
    const route = this.#route;
    const { core, device, saved } = this.#services;
    const page = pageFor(route.name, { coreRuns: core.available, role: device.role.value, alone: saved !== null });
    const stamp = this.#services.lastViews.stamp();
    try {
      const data = await page.load(this.#services, route.params);
      if (load !== this.#loads) return;
      await this.#takeForm(route, page.formKey?.(route.params, data) ?? '');
      if (load !== this.#loads) return;
      this.#data = data;
      this.#page = page;
      this.#stamp = core.available ? await stamp : '';
    } catch (error) {
      if (load !== this.#loads) return;
      this.#data = error;
      this.#page = faultPage;
      this.#stamp = '';
    }
    this.#shownPath = route.path;
    this.#others.show(route.params.job ?? '', this.#data);
    keepAwake(Boolean(route.params.job) || this.#services.device.role.value === 'counter');
    this.#draw();
  }

  /**
   * Open the form that belongs to what is shown now. Within one screen a new key means that the step is
   * done, and its form with it.
   * @param {import('./frame/router.js').Route} route
   * @param {string} key
   */
  async #takeForm(route, key) {
    const stays = route.path === this.#shownPath;
    if (key === this.#formKey && (key || stays)) return;
    const left = this.#formKey;
    if (left && stays) await this.#services.drafts.drop(left);
    const form = key ? await this.#services.drafts.open(key) : {};
    this.#formKey = key;
    this.#form = form;
  }

  #draw() {
    if (!this.#page) return;
    // Until the next screen has its data, the present one stays.
    if (this.#shownPath !== this.#route.path) return;
    try {
      this.#drawPage(this.#page);
    } catch (error) {
      // lit-html cannot go on with what it has half drawn.
      this.#root.replaceChildren();
      Reflect.deleteProperty(this.#root, '_$litPart$');
      this.#page = faultPage;
      this.#data = error;
      this.#stamp = '';
      this.#drawPage(faultPage);
    }
  }

  /** @param {import('./pages.js').Page} page */
  #drawPage(page) {
    const ctx = this.#context();
    const parts = page.draw(ctx);
    const key = `${this.#route.path} ${parts.key ?? ''}`;
    const body = html`${part(() => banners(ctx, { saveAgain: this.#recorder.saveAgain }))}${part(() => refusalPanel(ctx))}${parts.body}`;
    this.#services.lastViews.end();
    render(frame({ ...parts, body, key }, { mark: markOf(this.#services), busy: this.#recorder.busy, undo: this.#recorder.undo, others: this.#others.line.value }), this.#root);
    document.title = visible(`${parts.title} · Swaptrail`);
    this.#showTrouble();
    showsScreen(key);
    const asked = `${key} ${parts.main?.words}`;
    if (asked !== this.#asked) holdSecondTap(this.#root);
    this.#asked = asked;
    if (key !== this.#shownKey) this.#arrive(key);
    if (this.#opened) returnToPlace();
    this.#opened = false;
    // What a search shows is not what the address shows when the app starts.
    const { text, stands } = placeKept();
    if (!this.#recorder.busy && !this.#recorder.refusal && !text && !stands) this.#services.lastViews.keep(this.#route, this.#stamp);
  }

  /** What is wrong comes into view by itself, once. */
  #showTrouble() {
    for (const trouble of this.#root.querySelectorAll('.field-fault,[role=alert]')) {
      if (this.#troubles.has(trouble)) continue;
      this.#troubles.add(trouble);
      trouble.scrollIntoView({ block: 'nearest' });
      return;
    }
  }

  /** Tell those who hear the screen that it is another one. @param {string} key */
  #arrive(key) {
    const first = this.#shownKey === '';
    this.#shownKey = key;
    if (first || document.activeElement?.matches('input, textarea, select')) return;
    /** @type {HTMLElement | null} */
    const main = this.#root.querySelector('main');
    main?.focus({ preventScroll: true });
  }

  /** @returns {Context} */
  #context() {
    return {
      services: this.#services,
      params: this.#route.params,
      data: this.#data,
      form: this.#form,
      refusal: this.#recorder.refusal,
      busy: this.#recorder.busy,
      act: this.#recorder.act,
      redraw: () => {
        if (this.#formKey) this.#services.drafts.touch(this.#formKey, this.#form);
        this.#draw();
      },
      keep: () => {
        if (this.#formKey) this.#services.drafts.touch(this.#formKey, this.#form);
        return this.#services.drafts.flush();
      },
      forget: () => {
        for (const field of Object.keys(this.#form)) delete this.#form[field];
        if (this.#formKey) this.#services.drafts.drop(this.#formKey);
        this.#draw();
      },
      reload: () => this.#reload(),
      go: (hash, options) => this.#router.go(hash, options),
    };
  }
}
