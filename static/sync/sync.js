// @ts-check
/**
 * Brings phone and server together: sends what the server lacks, fetches what the phone lacks.
 *
 * Any number of repeats ends in the same state, so a lost reply is simply asked for again. An event
 * counts as sent when it comes back with the server's number, a photo when the server confirms its hash.
 * Nothing is deleted here.
 */

import { SYNC_LOCK, withLock, withLockIfFree } from '../phone/locks.js';
import { startNewDevice } from '../log/fork.js';
import { pairingProof } from '../log/proofs.js';
import { Api } from './api.js';
import { retryAfter, spread } from './backoff.js';
import { EventExchange } from './exchange.js';
import { News } from './news.js';
import { sendPhotos } from './photo-sending.js';
import { ApiError } from './request.js';
import { Status } from './status.js';
import { say } from '../words/words.js';

const CALM_MS = 60_000;
/** Where the server says by itself what is new. */
const LISTENING_MS = 600_000;

/** What the app asks of it, with a server or without. @typedef {Pick<Sync, keyof Sync>} Syncing */

/** The sync loop; `start` lets it run by itself. */
export class Sync {
  /**
   * @param {object} parts
   * @param {import('../log/store.js').Store} parts.store
   * @param {import('../log/log.js').EventLog} parts.log
   * @param {import('../log/device.js').Device} parts.device
   * @param {() => string} parts.build       this page's build id, empty while it is not known
   * @param {(build: string) => void} parts.onServerBuild  hears which build the server runs
   */
  constructor({ store, log, device, build, onServerBuild }) {
    /** @type {import('./api.js').ServerApi} */
    this.api = new Api();
    this.#status = new Status(store, device);
    /** What the screens say of it. */
    this.status = this.#status.observed;
    this.#news = new News({ store, api: this.api, sync: () => this.now() });
    /** Who else is at the job on this screen. */
    this.others = this.#news.others;
    this.#exchange = new EventExchange({ store, log, device, api: this.api, build });
    this.#store = store;
    this.#log = log;
    this.#device = device;
    this.#onServerBuild = onServerBuild;
  }

  #store;
  #log;
  #device;
  #onServerBuild;
  #status;
  #news;
  #exchange;
  #failures = 0;
  #timer = 0;
  /** @type {Promise<void> | null} */
  #running = null;
  #again = false;
  #following = false;
  #askedMeanwhile = false;
  #started = false;

