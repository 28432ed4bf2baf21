// @ts-check
/**
 * Brings phone and server together: sends what the server lacks, fetches what the phone lacks.
 *
 * Any number of repeats ends in the same state, so a lost reply is simply asked for again. An event
 * counts as sent when it comes back with the server's number, a photo when the server confirms its hash.
 * Nothing is deleted here.
 */

import { Api, ApiError } from './api.js';
import { isInstalled } from '../log/device.js';
import { startNewDevice } from '../log/fork.js';
import { SYNC_LOCK, withLock, withLockIfFree } from '../phone/locks.js';
import { observable } from '../phone/observable.js';
import { sendPhotos } from './photo-sending.js';
import { forgetNumbers, isSound, serverWentBack, storeReply } from './received.js';
import { isQuotaError, makingRoom } from '../log/space.js';
import { countUnsent, firstRefusal } from './unsent.js';

const BATCH_EVENTS = 200;
const BATCH_CHARACTERS = 1_000_000;
const MOST_STARTS = 3;
const NOT_PAIRED = 'This phone is not paired with the server yet.';
const OLDER_SERVER =
  'The server runs an older version than this app and does not take everything yet. It is kept here and sent once the server is as new.';
const CALM_SECONDS = 60;
const FIRST_RETRY_SECONDS = 2;
const LAST_RETRY_SECONDS = 300;

/**
 * @typedef {'sent' | 'not sent' | 'sending' | 'not paired' | 'server unreachable' | 'server in trouble' | 'refused'
 *   | 'no server'} SyncState  the last: alone/no-server.js
 *
 * @typedef {object} SyncStatus
 * @property {SyncState} state
 * @property {number} unsentEvents
 * @property {number} unsentPhotos
 * @property {number} unsentBytes         of the unsent photos
 * @property {number | null} oldestUnsentAt  this phone's clock, ms
 * @property {number | null} lastSyncAt      this phone's clock, ms
 * @property {number | null} nextTryAt       when it is tried again by itself after a failure; this phone's clock
 * @property {{events: number, photos: number} | null} toSend  what the present run has to send in all
 * @property {string} sentence            what stands against sending; empty when nothing does
 */

