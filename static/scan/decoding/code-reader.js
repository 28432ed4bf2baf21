// @ts-check
/**
 * The page's side of reading codes: starts the worker that does it, and hands it one picture at a time.
 *
 * Always the same reader on every phone: the browsers' own ones are missing or dead on many.
 */

import { APP } from '../../place.js';

const READER_URL = new URL('vendor/zxing-wasm/zxing_reader.wasm', APP);
const WORKER_URL = new URL('scan/decoding/code-worker.js', APP);
/** A picture that takes longer is given up, and the worker with it. */
const LATE_MS = 20_000;

/** @typedef {import('./code-worker.js').Found} Found */

/** @type {Promise<Worker> | null} */
let starting = null;
let lastId = 0;

/**
 * Read the codes in a canvas, from the top down and side by side from the left.
 * @param {HTMLCanvasElement} canvas
 * @param {{formats?: string[], more?: number | 'all'}} [options]  `more`: which try follows where nothing is
 *     found; count it up from picture to picture, or take all
 * @returns {Promise<Found[]>}  rejects where codes cannot be read at all
 */
export async function readCodes(canvas, { formats = ['qr_code'], more = 0 } = {}) {
  const { width, height } = canvas;
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context || !width || !height) return [];
  const pixels = context.getImageData(0, 0, width, height).data.buffer;
  starting ??= start();
  const worker = await starting.catch((error) => {
    starting = null;
    throw error;
  });
  return ask(worker, { picture: { width, height, pixels }, formats, more }, [pixels]);
}

/** @returns {Promise<Worker>} */
async function start() {
  // Not on the phone yet: asking would only fill the console of the browser.
  if (!navigator.onLine && !navigator.serviceWorker?.controller) throw new Error('the reader needs the network once');
  const response = await fetch(READER_URL);
  if (!response.ok) throw new Error(`the reader answered ${response.status}`);
  const wasm = await response.arrayBuffer();
  const worker = new Worker(WORKER_URL, { type: 'module' });
  await ask(worker, { wasm }, [wasm]);
  return worker;
}

/**
 * @param {Worker} worker
 * @param {Record<string, unknown>} message
 * @param {Transferable[]} handedOver
 * @returns {Promise<Found[]>}
 */
function ask(worker, message, handedOver) {
  lastId += 1;
  const id = lastId;
  return new Promise((resolve, reject) => {
    /** @param {() => void} finish */
    const settle = (finish) => {
      clearTimeout(late);
      worker.removeEventListener('message', onMessage);
      worker.removeEventListener('error', onError);
      finish();
    };
    /** @param {string} why */
    const giveUp = (why) => settle(() => {
      worker.terminate();
      starting = null;
      reject(new Error(why));
    });
    const late = setTimeout(() => giveUp('the reader took too long'), LATE_MS);
    const onMessage = (/** @type {MessageEvent} */ { data }) => {
      if (data.id !== id) return;
      if (data.fault === undefined) settle(() => resolve(data.found));
      else giveUp(data.fault);
    };
    const onError = (/** @type {ErrorEvent} */ event) => {
      event.preventDefault();
      giveUp(event.message || 'the reader did not load');
    };
    worker.addEventListener('message', onMessage);
    worker.addEventListener('error', onError);
    worker.postMessage({ ...message, id }, handedOver);
  });
}
