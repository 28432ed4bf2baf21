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
import { render, say, startWords } from '../words/words.js';
import { CoreParts } from './parts.js';
import { Broken, WorkerLine } from './worker-line.js';

const WORKER_URL = new URL('core/worker.js', APP);

/** Asked at each start; the answer must come back unharmed or the core is not used. */
const SELF_CHECK = { text: 'ä😀', largest: 9007199254740991, nothing: null, yes: true };
const SELF_CHECK_TEXT = '{"largest":9007199254740991,"nothing":null,"text":"ä😀","yes":true}';

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

/** @typedef {import('./views.js').Answers} Answers */

/**
 * @typedef {object} CoreOptions
 * @property {number} [timeoutSeconds]  a call that takes longer is given up; 30 when left out
 *
 * @typedef {(op: string, args?: Record<string, unknown>, options?: {raw?: Record<string, string>, seconds?: number}) => Promise<any>} Ask
 *
 * @typedef {object} Keeper      who keeps what the core folds
 * @property {(ask: Ask) => Promise<void>} refill   gives a core that knows nothing its state back
 * @property {(missing: Missing, ask: Ask) => Promise<void>} supply
 *     gives it what it said it lacks for an answer
 *
 * @typedef {{jobs?: string[], log?: true, files?: true}} Missing  jobs that are not in its memory, the whole log, or
 *     files of its own
 *
 * @typedef {object} CallOptions
 * @property {number} [onlyAfterRestarts]  refuse if the worker was replaced since `restarts` was read, for the log
 *     was given anew then
 * @property {number} [seconds]            give up sooner, or later, than other calls
 * @property {Record<string, string>} [raw]  further arguments that are JSON already
 * @property {boolean} [nobodyWaits]       for the answer
 * @property {Question | null} [following]   what will be asked next: answered in the same trip, and kept for it
 *
 * @typedef {{op: string, args: Record<string, unknown>}} Question
 *
 * @typedef {object} CoreTrouble
 * @property {'none' | 'unavailable' | 'restarted'} state
 * @property {string} sentence  what a person is told; empty when there is none
 */

