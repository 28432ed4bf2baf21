// @ts-check
/**
 * The app's one scanner, and the same camera for photographing.
 *
 * It reads QR codes and hands over their text; it never opens one. What a text means is the core's to
 * say. Always the same reader on every phone: the browsers' own ones are missing or dead on many.
 */

import { BarcodeDetector, prepareZXingModule } from 'barcode-detector/ponyfill';

import { Finder } from './finder.js';

const READER_URL = '/app/vendor/zxing-wasm/zxing_reader.wasm';
const FRAME_MS = 200;
/** A code that left the picture for this long counts as shown again when it comes back. */
const GONE_MS = 1500;
const LONG_SIDE_OF_FILE = 4096;

/**
 * @typedef {object} CameraHandle
 * @property {() => void} stop                  ends it and empties the host
 * @property {() => void} pause                 keeps the picture, reads nothing
 * @property {() => void} resume                reads again; the code in view counts as new
 * @property {() => Promise<Blob>} takePhoto    what the camera sees now; rejects before there is a picture
 * @property {(sentence: string) => void} note  one line under the picture
 *
 * @typedef {object} ScannerOptions
 * @property {(texts: string[]) => void} onTexts  the texts of all codes in view, once until they change
 * @property {() => void} [onType]                the person wants to type the code; left out where the screen
 *     has its own button for it
 * @property {(trouble: import('./camera.js').CameraTrouble | null) => void} [onProblem]
 *     the finder shows it already; null once the picture runs
 * @property {string} [words]
 * @property {string} [camera]                    device id of the camera chosen last time
 * @property {(deviceId: string) => void} [onCamera]  remember this choice
 *
 * @typedef {object} CameraOptions
 * @property {(file: Blob) => void} onFile        a picture was picked in place of taking one
 * @property {(trouble: import('./camera.js').CameraTrouble | null) => void} [onProblem]
 * @property {string} [words]
 * @property {string} [camera]
 * @property {(deviceId: string) => void} [onCamera]
 */

/** @type {BarcodeDetector | null} */
let detector = null;

/**
 * Show the camera in `host` and read codes from it. Call it on a tap: some phones want one.
 * @param {HTMLElement} host
 * @param {ScannerOptions} options
 * @returns {CameraHandle}
 */
export function openScanner(host, options) {
  const { onTexts, onType, words = 'Hold the code about 20 cm away' } = options;
  const seen = new Sighting(onTexts);
  const finder = new Finder(host, {
    ...options,
    words,
    framed: true,
    fileWords: 'Read it from a picture',
    other: onType && { words: 'Type the code', call: onType },
    onFile: (file) => readFile(file, finder, onTexts),
  });
  const loop = new ReadingLoop(finder, seen);
  finder.open();
  loop.start();
  return {
    stop: () => {
      loop.stop();
      finder.close();
    },
    pause: () => loop.stop(),
    resume: () => {
      seen.forget();
      loop.start();
    },
    takePhoto: () => finder.takePhoto(),
    note: (sentence) => finder.note(sentence),
  };
}

/**
 * Show the camera in `host` for photographing; nothing is read.
 * @param {HTMLElement} host
 * @param {CameraOptions} options
 * @returns {CameraHandle}
 */
export function openCamera(host, options) {
  const { words = 'Show the whole position' } = options;
  const finder = new Finder(host, { ...options, words, framed: false, fileWords: 'Use a picture' });
  finder.open();
  return {
    stop: () => finder.close(),
    pause: () => undefined,
    resume: () => undefined,
    takePhoto: () => finder.takePhoto(),
    note: (sentence) => finder.note(sentence),
  };
}

/**
 * Read the codes in a canvas, from left to right and top to bottom.
 * @param {HTMLCanvasElement} canvas
 * @returns {Promise<string[]>}
 */
