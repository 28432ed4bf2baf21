// @ts-check
/**
 * The page's side of the core: starts its worker, asks it one thing at a time, restarts it when it hangs.
 *
 * The phone decides nothing by itself; every rule, sentence and probability comes from here. Where no
 * core can run (no WebAssembly, a broken install), `available` is false, calls throw, and the log still
 * saves facts, marked unchecked.
 */

import { observable } from '../phone/observable.js';
import { APP } from '../place.js';

const WASM_URL = new URL('vendor/micropython/micropython.wasm', APP);
const FILES_URL = new URL('core.json', APP);
const WORKER_URL = new URL('core/worker.js', APP);

/** Asked at each start; the answer must come back unharmed or the core is not used. */
const SELF_CHECK = { text: 'ä😀', largest: 9007199254740991, nothing: null, yes: true };
const SELF_CHECK_TEXT = '{"largest":9007199254740991,"nothing":null,"text":"ä😀","yes":true}';

/**
 * By which core's files this app concludes, as records carry it.
 * @returns {Promise<string>}
 */
export async function coreDigest() {
  return (await (await fetch(FILES_URL)).json()).digest;
}

/** The core refused or failed; `field`, `found` and `wanted` are filled where it named them. */
export class CoreError extends Error {
  /**
   * @param {{field?: string, found?: string, wanted?: string, message: string}} error
   * @param {boolean} [broken]  the core itself failed; what was asked may be quite right
   */
  constructor({ field = '', found = '', wanted = '', message }, broken = false) {
    super(message);
    this.name = 'CoreError';
    this.broken = broken;
    this.field = field;
    this.found = found;
    this.wanted = wanted;
  }
}

/**
 * @typedef {object} CoreOptions
 * @property {() => Promise<Array<{event: object}>>} [replay]
 *     the whole log in order, from which a restarted worker gets its state back
 * @property {number} [timeoutSeconds]  a call that takes longer is given up; 30 when left out
 *
 * @typedef {object} CoreTrouble
 * @property {'none' | 'unavailable' | 'restarted'} state
 * @property {string} sentence  what a person is told; empty when there is none
 */

/** The core as the app talks to it. */
export class Core {
  /**
   * Start the core. Never throws: look at `available` and `trouble`.
   * @param {CoreOptions} [options]
   * @returns {Promise<Core>}
   */
  static async start(options = {}) {
    const core = new Core(options);
    await core.#begin();
    return core;
  }

  /** @param {CoreOptions} options */
  constructor({ replay, timeoutSeconds = 30 }) {
    this.available = false;
    this.trouble = observable(/** @type {CoreTrouble} */ ({ state: 'none', sentence: '' }));
    /** How often a hung worker was replaced. */
    this.restarts = 0;
    this.#replay = replay ?? (async () => []);
    this.#timeoutSeconds = timeoutSeconds;
  }

  #replay;
  #timeoutSeconds;
  #nextId = 1;
  /** @type {Worker | null} */
  #worker = null;
  /** @type {{wasm: ArrayBuffer, files: Record<string, string>} | null} */
  #parts = null;
  /** @type {Promise<unknown>} */
  #queue = Promise.resolve();

