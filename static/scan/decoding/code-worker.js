// @ts-check
/**
 * Reads codes from pictures in a worker, so that the screen never waits for it.
 *
 * A picture is read as it is; where nothing is found, tries follow, each against another trouble. They cost
 * time, so the page says how many it wants: one for each picture of the camera, all for a file.
 * It fetches nothing: the page hands over the reader's wasm.
 */

import { BarcodeDetector, prepareZXingModule } from '../../vendor/barcode-detector/ponyfill.js';
import { doubled, evened, greyOf, imageDataOf, middle, sharpened, smoothed } from './clearer.js';
import { cornerSquares } from './corner-squares.js';
import { repaired } from './corners.js';
import { flattened } from './flatten.js';
import { heldStill, stretched } from './turned.js';

/** @typedef {import('./clearer.js').Grey} Grey */
/** @typedef {{text: string, format: string}} Found */

/** How much of a camera's picture the tries look at: about the frame that a code is held into. */
const MIDDLE = 600;
/** How far round a pixel print is evened, in pixels of the doubled picture: a corner square and a little more. */
const AROUND = 40;
/** How long a try on a camera's picture may take: the next picture may be a better one. */
const CAMERA_MS = 400;

/**
 * Against grain and faded print, against blur and small codes, against a round body or a covered corner,
 * against more blur, against a hand that moved, against a label that leans far away.
 * @type {Array<(grey: Grey, round: number) => Iterable<Grey>>}
 */
const TRIES = [
  againstGrain,
  (grey) => [sharpened(doubled(grey), 4, 2)],
  cornersMended,
  (grey) => [sharpened(doubled(grey), 3, 4)],
  heldStill,
  stretched,
];

/**
 * @param {Grey} grey
 * @returns {Generator<Grey>}
 */
function* againstGrain(grey) {
  const large = doubled(smoothed(grey));
  yield large;
  yield evened(large, AROUND);
}

/**
 * @param {Grey} grey
 * @returns {Generator<Grey>}
 */
function* cornersMended(grey) {
  const large = doubled(grey);
  const sharp = sharpened(large, 4, 2);
  const squares = cornerSquares(sharp);
  yield* flattened(sharp, squares);
  yield* repaired([sharp, large], squares);
}

/** @type {Map<string, BarcodeDetector>} */
const detectors = new Map();

/**
 * @param {ImageData} picture
 * @param {string[]} formats
 * @returns {Promise<Found[]>}  from the top down, side by side from the left
 */
async function detect(picture, formats) {
  const key = formats.join();
  let detector = detectors.get(key);
  if (!detector) {
    detector = new BarcodeDetector({ formats: /** @type {any} */ (formats) });
    detectors.set(key, detector);
  }
  const all = await detector.detect(picture);
  // Asked for QR, the reader also answers with Micro QR, whose check is so weak that dirt passes for one.
  const found = all.filter(({ format }) => formats.includes(format));
  found.sort((a, b) => a.boundingBox.y - b.boundingBox.y || a.boundingBox.x - b.boundingBox.x);
  return found.map(({ rawValue, format }) => ({ text: rawValue, format }));
}

/**
 * @param {ImageData} picture
 * @param {string[]} formats
 * @param {number | 'all'} more  the number of the one try to add, or all of them
 * @returns {Promise<Found[]>}
 */
async function read(picture, formats, more) {
  const plain = await detect(picture, formats);
  if (plain.length) return plain;
  const part = middle(greyOf(picture), MIDDLE);
  const tries = more === 'all' ? TRIES : [TRIES[more % TRIES.length]];
  const round = more === 'all' ? 0 : Math.floor(more / TRIES.length);
  const ends = more === 'all' ? Infinity : performance.now() + CAMERA_MS;
  for (const attempt of tries) {
    for (const clearer of attempt(part, round)) {
      if (performance.now() > ends) break;
      const found = await detect(imageDataOf(clearer), formats);
      if (found.length) return found;
    }
  }
  return [];
}

/**
 * Messages: {id, wasm} or {id, picture, formats, more}. Answers: {id, found} or {id, fault}.
 * @param {MessageEvent} message
 */
async function answer({ data }) {
  const { id } = data;
  try {
    if (data.wasm) {
      // Left alone, it would fetch its wasm from a public server: dead without a network.
      await prepareZXingModule({ overrides: { wasmBinary: data.wasm }, fireImmediately: true });
      postMessage({ id, found: [] });
      return;
    }
    const { width, height, pixels } = data.picture;
    const picture = new ImageData(new Uint8ClampedArray(pixels), width, height);
    postMessage({ id, found: await read(picture, data.formats, data.more) });
  } catch (error) {
    postMessage({ id, fault: error instanceof Error ? error.message : String(error) });
  }
}

addEventListener('message', answer);