/** After these, an answer that was got before is of another state. */
const CHANGING = new Set(['reset', 'append', 'add', 'insert', 'check_and_add', 'restore']);
/** Answers that go back to the core, into storage or into files as they are; no person reads them. */
const HANDED_BACK = new Set(['snapshot', 'job_pieces', 'state', 'record_parts', 'record_seal', 'record_check']);
/** An answer may need one thing after another; more rounds than that are a fault. */
const MOST_SUPPLIES = 20;

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
  constructor({ timeoutSeconds = 30 }) {
    this.available = false;
    this.trouble = observable(/** @type {CoreTrouble} */ ({ state: 'none', sentence: '' }));
    /** How often the worker was replaced. */
    this.restarts = 0;
    /** When somebody asked last who waits for the answer, by `performance.now()`. */
    this.waitedAt = -Infinity;
    this.#timeoutSeconds = timeoutSeconds;
  }

  #timeoutSeconds;
  /** @type {WorkerLine | null} */
  #line = null;
  #parts = new CoreParts();
  /** @type {Keeper} */
  #keeper = { refill: async () => undefined, supply: async () => undefined };
  /** @type {Promise<unknown>} */
  #queue = Promise.resolve();
  /** The answer that came along with the one before. @type {{text: string, answer: Promise<string | null>} | null} */
  #ahead = null;

  /** By which files the core concludes; empty while they are not known. */
  get digest() {
    return this.#parts.digest;
  }

  /**
   * Ask the core one question; calls are answered in the order in which they were made.
   * @template {string} Op
   * @param {Op} op
   * @param {Record<string, unknown>} [args]
   * @param {CallOptions} [options]
   * @returns {Promise<Op extends keyof Answers ? Answers[Op] : any>}  what the screens draw is declared in views.d.ts
   */
  call(op, args = {}, options = {}) {
    if (!options.nobodyWaits) this.waitedAt = performance.now();
    const done = this.#queue.then(() => {
      const { onlyAfterRestarts } = options;
      if (onlyAfterRestarts !== undefined && onlyAfterRestarts !== this.restarts) {
        throw new CoreError({ field: op, message: say('troubles-restarted-meanwhile') }, true);
      }
      return this.#ask(op, args, options);
    });
    // What was asked in the same trip is answered before anything else is asked.
    this.#queue = done.then(() => this.#ahead?.answer).catch(() => undefined);
    return done;
  }

  /** Say who keeps the log from now on; it is opened after the core. */
  keptBy(/** @type {Keeper} */ keeper) {
    this.#keeper = keeper;
  }

  /** End the worker; further calls throw. */
  stop() {
    this.#endWorker();
    this.available = false;
  }

  /**
   * Start afresh with what the keeper gives: memory that a worker has once taken comes back only with its end.
   * @returns {Promise<void>}
   */
  renew() {
    const done = this.#queue.then(async () => {
      if (this.available) await this.#startAgain();
    });
    this.#queue = done.catch(() => undefined);
    return done;
  }

  #endWorker() {
    this.#line?.end();
    this.#line = null;
    this.#ahead = null;
  }

  async #begin() {
    // Beside the rest; whoever draws hears of it when they do not come.
    const words = startWords().catch(() => undefined);
    if (typeof WebAssembly !== 'object' || typeof Worker !== 'function') {
      await words;
      this.giveUp(say('troubles-no-webassembly'));
      return;
    }
    try {
      await this.#startWorker(await this.#parts.first());
      await words;
      this.available = true;
    } catch (error) {
      await words;
      this.giveUp(say('troubles-not-started', { why: messageOf(error) }));
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
      sentence: say('troubles-unchecked', { why }),
    });
  }

  /** Read the files that only some answers need: once the first screen stands, or when such an answer is wanted. */
  readRest() {
    return this.#parts.rest().catch(() => {
      throw new CoreError({ message: say('frame-screen-missing') }, true);
    });
  }

  /** @param {{wasm: ArrayBuffer} & import('./parts.js').SomeFiles} parts */
  async #startWorker(parts) {
    this.#line = new WorkerLine(WORKER_URL, 'core');
    await this.#line.start(parts, this.#timeoutSeconds);
    const { text } = await this.#askWorker('canonical', { value: SELF_CHECK });
    if (text !== SELF_CHECK_TEXT) throw new Broken('troubles-self-check');
  }

  /**
   * @param {string} op
   * @param {Record<string, unknown>} args
   * @param {CallOptions} options
   */
  async #ask(op, args, options) {
    if (!this.available) throw new CoreError({ message: this.trouble.value.sentence }, true);
    const ahead = await this.#takeAhead(op, args);
    if (ahead?.ok) return said(op, ahead.value);
    try {
      return said(op, await this.#askWorker(op, args, options));
    } catch (error) {
      if (!(error instanceof Broken)) throw error;
      // After a fault in the middle of a fold the state is worth nothing, exactly as after a hang.
      await this.#startAgain({ state: 'restarted', sentence: say('troubles-restarted') });
      throw new CoreError({ field: op, message: say('troubles-restarted-after', { why: messageOf(error) }) }, true);
    }
  }

  /**
   * Ask the worker, and again each time it was given what it lacked.
   * @param {string} op
   * @param {Record<string, unknown>} [args]
   * @param {CallOptions} [options]
   */
  async #askWorker(op, args = {}, { seconds = this.#timeoutSeconds, raw = {}, following = null } = {}) {
    const text = questionText(op, args, raw);
    if (CHANGING.has(op)) this.#ahead = null;
    for (let supplied = 0; supplied <= MOST_SUPPLIES; supplied += 1) {
      const line = this.#line;
      if (!line) throw new CoreError({ message: say('troubles-core-not-running') });
      const next = following && { text: questionText(following.op, following.args), seconds: this.#timeoutSeconds };
      const asked = line.ask(text, seconds, next ?? undefined);
      const reply = JSON.parse(await asked.answer);
      if (reply.ok) {
        if (next && asked.next) this.#ahead = { text: next.text, answer: asked.next.catch(() => null) };
        return reply.value;
      }
      if (!reply.missing) throw new CoreError(render(reply.error));
      if (reply.missing.files) await line.add(await this.readRest(), this.#timeoutSeconds);
      else await this.#keeper.supply(reply.missing, (...question) => this.#askWorker(...question));
    }
    throw new Broken('troubles-asked-too-often', { times: MOST_SUPPLIES });
  }

  /**
   * What came along with the answer before, if it is the answer to this question.
   * @param {string} op
   * @param {Record<string, unknown>} args
   */
  async #takeAhead(op, args) {
    if (this.#ahead?.text !== questionText(op, args)) return null;
    const { answer } = this.#ahead;
    this.#ahead = null;
    return JSON.parse((await answer) ?? '{"ok":false}');
  }

  /** @param {CoreTrouble} [trouble]  to tell of, once it runs again */
  async #startAgain(trouble) {
    this.#endWorker();
    this.restarts += 1;
    await this.#begin();
    if (!this.available) return;
    if (trouble) this.trouble.set(trouble);
    try {
      await this.#keeper.refill((...question) => this.#askWorker(...question));
    } catch (error) {
      this.giveUp(say('troubles-log-not-read-again', { why: messageOf(error) }));
    }
  }
}

/**
 * @param {string} op
 * @param {Record<string, unknown>} args
 * @param {Record<string, string>} [raw]
 */
function questionText(op, args, raw = {}) {
  const more = Object.entries(raw).map(([name, text]) => `,${JSON.stringify(name)}:${text}`);
  return `${JSON.stringify({ ...args, op }).slice(0, -1)}${more.join('')}}`;
}

/**
 * An answer as a person reads it.
 * @param {string} op
 * @param {unknown} value
 */
function said(op, value) {
  return HANDED_BACK.has(op) ? value : render(value);
}

/** @param {unknown} error */
function messageOf(error) {
  if (error instanceof Broken) return render(error.told);
  return error instanceof Error ? error.message : String(error);
}