/** Before anything was looked at. @type {SyncStatus} */
export const NOT_YET = {
  state: 'not sent',
  unsentEvents: 0,
  unsentPhotos: 0,
  unsentBytes: 0,
  oldestUnsentAt: null,
  lastSyncAt: null,
  nextTryAt: null,
  toSend: null,
  sentence: '',
};

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
    this.api = new Api();
    this.status = observable(NOT_YET);
    this.#store = store;
    this.#log = log;
    this.#device = device;
    this.#build = build;
    this.#onServerBuild = onServerBuild;
  }

  #store;
  #log;
  #device;
  #build;
  #onServerBuild;
  #failures = 0;
  #timer = 0;
  /** @type {Promise<void> | null} */
  #running = null;
  #again = false;
  #following = false;

  /** Say what is known before the server has been asked, so that the first screen already says it. */
  async recall() {
    if (!(await this.#device.hasMet())) this.#set({ state: 'not paired', sentence: NOT_PAIRED });
  }

  /** Start syncing by itself: now, when seen again, when online, after each record, and on a timer. */
  start() {
    const now = () => this.now();
    addEventListener('online', now);
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible') this.now();
    });
    this.#log.changes.subscribe(async () => {
      if (await this.#count()) this.now();
    });
    now();
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
   */
  async pair(token, name) {
    await this.api.session();
    await this.api.post('/api/pair', { token, device: this.#device.id, name });
    await this.#device.noteMet();
    await this.#device.setActor(name);
    // A run that began before was turned away, and what it waits for has come.
    await this.#running;
    this.#failures = 0;
    await this.now();
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
    this.#set({ nextTryAt: null });
    do {
      this.#again = false;
      const ran = await withLockIfFree(SYNC_LOCK, () => this.#run().then(() => true));
      if (!ran) this.#followOtherTab();
    } while (this.#again && !this.#failures);
    this.#schedule();
  }

  /** Another tab is at it: look what is left once it has finished, or was closed in the middle of it. */
  async #followOtherTab() {
    if (this.#following) return;
    this.#following = true;
    await withLock(SYNC_LOCK, async () => undefined);
    this.#following = false;
    if (await this.#count()) this.now();
  }

  async #run() {
    if (await this.#count()) this.#say('sending', '');
    try {
      const asked = Date.now();
      const session = await this.api.session();
      await this.#device.server.keep(session, asked, Date.now());
      this.#onServerBuild(session.build);
      if (!session.paired) {
        throw new ApiError('not paired', NOT_PAIRED);
      }
      await this.#device.keepStanding(session);
      await this.#device.compareWithServer();
      const wanted = await this.#exchangeEvents();
      await sendPhotos(this.#store, this.api, wanted, () => this.#count());
      this.#failures = 0;
      await this.#sayOutcome();
    } catch (error) {
      this.#failures += 1;
      await this.#count();
      this.#sayFailure(error);
    }
  }

  /**
   * Page through both directions until neither side has more.
   * @returns {Promise<string[]>} the photos that the server asks for
   */
  async #exchangeEvents() {
    let received = 0;
    try {
      return await this.#pages((events) => {
        received += events;
      });
    } finally {
      // All of it at once: a phone that was paired just now fetches the work of years.
      if (received) await this.#log.catchUp();
    }
  }

  /**
   * @param {(events: number) => void} onReceived  hears how many entries a page brought
   * @returns {Promise<string[]>}
   */
  async #pages(onReceived) {
    let sentUpTo = 0;
    let startedOver = 0;
    for (;;) {
      const batch = await this.#batch(sentUpTo);
      const reply = await this.#post(batch);
      const startOver = reply === 'not ours' ? 'forked' : await this.#take(reply);
      if (startOver) {
        startedOver += 1;
        if (startedOver > MOST_STARTS) {
          throw new ApiError('untrusted', 'The server and this phone cannot agree on what was sent.');
        }
        if (startOver === 'forked') await startNewDevice(this.#store, this.#device);
        else await forgetNumbers(this.#store);
        await this.#log.catchUp();
        sentUpTo = 0;
      } else if (reply !== 'not ours') {
        onReceived(reply.events.length);
        sentUpTo = batch[batch.length - 1]?.unsent ?? sentUpTo;
        if (!reply.more && !(await this.#batch(sentUpTo)).length) return reply.photos_wanted;
      }
    }
  }

  /**
   * @param {import('../log/store.js').EventRecord[]} batch
   * @returns {Promise<import('./received.js').Reply | 'not ours'>}  the latter: another phone uses our id
   */
  async #post(batch) {
    const cursor = (await this.#store.getMeta('cursor')) ?? 0;
    try {
      const reply = await this.api.post('/api/sync', {
        app: this.#build(),
        v: 1,
        device: this.#device.id,
        cursor,
        storage: { promised: this.#device.kept.value ?? null, installed: isInstalled() },
        // What another phone could not send itself claims no identity for this one.
        events: batch.map(({ event, hash, own }) => ({ event, hash, ...(own ? {} : { relayed: true }) })),
      });
      if (await isSound(reply)) return reply;
    } catch (error) {
      const taken = error instanceof ApiError && error.status === 403 && error.field === 'device';
      if (taken) return 'not ours';
      throw error;
    }
    throw new ApiError('untrusted', 'The answer of the server arrived damaged. It is asked for again.');
  }

  /**
   * Store a reply, unless it shows that phone and server have to start over.
   * @param {import('./received.js').Reply} reply
   * @returns {Promise<'' | 'went back' | 'forked'>}
   */
  async #take(reply) {
    if (await serverWentBack(this.#store, reply)) return 'went back';
    const { forked } = await makingRoom(this.#store, () => storeReply(this.#store, reply));
    return forked ? 'forked' : '';
  }

  /**
   * The unsent events after a place, as many as one request may carry.
   * @param {number} after
   * @returns {Promise<import('../log/store.js').EventRecord[]>}
   */
  async #batch(after) {
    const range = IDBKeyRange.lowerBound(after, true);
    const records = await this.#store.withDb((db) =>
      db.getAllFromIndex('events', 'unsent', range, BATCH_EVENTS),
    );
    let characters = 0;
    const fitting = records.findIndex((record) => {
      characters += JSON.stringify(record.event).length + 100;
      return characters > BATCH_CHARACTERS;
    });
    return fitting < 0 ? records : records.slice(0, Math.max(1, fitting));
  }

  /** Count again what waits; 'sent' and 'not sent' follow from it, in whichever tab it was sent. */
  async #count() {
    const waiting = await countUnsent(this.#store);
    const something = waiting.unsentEvents + waiting.unsentPhotos > 0;
    const { state } = this.status.value;
    const counted = something ? 'not sent' : 'sent';
    const next = state === 'sent' || state === 'not sent' ? counted : state;
    this.#set({ ...waiting, state: next });
    return something;
  }

  /**
   * Change the status; `toSend` follows from it.
   * @param {Partial<SyncStatus>} change
   */
  #set(change) {
    const next = { ...this.status.value, ...change };
    const { events, photos } = next.toSend ?? { events: 0, photos: 0 };
    const toSend = { events: Math.max(events, next.unsentEvents), photos: Math.max(photos, next.unsentPhotos) };
    this.status.set({ ...next, toSend: next.state === 'sending' ? toSend : null });
  }

  async #sayOutcome() {
    const something = await this.#count();
    const refusal = something ? await firstRefusal(this.#store) : '';
    const older = this.#device.server.isOlder ? `${OLDER_SERVER} ` : '';
    if (refusal) this.#say('refused', `${older}${refusal}`);
    else this.#say(something ? 'not sent' : 'sent', '');
    this.#set({ lastSyncAt: Date.now() });
  }

  /** @param {unknown} error */
  #sayFailure(error) {
    if (isQuotaError(error)) {
      this.#say('not sent', 'This phone is full and cannot note what was sent. What you entered is kept. Free some space on it.');
    } else if (!(error instanceof ApiError)) {
      this.#say('not sent', `This phone could not finish sending. ${error}`);
    } else if (error.kind === 'in trouble') {
      this.#say('server in trouble', error.sentence);
    } else if (error.kind === 'not paired' || error.kind === 'refused') {
      this.#say(error.kind, error.sentence);
    } else {
      this.#say('server unreachable', error.sentence);
    }
  }

  /**
   * @param {SyncState} state
   * @param {string} sentence
   */
  #say(state, sentence) {
    this.#set({ state, sentence });
  }

  #schedule() {
    const retry = Math.min(FIRST_RETRY_SECONDS * 2 ** (this.#failures - 1), LAST_RETRY_SECONDS);
    // Jitter, so that a workshop full of phones does not come back at the same instant.
    const seconds = (this.#failures ? retry : CALM_SECONDS) * (0.5 + Math.random());
    // Without a pairing there is nothing to wait for.
    const waits = this.#failures && this.status.value.state !== 'not paired';
    this.#set({ nextTryAt: waits ? Date.now() + seconds * 1000 : null });
    this.#timer = setTimeout(() => {
      if (document.visibilityState === 'visible') this.now();
      else this.#schedule();
    }, seconds * 1000);
  }
}
