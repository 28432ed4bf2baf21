// @ts-check
/**
 * Who this installation is: its random id, the name of whoever uses it, and whether its data survived.
 *
 * A device id is never used twice. Where the browser threw the data away, or the same id turns out to
 * live on a second phone, a new id is made and a person is told.
 */

import { observable } from '../phone/observable.js';
import { PLACE_WORDS } from '../phone/place-words.js';
import { ownName } from '../place.js';
import { ServerStanding } from './server-standing.js';

/** Outlives a lost database in the same browser, so that the loss is noticed. */
const MARKER = ownName('swaptrail.device');

const MET = 'met';
const NOTICE = 'notice';

/** @type {DeviceNotice} */
const UNTOLD = { state: 'none', sentence: '' };

/** As many as the server takes. */
const MOST_PEOPLE = 20;

/** Until the server has said how many. */
const RETURN_DAYS = 30;

/**
 * @typedef {'bench' | 'counter'} Role   jobs, or returns at the parts counter
 *
 * @typedef {object} Head          the end of this device's chain, kept in `meta`
 * @property {string} device
 * @property {number} seq          0 before the first event
 * @property {string} hash         "" before the first event
 * @property {number} nextUnsent   next place among this phone's unsent events
 *
 * @typedef {object} StorageFacts
 * @property {boolean} installed        on the home screen
 * @property {number} usage             bytes
 * @property {number | undefined} left  bytes that the browser says are left; it may say too much
 *
 * @typedef {object} DeviceNotice
 * @property {'none' | 'lost' | 'forked' | 'renewed'} state
 * @property {string} sentence
 */

/**
 * Who works with the phone that keeps this store, as was said on it.
 * @param {import('./store.js').Store} store
 * @returns {Promise<string[]>}
 */
export async function peopleOf(store) {
  const said = (await store.getMeta('setting.people')) ?? [];
  return [...new Set([...said, await store.getMeta('actor')])].filter(Boolean).slice(-MOST_PEOPLE);
}

/** This installation. Open it with `openDevice`. */
export class Device {
  /**
   * @param {import('./store.js').Store} store
   * @param {Head} head
   * @param {string} actor
   */
  constructor(store, head, actor) {
    /** "d" and 16 hex digits. */
    this.id = head.device;
    /** The name that stands in every event. */
    this.actor = actor;
    /** What this phone is for; the server knows, and says so whenever it answers. */
    this.role = observable(/** @type {Role} */ ('bench'));
    /** How many days a sensor is taken back at the counter; 0 is at any time. */
    this.returnDays = RETURN_DAYS;
    /** Whether the server asks other counters of a chain. */
    this.asksOthers = false;
    this.notice = observable(/** @type {DeviceNotice} */ (UNTOLD));
    /** What the browser answered when asked to keep our data; undefined before. */
    this.kept = observable(/** @type {boolean | undefined} */ (undefined));
    /** What is known of the server apart from its data. */
    this.server = new ServerStanding(store);
    this.#store = store;
  }

  #store;

  /**
   * Set the name that stands in every event from now on.
   * @param {string} name  up to 80 characters
   */
  async setActor(name) {
    const actor = Array.from(name.replace(/\p{Surrogate}/gu, '').trim()).slice(0, 80).join('');
    await this.#store.setMeta('actor', actor);
    this.actor = actor;
  }

  /**
   * Somebody else works with this phone from now on; who did before is kept among those who share it.
   * @param {string} name
   */
  async handTo(name) {
    const before = await this.people();
    await this.setActor(name);
    await this.saveSetting('people', before);
  }

