// @ts-check
/**
 * Makes a photo fit to keep: drawn anew, so that no location data is left in it.
 *
 * The exact bytes made here are hashed, stored and sent. A picture that cannot be used is refused with a
 * plain sentence and leaves nothing behind.
 */

import { sha256Hex } from '../log/canonical.js';
import { isWholeJpeg, pictureKind, pictureSize, withoutMetadata } from './picture-file.js';
import { say } from '../words/words.js';

const LONG_SIDE = 2048;
const MOST_BYTES = 4 * 1024 * 1024; // what the server takes
const MOST_FILE_BYTES = 40 * 1024 * 1024;
const MOST_MEGAPIXELS = 32; // beyond that, decoding can end the page on a phone
const QUALITIES = [0.85, 0.7, 0.5];

/** A picture that cannot be kept; `title` and `sentence` are for the person. */
export class PhotoProblem extends Error {
  /**
   * @param {string} title
   * @param {string} sentence
   */
  constructor(title, sentence) {
    super(sentence);
    this.name = 'PhotoProblem';
    this.title = title;
    this.sentence = sentence;
  }
}

/** @type {Promise<unknown>} */
let queue = Promise.resolve();

/**
 * Turn a captured or picked picture into the photo that is kept; one at a time, for memory's sake.
 * @param {Blob} file
 * @returns {Promise<import('../log/log.js').Photo>}  throws PhotoProblem
 */
export function preparePhoto(file) {
  const done = queue.then(() => prepare(file));
  queue = done.catch(() => undefined);
  return done;
}

/** @param {Blob} file */
async function prepare(file) {
  if (file.size > MOST_FILE_BYTES) throw tooLarge(say('frame-megabytes', { number: Math.round(file.size / 1e6) }));
  const source = new Uint8Array(await file.arrayBuffer());
  const kind = pictureKind(source);
  const size = pictureSize(source, kind);
  const megapixels = size ? (size.width * size.height) / 1e6 : 0;
  if (megapixels > MOST_MEGAPIXELS) throw tooLarge(say('troubles-points', { count: Math.round(megapixels) }));
  const bitmap = await decode(file, source, kind);
  const canvas = draw(bitmap, kind);
  try {
    const bytes = await encode(canvas);
    const { width, height } = canvas;
    return { bytes, mime: 'image/jpeg', sha256: await sha256Hex(bytes), width, height };
  } finally {
    // Frees the pixels at once; waiting for the garbage collector has ended pages on phones.
    canvas.width = 0;
    canvas.height = 0;
  }
}

/**
 * @param {Blob} file
 * @param {Uint8Array} source
 * @param {import('./picture-file.js').PictureKind} kind
 */
async function decode(file, source, kind) {
  try {
    // The browser turns the picture upright by itself. Some draw half a picture without complaint.
    if (kind !== 'jpeg' || isWholeJpeg(source)) return await createImageBitmap(file);
  } catch {
    // Told below, by kind.
  }
  if (kind === 'heic') {
    throw new PhotoProblem(
      say('troubles-heic'),
      say('troubles-heic-do'),
    );
  }
  if (kind === 'other') {
    throw new PhotoProblem(
      say('troubles-no-picture'),
      say('troubles-no-picture-do'),
    );
  }
  throw new PhotoProblem(
    say('troubles-broken-picture'),
    say('troubles-broken-picture-do'),
  );
}

/**
 * A kept photo drawn again, smaller; null where this phone cannot.
 * @param {Uint8Array<ArrayBuffer>} bytes
 * @param {{side: number, quality: number}} how  long side in pixels, quality in per cent
 */
export async function smallerVersion(bytes, { side, quality }) {
  try {
    const canvas = draw(await createImageBitmap(new Blob([bytes])), 'jpeg', side);
    const blob = await toJpeg(canvas, quality / 100);
    canvas.width = canvas.height = 0;
    return blob && withoutMetadata(new Uint8Array(await blob.arrayBuffer()));
  } catch {
    return null;
  }
}

/**
 * @param {ImageBitmap} bitmap
 * @param {import('./picture-file.js').PictureKind} kind
 * @param {number} [side]  the longer one, in pixels
 * @returns {HTMLCanvasElement}
 */
function draw(bitmap, kind, side = LONG_SIDE) {
  const scale = Math.min(1, side / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(bitmap.width * scale));
  canvas.height = Math.max(1, Math.round(bitmap.height * scale));
  const context = /** @type {CanvasRenderingContext2D} */ (canvas.getContext('2d'));
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  // A phone short of memory draws nothing and reports no error.
  if (kind === 'jpeg' && isBlank(context, canvas)) {
    canvas.width = 0;
    canvas.height = 0;
    throw new PhotoProblem(
      say('troubles-not-drawn'),
      say('troubles-picture-not-saved-do'),
    );
  }
  context.globalCompositeOperation = 'destination-over';
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  return canvas;
}

/**
 * @param {CanvasRenderingContext2D} context
 * @param {HTMLCanvasElement} canvas
 */
function isBlank(context, { width, height }) {
  // One row in one reading: each reading makes the canvas slower.
  const row = context.getImageData(0, height / 2, width, 1).data;
  return row.every((value, index) => index % 4 !== 3 || value === 0);
}

/**
 * @param {HTMLCanvasElement} canvas
 * @returns {Promise<ArrayBuffer>}
 */
async function encode(canvas) {
  for (const quality of QUALITIES) {
    const blob = await toJpeg(canvas, quality);
    if (!blob) break;
    const bytes = withoutMetadata(new Uint8Array(await blob.arrayBuffer()));
    if (bytes.length <= MOST_BYTES) return bytes.buffer;
  }
  throw new PhotoProblem(
    say('troubles-picture-not-saved'),
    say('troubles-picture-not-saved-do'),
  );
}

/**
 * @param {HTMLCanvasElement} canvas
 * @param {number} quality
 * @returns {Promise<Blob | null>}
 */
function toJpeg(canvas, quality) {
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
}

/** @param {string} found */
function tooLarge(found) {
  return new PhotoProblem(
    say('troubles-too-large'),
    say('troubles-too-large-do', { found, points: MOST_MEGAPIXELS, megabytes: MOST_FILE_BYTES / 1024 / 1024 }),
  );
}
