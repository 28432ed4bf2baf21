// @ts-check
/**
 * Reads codes from a picture that is a file.
 */

import { readCodes } from './decoding/code-reader.js';

/** A picked picture is read whole, then made smaller, for the tries against blur and dirt. */
const LONG_SIDES = [4096, 1280];

/**
 * The texts of the codes that one look at a picture finds.
 * @param {Blob} file
 * @param {string[]} formats
 */
export async function codesIn(file, formats) {
  return readFile(file, { formats, longSides: [Infinity] });
}

/**
 * The texts of the codes in a picture that somebody picked, which may take several looks.
 * @param {Blob} file
 * @param {string[]} [formats]
 */
export async function codesInPicked(file, formats) {
  return readFile(file, { formats, longSides: LONG_SIDES, more: 'all' });
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
