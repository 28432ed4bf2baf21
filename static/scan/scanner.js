// @ts-check
/**
 * The app's one scanner, and the same camera for photographing.
 *
 * It reads codes and hands over their text; it never opens one. What a text means is the core's to say.
 */

import { Finder } from './finder.js';
import { readCodes } from './decoding/code-reader.js';
import { say } from '../words/words.js';

const FRAME_MS = 200;
/** A code that left the picture for this long counts as shown again when it comes back. */
const GONE_MS = 1500;
/** After a picture that could not be read at all: the reader is perhaps not on the phone yet, or was too slow. */
const TRY_AGAIN_MS = 2000;
/** A picked picture is read whole, then made smaller, for the tries against blur and dirt. */
const LONG_SIDES_OF_FILE = [4096, 1280];
/** Symbols of bars alone have a weak check: one counts when two pictures in a row say the same. */
const LINEAR = new Set(['code_128']);

/**
 * @typedef {object} CameraHandle
 * @property {() => void} stop                  ends it and empties the host
 * @property {() => void} pause                 keeps the picture, reads nothing
 * @property {() => void} resume                reads again; the code in view counts as new
 * @property {() => Promise<Blob>} takePhoto    what the camera sees now; rejects before there is a picture
 * @property {(sentence: string) => void} note  one line under the picture
 * @property {(words: string) => void} guide    another line over the picture
 * @property {() => boolean} [isDark]            it shows nothing, of which `onProblem` heard
 * @property {() => unknown} [start]             again, after that
 *
 * @typedef {object} ScannerOptions
 * @property {(texts: string[]) => void} onTexts  the texts of all codes in view, once until they change
 * @property {(texts: string[]) => void} [onPicture]  the texts in each picture that is looked at, before `onTexts`
 * @property {string[]} [formats]                what is read; the QR of our labels when left out
 * @property {() => void} [onType]                the person wants to type the code; left out where the screen
 *     has its own button for it
 * @property {(trouble: import('./camera.js').CameraTrouble | null) => void} [onProblem]
 *     the finder says it, without its button to start again; null once the picture runs
 * @property {string} [words]
 * @property {string} [camera]                    device id of the camera chosen last time
 * @property {(deviceId: string) => void} [onCamera]  remember this choice
 *
 * @typedef {object} CameraOptions
 * @property {(file: Blob) => void} onFile        a picture was picked in place of taking one
 * @property {(trouble: import('./camera.js').CameraTrouble | null) => void} [onProblem]
 *     the finder says it, without its button to start again; null once the picture runs
 * @property {string} [words]
 * @property {string} [camera]
 * @property {(deviceId: string) => void} [onCamera]
 */

/**
 * Show the camera in `host` and read codes from it. Call it on a tap: some phones want one.
 * @param {HTMLElement} host
 * @param {ScannerOptions} options
 * @returns {CameraHandle}
 */
export function openScanner(host, options) {
  const { onTexts, onPicture, onType, formats, words = say('scan-hold-code') } = options;
  const seen = new Sighting(onTexts, onPicture);
  const finder = new Finder(host, {
    ...options,
    words,
    framed: true,
    fileWords: say('scan-from-picture'),
    other: onType && { words: say('scan-type'), call: onType },
    onFile: (file) => readPicked(file, finder, { onTexts, formats }),
  });
  const loop = new DecodingLoop(finder, seen, formats);
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
    guide: (words) => finder.guide(words),
  };
}

/**
 * Show the camera in `host` for photographing; nothing is read.
 * @param {HTMLElement} host
 * @param {CameraOptions} options
 * @returns {CameraHandle}
 */
export function openCamera(host, options) {
  const { words = say('scan-show-position') } = options;
  const finder = new Finder(host, { ...options, words, framed: false, fileWords: say('scan-use-picture') });
  finder.open();
  return {
    stop: () => finder.close(),
    pause: () => undefined,
    resume: () => undefined,
    takePhoto: () => finder.takePhoto(),
    note: (sentence) => finder.note(sentence),
    guide: (words) => finder.guide(words),
    isDark: () => finder.isDark(),
    start: () => finder.camera.start(),
  };
}