async function readCodes(canvas) {
  if (!detector) {
    prepareZXingModule({
      overrides: {
        // Left alone, it would fetch its wasm from a public server: dead without a network.
        locateFile: (/** @type {string} */ path, /** @type {string} */ prefix) =>
          path.endsWith('.wasm') ? READER_URL : prefix + path,
      },
    });
    detector = new BarcodeDetector({ formats: ['qr_code'] });
  }
  const found = await detector.detect(canvas);
  const inOrder = found.sort((a, b) => a.boundingBox.y - b.boundingBox.y || a.boundingBox.x - b.boundingBox.x);
  return [...new Set(inOrder.map(({ rawValue }) => rawValue))];
}

/** Reads the picture about five times a second, never two at once. */
class ReadingLoop {
  /**
   * @param {Finder} finder
   * @param {Sighting} seen
   */
  constructor(finder, seen) {
    this.#finder = finder;
    this.#seen = seen;
  }

  #finder;
  #seen;
  #canvas = document.createElement('canvas');
  #timer = 0;
  #on = false;

  start() {
    if (this.#on) return;
    this.#on = true;
    this.#wait(0);
  }

  stop() {
    this.#on = false;
    clearTimeout(this.#timer);
    this.#canvas.width = 0;
  }

  /** @param {number} ms */
  #wait(ms) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#read(), ms);
  }

  async #read() {
    const began = performance.now();
    if (this.#finder.camera.running) {
      drawVisible(this.#finder.video, this.#canvas);
      try {
        const texts = await readCodes(this.#canvas);
        if (this.#on) this.#seen.report(texts);
      } catch {
        this.#finder.note('Codes cannot be read on this phone. Type the code that is printed beside it.');
        return;
      }
    }
    const took = performance.now() - began;
    // A slow phone gets as much rest as work, so that its screen stays quick.
    if (this.#on) this.#wait(Math.max(FRAME_MS - took, took));
  }
}

/** Tells each set of codes once, however many frames it stays in view. */
class Sighting {
  /** @param {(texts: string[]) => void} onTexts */
  constructor(onTexts) {
    this.#onTexts = onTexts;
  }

  #onTexts;
  #last = '';
  #lastAt = 0;

  forget() {
    this.#last = '';
  }

  /** @param {string[]} texts */
  report(texts) {
    const now = performance.now();
    if (now - this.#lastAt > GONE_MS) this.forget();
    if (!texts.length) return;
    this.#lastAt = now;
    const key = JSON.stringify([...texts].sort());
    if (key === this.#last) return;
    this.#last = key;
    // Only an extra; and browsers complain when nobody has touched the page yet.
    if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.(60);
    this.#onTexts(texts);
  }
}

/**
 * Draw the part of the video that the finder shows: nobody expects a code to be read that is out of sight.
 * @param {HTMLVideoElement} video
 * @param {HTMLCanvasElement} canvas
 */
function drawVisible(video, canvas) {
  const { videoWidth, videoHeight, clientWidth, clientHeight } = video;
  const scale = Math.max(clientWidth / videoWidth, clientHeight / videoHeight) || 1;
  const width = Math.min(videoWidth, Math.round(clientWidth / scale) || videoWidth);
  const height = Math.min(videoHeight, Math.round(clientHeight / scale) || videoHeight);
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }
  const context = canvas.getContext('2d', { willReadFrequently: true });
  context?.drawImage(video, (width - videoWidth) / 2, (height - videoHeight) / 2);
}

/**
 * Read codes from a picked picture.
 * @param {Blob} file
 * @param {Finder} finder
 * @param {(texts: string[]) => void} onTexts
 */
async function readFile(file, finder, onTexts) {
  finder.note('');
  try {
    const bitmap = await createImageBitmap(file);
    const scale = Math.min(1, LONG_SIDE_OF_FILE / Math.max(bitmap.width, bitmap.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(bitmap.width * scale);
    canvas.height = Math.round(bitmap.height * scale);
    const context = canvas.getContext('2d', { willReadFrequently: true });
    context?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    bitmap.close();
    const texts = await readCodes(canvas);
    canvas.width = 0;
    if (texts.length) onTexts(texts);
    else finder.note('No code found in this picture. Take it closer, or type the code.');
  } catch {
    finder.note('This picture could not be opened. Take another, or type the code.');
  }
}