  /** Say what is known before the server has been asked, so that the first screen already says it. */
  async recall() {
    if (!(await this.#device.hasMet())) this.#status.set({ state: 'not paired', sentence: say('troubles-not-paired') });
  }

  /** Start syncing by itself: now, when seen again, when online, after each record, on news, and on a timer. */
  start() {
    this.#started = true;
    this.#news.start();
    addEventListener('online', () => {
      // What failed while there was no network says nothing of the server.
      this.#failures = 0;
      this.now();
    });
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible') this.now();
    });
    this.#log.changes.subscribe(async () => {
      if (await this.#status.count()) this.now();
    });
    this.now();
  }

  /** Say where this phone is, for others at the same job; null while it is at none. @param {import('./news.js').Place | null} place */
  at(place) {
    this.#news.at(place);
  }

  /**
   * Sync now; while one run is on, one more follows it.
   * @returns {Promise<void>} settles when the run has ended; look at `status`
   */
  now() {
    if (this.#running) this.#again = true;
    this.#running ??= this.#runs().finally(() => {
      this.#running = null;
    });
    return this.#running;
  }

  /**
   * Pair this phone with the server by the token of a pairing link; throws ApiError.
   * @param {string} token
   * @param {string} name  whoever uses this phone
   * @param {{patienceMs?: number}} [options]  how long at most it waits until all was sent and fetched
   */
  async pair(token, name, { patienceMs = Infinity } = {}) {
    await this.#pairAs(token, name).catch(async (error) => {
      if (!(error instanceof ApiError) || error.field !== 'device') throw error;
      // The id is another phone's, as its key tells, or it ended when this one was put out.
      await startNewDevice(this.#store, this.#device, { as: 'renewed' });
      await this.#pairAs(token, name);
    });
    await this.#device.noteMet();
    // What waits here may be in the name that was typed before.
    const { actor } = this.#device;
    await this.#device.saveSetting('people', actor && actor !== name ? [actor] : []);
    await this.#device.setActor(name);
    // A run that began before was turned away, and what it waits for has come.
    await this.#running;
    this.#failures = 0;
    const run = this.now();
    await (patienceMs === Infinity ? run : Promise.race([run, new Promise((resolve) => setTimeout(resolve, patienceMs))]));
  }

  /**
   * @param {string} token
   * @param {string} name
   */
  async #pairAs(token, name) {
    const { id: device } = this.#device;
    await this.api.pair({ token, device, name, ...(await pairingProof(this.#store, device, token)) });
  }

  /**
   * Make a link by which this paired phone lets the next one in; throws ApiError. `qr` is the symbol to
   * show it by, as rows of 0 and 1 without margin.
   * @returns {Promise<{link: string, role: string, expires_at: number, qr: string[]}>}
   */
  async pairingLink(/** @type {import('../log/device.js').Role} */ role) {
    await this.api.session();
    return this.api.post('/api/pairings', { role });
  }

  async #runs() {
    clearTimeout(this.#timer);
    this.#status.set({ nextTryAt: null });
    do {
      this.#again = false;
      const ran = await withLockIfFree(SYNC_LOCK, () => this.#run().then(() => true));
      if (!ran) this.#followOtherTab();
    } while (this.#again && !this.#failures);
    this.#schedule();
  }

  /** Another tab is at it: look what is left once it has finished, or was closed in the middle of it. */
  async #followOtherTab() {
    // What held the lock this time may have been this very wait, in the moment before it gives the lock back.
    this.#askedMeanwhile = this.#following;
    if (this.#following) return;
    this.#following = true;
    await withLock(SYNC_LOCK, async () => undefined);
    this.#following = false;
    this.#status.set({ moreToCome: false });
    if ((await this.#status.count()) || this.#askedMeanwhile) this.now();
  }

  async #run() {
    const waits = await this.#status.count();
    // A phone that nobody knows sends nothing before it is paired.
    if (waits && this.#status.state !== 'not paired') this.#status.say('sending', '');
    try {
      const asked = Date.now();
      const session = await this.api.session();
      await this.#device.server.keep(session, asked, Date.now());
      this.#onServerBuild(session.build);
      if (!session.paired) {
        throw new ApiError('not paired', say('troubles-not-paired'));
      }
      if (waits) this.#status.say('sending', '');
      // Known by now: the first fetch of a long log takes a while, and nothing else says so before its end.
      else if (this.#status.state === 'not paired') this.#status.say('sent', '');
      await this.#device.keepStanding(session);
      await this.#device.compareWithServer();
      const reply = await this.#exchange.run(() => this.#status.count());
      this.#status.set({ lostPhotos: reply.photos_lost ?? [] });
      if (this.#started) this.#news.listen();
      // Entries do not stand behind pictures: where any came meanwhile, they go first.
      const onSent = (/** @type {string} */ sha256) => this.#status.photoSent(sha256);
      await sendPhotos(this.#store, this.api, reply.photos_wanted, onSent, () => this.#again);
      this.#failures = 0;
      await this.#status.sayOutcome();
    } catch (error) {
      this.#failures += 1;
      await this.#status.count();
      this.#status.sayFailure(error);
    }
  }

  #schedule() {
    const calm = this.#news.isListening ? LISTENING_MS : CALM_MS;
    const ms = this.#failures ? retryAfter(this.#failures) : spread(calm);
    // Without a pairing there is nothing to wait for.
    const waits = this.#failures && this.#status.state !== 'not paired';
    this.#status.set({ nextTryAt: waits ? Date.now() + ms : null });
    this.#timer = setTimeout(() => {
      if (document.visibilityState === 'visible') this.now();
      else this.#schedule();
    }, ms);
  }
}
