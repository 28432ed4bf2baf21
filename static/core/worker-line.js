// @ts-check
/**
 * The line to one worker of the core: a question goes out, its answer comes back, and a watch ends what hangs.
 */

/**
 * The worker gave no answer in time, or one that only a fault gives; it has to be replaced. `told` is the message of
 * it: it may be thrown before the words have come.
 */
export class Broken extends Error {
  /**
   * @param {string} msg
   * @param {Record<string, unknown>} [args]
   */
  constructor(msg, args = {}) {
    super(msg);
    this.name = 'Broken';
    this.told = { msg, args };
  }
}

/**
 * @typedef {object} Following   a question that the worker answers next, without being asked again
 * @property {string} text
 * @property {number} seconds
 */

/** One worker, from its start to its end. */
export class WorkerLine {
  /**
   * @param {URL} url        of the worker's script
   * @param {string} name
   */
  constructor(url, name) {
    this.#worker = new Worker(url, { type: 'module', name });
  }

  #worker;
  #nextId = 1;

  /**
   * Hand over the parts from which the worker starts the core.
   * @param {{wasm: ArrayBuffer} & import('./parts.js').SomeFiles} parts
   * @param {number} seconds
   */
  start(parts, seconds) {
    return this.#post({ start: parts }, seconds);
  }

  /**
   * Hand over files of the core that come after the others.
   * @param {import('./parts.js').SomeFiles} more
   * @param {number} seconds
   */
  add(more, seconds) {
    return this.#post({ more }, seconds);
  }

  /**
   * Ask one question, and in the same message, where there is one, the `following`.
   * @param {string} text
   * @param {number} seconds
   * @param {Following} [following]
   * @returns {{answer: Promise<string>, next: Promise<string> | null}}
   */
  ask(text, seconds, following) {
    if (!following) return { answer: this.#post({ text }, seconds), next: null };
    const id = this.#nextId;
    this.#nextId += 1;
    const next = this.#hear(id, seconds + following.seconds);
    // Who asks for it later hears of a fault then.
    next.catch(() => undefined);
    return { answer: this.#post({ text, next: { id, text: following.text } }, seconds), next };
  }

  /** End the worker; what it has not answered stays without answer. */
  end() {
    this.#worker.terminate();
  }

  /**
   * @param {Record<string, unknown>} message
   * @param {number} seconds
   */
  #post(message, seconds) {
    const id = this.#nextId;
    this.#nextId += 1;
    const answer = this.#hear(id, seconds);
    this.#worker.postMessage({ ...message, id });
    return answer;
  }

  /**
   * Wait for the answer of one message, watched.
   * @param {number} id
   * @param {number} seconds
   * @returns {Promise<string>}
   */
  #hear(id, seconds) {
    const worker = this.#worker;
    return new Promise((resolve, reject) => {
      const watch = watchdog(seconds, () =>
        settle(() => reject(new Broken('troubles-no-answer', { seconds: String(seconds) }))),
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
        else settle(() => reject(new Broken('troubles-core-failed', { fault: String(data.fault) })));
      };
      const onError = (/** @type {ErrorEvent} */ event) => {
        event.preventDefault();
        settle(() => reject(event.message ? new Broken('troubles-worker-failed', { fault: event.message }) : new Broken('troubles-worker-not-loaded')));
      };
      worker.addEventListener('message', onMessage);
      worker.addEventListener('error', onError);
    });
  }
}

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
