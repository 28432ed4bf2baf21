// @ts-check
/**
 * The app's one scanner, and the same camera for photographing.
 *
 * It reads codes and hands over their text; it never opens one. What a text means is the core's to say.
 */

import { Finder } from './finder.js';
import { readCodes } from './decoding/code-reader.js';
import { codesInPicked } from './read-picture.js';
import { Sighting } from './sighting.js';
import { say } from '../words/words.js';

const FRAME_MS = 200;
/** After a picture that could not be read at all: the reader is perhaps not on the phone yet, or was too slow. */
const TRY_AGAIN_MS = 2000;

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
    const texts = await codesInPicked(file, formats);
    finder.note(texts.length ? '' : say('scan-no-code'));
    if (texts.length) onTexts(texts);
  } catch {
    finder.note(say('scan-not-opened'));
  }
}