/** Reads the picture about five times a second, never two at once. */
class DecodingLoop {
  /**
   * @param {Finder} finder
   * @param {Sighting} seen
   * @param {string[]} [formats]
   */
  constructor(finder, seen, formats) {
    this.#finder = finder;
    this.#seen = seen;
    this.#formats = formats;
  }

  #finder;
  #seen;
  #formats;
  /** Pictures looked at; each that shows no code gets another try. */
  #count = 0;
  #canvas = document.createElement('canvas');
  #timer = 0;
  #on = false;
  #failed = false;

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
        this.#count += 1;
        const found = await readCodes(this.#canvas, { formats: this.#formats, more: this.#count });
        if (this.#failed) this.#finder.note('');
        this.#failed = false;
        if (this.#on) this.#seen.report(found);
      } catch {
        this.#failed = true;
        this.#finder.note(say('scan-no-reading'));
        if (this.#on) this.#wait(TRY_AGAIN_MS);
        return;
      }
    }
    const took = performance.now() - began;
    // A slow phone gets half as much rest as work, so that it stays quick and cool.
    if (this.#on) this.#wait(Math.max(FRAME_MS - took, took / 2));
  }
}

/** Tells each set of codes once, however many frames it stays in view. */
class Sighting {
  /**
   * @param {(texts: string[]) => void} onTexts
   * @param {(texts: string[]) => void} [onPicture]
   */
  constructor(onTexts, onPicture) {
    this.#onTexts = onTexts;
    this.#onPicture = onPicture;
  }

  #onTexts;
  #onPicture;
  #last = '';
  #lastAt = 0;
  /** Whether a picture since then showed none: a busy phone looks at one in seconds. */
  #missed = false;
  /** What symbols of bars alone said in the picture before. @type {Set<string>} */
  #linear = new Set();

  forget() {
    this.#last = '';
  }

  /** @param {import('./decoding/code-reader.js').Found[]} found */
  report(found) {
    this.#onPicture?.(found.map(({ text }) => text));
    const now = performance.now();
    if (now - this.#lastAt > GONE_MS && this.#missed) this.forget();
    const before = this.#linear;
    const linear = found.filter(({ format }) => LINEAR.has(format)).map(({ text }) => text);
    this.#linear = new Set(linear);
    const sure = found.filter(({ text, format }) => !LINEAR.has(format) || before.has(text));
    const texts = [...new Set(sure.map(({ text }) => text))];
    this.#missed = !texts.length;
    if (!texts.length) return;
    this.#lastAt = now;
    const key = JSON.stringify([...texts].sort());
    if (key === this.#last) return;
    this.#last = key;
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
 * @param {{onTexts: (texts: string[]) => void, formats?: string[]}} options
 */
async function readPicked(file, finder, { onTexts, formats }) {
  finder.note(say('scan-reading'));
  try {
    const texts = await readFile(file, { formats, longSides: LONG_SIDES_OF_FILE, more: 'all' });
    finder.note(texts.length ? '' : say('scan-no-code'));
    if (texts.length) onTexts(texts);
  } catch {
    finder.note(say('scan-not-opened'));
  }
}

/**
 * The texts of the codes that one look at a picture finds.
 * @param {Blob} file
 * @param {string[]} formats
 */
export async function codesIn(file, formats) {
  return readFile(file, { formats, longSides: [Infinity] });
}

/**
 * @param {Blob} file
 * @param {{formats?: string[], longSides: number[], more?: 'all'}} options  longSides: the sizes it is looked at in, in pixels
 * @returns {Promise<string[]>}
 */
async function readFile(file, { formats, longSides, more }) {
  const bitmap = await createImageBitmap(file);
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d', { willReadFrequently: true });
  try {
    for (const longSide of longSides) {
      const scale = Math.min(1, longSide / Math.max(bitmap.width, bitmap.height));
      canvas.width = Math.round(bitmap.width * scale);
      canvas.height = Math.round(bitmap.height * scale);
      context?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
      const found = await readCodes(canvas, { formats, more });
      canvas.width = 0;
      if (found.length) return [...new Set(found.map(({ text }) => text))];
    }
    return [];
  } finally {
    bitmap.close();
  }
}