  /**
   * Ask the core one question; calls are answered in the order in which they were made.
   * @param {string} op
   * @param {Record<string, unknown>} [args]
   * @param {{onlyAfterRestarts?: number, seconds?: number}} [options]
   *     onlyAfterRestarts: refuse if the worker was replaced since `restarts` was read, for the log was
   *     replayed then; seconds: give up sooner than other calls
   * @returns {Promise<any>}
   */
  call(op, args = {}, { onlyAfterRestarts = undefined, seconds = this.#timeoutSeconds } = {}) {
    const result = this.#queue.then(() => {
      if (onlyAfterRestarts !== undefined && onlyAfterRestarts !== this.restarts) {
        throw new CoreError({ field: op, message: 'The core was started again meanwhile.' }, true);
      }
      return this.#ask(op, args, seconds);
    });
    this.#queue = result.catch(() => undefined);
    return result;
  }

  /** Give the replayed log from now on; the log is opened after the core. */
  setReplay(/** @type {() => Promise<Array<{event: object}>>} */ replay) {
    this.#replay = replay;
  }

  /** End the worker; further calls throw. */
  stop() {
    this.#endWorker();
    this.available = false;
  }

  #endWorker() {
    this.#worker?.terminate();
    this.#worker = null;
  }

  async #begin() {
    if (typeof WebAssembly !== 'object' || typeof Worker !== 'function') {
      this.giveUp('This browser cannot run the checks (no WebAssembly).');
      return;
    }
    try {
      this.#parts ??= await this.#load();
      await this.#startWorker();
      this.available = true;
    } catch (error) {
      this.giveUp(`The checks could not be started. ${messageOf(error)}`);
    }
  }

  /**
   * Do without the core from here on, and say so.
   * @param {string} why  one sentence
   */
  giveUp(why) {
    this.stop();
    this.trouble.set({
      state: 'unavailable',
      sentence: `${why} What you enter is saved on this phone, marked as unchecked.`,
    });
  }

  /** The parts that the worker needs, from the offline cache or the server. */
  async #load() {
    const [wasm, files] = await Promise.all([fetch(WASM_URL), fetch(FILES_URL)]);
    for (const response of [wasm, files]) {
      if (!response.ok) throw new Error(`${response.url} answered ${response.status}`);
    }
    return { wasm: await wasm.arrayBuffer(), files: (await files.json()).files };
  }

  async #startWorker() {
    this.#worker = new Worker(WORKER_URL, { type: 'module', name: 'core' });
    await this.#send({ start: this.#parts });
    const { text } = await this.#askWorker('canonical', { value: SELF_CHECK });
    if (text !== SELF_CHECK_TEXT) throw new Error('its self-check came back changed');
  }

  /**
   * @param {string} op
   * @param {Record<string, unknown>} args
   * @param {number} seconds
   */
  async #ask(op, args, seconds) {
    if (!this.available) throw new CoreError({ message: this.trouble.value.sentence }, true);
    try {
      return await this.#askWorker(op, args, seconds);
    } catch (error) {
      if (!(error instanceof Broken)) throw error;
      // After a fault in the middle of a fold the state is worth nothing, exactly as after a hang.
      await this.#restart();
      throw new CoreError({ field: op, message: `${error.message} The checks were started again.` }, true);
    }
  }

  /**
   * @param {string} op
   * @param {Record<string, unknown>} args
   * @param {number} [seconds]
   */
  async #askWorker(op, args, seconds) {
    const reply = JSON.parse(await this.#send({ text: JSON.stringify({ ...args, op }) }, seconds));
    if (!reply.ok) throw new CoreError(reply.error);
    return reply.value;
  }

  async #restart() {
    this.#endWorker();
    this.restarts += 1;
    await this.#begin();
    if (!this.available) return;
    this.trouble.set({ state: 'restarted', sentence: 'The checks stopped and were started again.' });
    try {
      await this.#askWorker('reset', { events: await this.#replay() });
    } catch (error) {
      this.giveUp(`The checks could not read the log again. ${messageOf(error)}`);
    }
  }

  /**
   * Post one message and wait for its answer, watched.
   * @param {Record<string, unknown>} message
   * @param {number} [seconds]
   * @returns {Promise<string>}
   */
  #send(message, seconds = this.#timeoutSeconds) {
    const worker = this.#worker;
    if (!worker) return Promise.reject(new CoreError({ message: 'the core is not running' }));
    const id = this.#nextId;
    this.#nextId += 1;
    return new Promise((resolve, reject) => {
      const watch = watchdog(seconds, () =>
        settle(() => reject(new Broken(`No answer within ${seconds} seconds.`))),
      );
      /** @param {() => void} finish */
      const settle = (finish) => {
        watch.stop();
        worker.removeEventListener('message', onMessage);
        worker.removeEventListener('error', onError);
        finish();
      };
      const onMessage = (/** @type {MessageEvent} */ { data }) => {
        if (data.id !== id) return;
        if (data.fault === undefined) settle(() => resolve(data.text));
        else settle(() => reject(new Broken(`The core failed: ${data.fault}.`)));
      };
      const onError = (/** @type {ErrorEvent} */ event) => {
        event.preventDefault();
        settle(() => reject(new Broken(event.message || 'Its worker did not load.')));
      };
      worker.addEventListener('message', onMessage);
      worker.addEventListener('error', onError);
      worker.postMessage({ ...message, id });
    });
  }
}

/** The worker gave no answer in time, or one that only a fault gives; it has to be replaced. */
class Broken extends Error {}

/**
 * Call `onLate` after so many seconds during which this page was awake. A phone in a pocket stops page
 * and worker alike, and a plain timer would blame the worker for the time asleep.
 * @param {number} seconds
 * @param {() => void} onLate
 */
function watchdog(seconds, onLate) {
  let awake = 0;
  const tick = Math.min(1, seconds);
  const timer = setInterval(() => {
    awake += tick;
    if (awake >= seconds) onLate();
  }, tick * 1000);
  return { stop: () => clearInterval(timer) };
}

/** @param {unknown} error */
function messageOf(error) {
  return error instanceof Error ? error.message : String(error);
}