  /** Who works with this phone, as was said on it. @returns {Promise<string[]>} */
  people() {
    return peopleOf(this.#store);
  }

  /**
   * Read or keep a small setting of this phone, such as the chosen camera.
   * @param {string} key
   * @returns {Promise<any>}
   */
  setting(key) {
    return this.#store.getMeta(`setting.${key}`);
  }

  /**
   * @param {string} key
   * @param {unknown} value
   */
  saveSetting(key, value) {
    return this.#store.setMeta(`setting.${key}`, value);
  }

  /** Read again what this phone is for. */
  async rereadStanding() {
    this.returnDays = (await this.setting('return_days')) ?? RETURN_DAYS;
    this.asksOthers = Boolean(await this.setting('register'));
    this.role.set((await this.setting('role')) ?? 'bench');
  }

  /**
   * Keep what the server says this phone is for.
   * @param {{role?: string, return_days?: number, warranty_days?: number, register?: boolean}} session
   */
  async keepStanding({ role, return_days: days, warranty_days: warranty, register = false }) {
    if (register !== this.asksOthers) {
      await this.saveSetting('register', register);
      this.asksOthers = register;
    }
    if (warranty !== undefined) await this.saveSetting('yard_warranty_days', warranty);
    if (days !== undefined && days !== this.returnDays) {
      await this.saveSetting('return_days', days);
      this.returnDays = days;
    }
    if ((role === 'bench' || role === 'counter') && role !== this.role.value) {
      await this.saveSetting('role', role);
      this.role.set(role);
    }
  }

  /** A random id for a new job, vehicle, unit or batch of labels: the letter and 12 hex digits. */
  newId(/** @type {'j' | 'v' | 'u' | 'b'} */ letter) {
    return letter + randomHex(6);
  }

  /** Random numbers 0..255, as the core wants them for new label codes. */
  randomInts(/** @type {number} */ count) {
    return Array.from(crypto.getRandomValues(new Uint8Array(count)));
  }

  /**
   * Tell a person what happened to this installation; it stays until `noticeRead`, also after a reload.
   * @param {'lost' | 'forked' | 'renewed'} state
   */
  async tell(state) {
    this.notice.set(noticeOf({ state }));
    await this.#store.setMeta(NOTICE, { state });
  }

  /** The person has read it. */
  async noticeRead() {
    await this.#store.setMeta(NOTICE, UNTOLD);
    this.notice.set(UNTOLD);
  }

  /** Whether this installation has ever been paired, as far as what is stored here says. */
  async hasMet() {
    if (await this.#store.getMeta(MET)) return true;
    // Only a sync leaves this; phones of before MET was kept have it.
    return (await this.#store.getMeta('installation')) !== undefined;
  }

  /** Remember that this installation and the server have met. */
  noteMet() {
    return this.#store.setMeta(MET, true);
  }

  /**
   * The server knows this browser by its cookie, which outlives what the browser stores: if nothing here
   * says that the two have met, what was stored is gone.
   */
  async compareWithServer() {
    if (await this.#store.getMeta(MET)) return;
    if (!(await this.hasMet())) await this.tell('lost');
    await this.noteMet();
  }

  /** Take over an id that another tab or the fork handling has put into the store. */
  async reread() {
    /** @type {Head} */
    const head = await this.#store.getMeta('head');
    if (head.device !== this.id) {
      this.id = head.device;
      mark(this.id);
    }
  }

  /**
   * Ask the browser to keep our data, and remember its answer. It may say no; the answer is no backup.
   * @returns {Promise<boolean>}
   */
  async askToKeepData() {
    const kept = (await navigator.storage?.persist?.()) ?? false;
    // Only for show: on a full phone it may be lost.
    await this.#store.setMeta('kept', kept).catch(() => undefined);
    this.kept.set(kept);
    return kept;
  }

  /**
   * What the browser says about our storage.
   * @returns {Promise<StorageFacts>}
   */
  async storage() {
    const { usage = 0, quota } = (await navigator.storage?.estimate?.()) ?? {};
    return {
      installed: isInstalled(),
      usage,
      left: quota === undefined ? undefined : Math.max(0, quota - usage),
    };
  }
}

/** Whether the app runs from the home screen and not as a page in the browser. */
export function isInstalled() {
  // The second is what the browser of an iPhone has always said it by.
  return matchMedia('(display-mode: standalone)').matches || Reflect.get(navigator, 'standalone') === true;
}

/**
 * Read who this installation is; at first start, make it up.
 * @param {import('./store.js').Store} store
 * @returns {Promise<Device>}
 */
export async function openDevice(store) {
  const fresh = newHead();
  const head = await store.write(['meta'], async (tx) => {
    const meta = tx.objectStore('meta');
    const known = await meta.get('head');
    if (!known) await meta.put(fresh, 'head');
    return known ?? fresh;
  });
  const device = new Device(store, head, (await store.getMeta('actor')) ?? '');
  await device.rereadStanding();
  await device.server.reread();
  device.notice.set(noticeOf((await store.getMeta(NOTICE)) ?? UNTOLD));
  device.kept.set(await store.getMeta('kept'));
  if (head === fresh && marked()) await device.tell('lost');
  mark(device.id);
  return device;
}

/**
 * With its sentence; one that an earlier build kept brings it along.
 * @param {{state: DeviceNotice['state'], sentence?: string}} kept
 * @returns {DeviceNotice}
 */
function noticeOf({ state, sentence = state === 'none' ? '' : PLACE_WORDS[state] }) {
  return { state, sentence };
}

/**
 * The head of a device that has recorded nothing yet.
 * @param {number} [nextUnsent]
 * @returns {Head}
 */
export function newHead(nextUnsent = 1) {
  return { device: `d${randomHex(8)}`, seq: 0, hash: '', nextUnsent };
}

/** @param {number} bytes */
function randomHex(bytes) {
  const random = crypto.getRandomValues(new Uint8Array(bytes));
  return Array.from(random, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** @param {string} id */
function mark(id) {
  try {
    localStorage.setItem(MARKER, id);
  } catch {
    // Without it only the server can notice a loss.
  }
}

function marked() {
  try {
    return localStorage.getItem(MARKER) !== null;
  } catch {
    return false;
  }
}
