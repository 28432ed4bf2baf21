// @ts-check
/**
 * Makes a grey picture easier to read: larger, smoother against noise, crisper against blur.
 *
 * The reader fails on pictures that still hold everything it needs. What helps against one trouble hurts
 * with another, so each is a try of its own. Pictures here are {width, height, data}, one byte a pixel.
 */

/** @typedef {{width: number, height: number, data: Uint8ClampedArray}} Grey */

/**
 * The brightness of a picture, weighted as in ITU-R BT.601.
 * @param {ImageData} picture
 * @returns {Grey}
 */
export function greyOf({ width, height, data: rgba }) {
  const data = new Uint8ClampedArray(width * height);
  for (let at = 0, from = 0; at < data.length; at += 1, from += 4) {
    data[at] = (77 * rgba[from] + 150 * rgba[from + 1] + 29 * rgba[from + 2] + 128) >> 8;
  }
  return { width, height, data };
}

/**
 * The same as the reader wants it.
 * @param {Grey} grey
 * @returns {ImageData}
 */
export function imageDataOf({ width, height, data }) {
  const image = new ImageData(width, height);
  const pixels = new Uint32Array(image.data.buffer);
  for (let at = 0; at < data.length; at += 1) pixels[at] = 0xff000000 | (data[at] * 0x010101);
  return image;
}

/**
 * A part of a picture; what would lie outside is left out.
 * @param {Grey} grey
 * @param {number} left
 * @param {number} top
 * @param {number} width
 * @param {number} height
 * @returns {Grey}
 */
export function cut(grey, left, top, width, height) {
  const x = Math.max(0, Math.min(grey.width - 1, Math.round(left)));
  const y = Math.max(0, Math.min(grey.height - 1, Math.round(top)));
  const wide = Math.max(1, Math.min(grey.width, Math.round(left + width)) - x);
  const high = Math.max(1, Math.min(grey.height, Math.round(top + height)) - y);
  const data = new Uint8ClampedArray(wide * high);
  for (let row = 0; row < high; row += 1) {
    const from = (y + row) * grey.width + x;
    data.set(grey.data.subarray(from, from + wide), row * wide);
  }
  return { width: wide, height: high, data };
}

/**
 * The middle of a picture, at most so many pixels wide and high.
 * @param {Grey} grey
 * @param {number} most
 */
export function middle(grey, most) {
  const width = Math.min(grey.width, most);
  const height = Math.min(grey.height, most);
  return cut(grey, (grey.width - width) / 2, (grey.height - height) / 2, width, height);
}

/** Grey levels: what varies less than that is taken for paper. */
const LEAST_VARIED = 2;

/** Weights of four neighbours a quarter of a pixel beside the second of them (Catmull-Rom). */
const NEAR = [-0.0703125, 0.8671875, 0.2265625, -0.0234375];

/**
 * Twice as large each way, by cubic interpolation.
 * @param {Grey} grey
 * @returns {Grey}
 */
export function doubled({ width, height, data }) {
  const wide = new Float32Array(width * 2 * height);
  const [a, b, c, d] = NEAR;
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    for (let x = 0; x < width; x += 1) {
      const far = data[row + Math.max(0, x - 2)];
      const left = data[row + Math.max(0, x - 1)];
      const here = data[row + x];
      const right = data[row + Math.min(width - 1, x + 1)];
      const beyond = data[row + Math.min(width - 1, x + 2)];
      const to = 2 * (row + x);
      wide[to] = a * right + b * here + c * left + d * far;
      wide[to + 1] = a * left + b * here + c * right + d * beyond;
    }
  }
  const across = width * 2;
  const pixels = new Uint8ClampedArray(across * height * 2);
  for (let y = 0; y < height; y += 1) {
    const rows = [-2, -1, 0, 1, 2].map((step) => Math.max(0, Math.min(height - 1, y + step)) * across);
    const to = 2 * y * across;
    for (let x = 0; x < across; x += 1) {
      const above = wide[rows[1] + x];
      const here = wide[rows[2] + x];
      const below = wide[rows[3] + x];
      pixels[to + x] = a * below + b * here + c * above + d * wide[rows[0] + x];
      pixels[to + across + x] = a * above + b * here + c * below + d * wide[rows[4] + x];
    }
  }
  return { width: across, height: height * 2, data: pixels };
}

/**
 * Without grain: a bell of one pixel's width.
 * @param {Grey} grey
 * @returns {Grey}
 */
export function smoothed({ width, height, data }) {
  let now = Float32Array.from(data);
  for (let round = 0; round < 2; round += 1) {
    now = quarters(now, width, height, 1);
    now = quarters(now, width, height, width);
  }
  return { width, height, data: Uint8ClampedArray.from(now) };
}

/**
 * Each pixel with a quarter of its two neighbours along a row (step 1) or a column (step: the width).
 * @param {Float32Array} from
 * @param {number} width
 * @param {number} height
 * @param {number} step
 */
function quarters(from, width, height, step) {
  const to = new Float32Array(from.length);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const at = y * width + x;
      const first = step === 1 ? x === 0 : y === 0;
      const last = step === 1 ? x === width - 1 : y === height - 1;
      to[at] = (from[first ? at : at - step] + 2 * from[at] + from[last ? at : at + step]) / 4;
    }
  }
  return to;
}

/**
 * Crisper: what a wide blur takes away is added again, several times over.
 * @param {Grey} grey
 * @param {number} radius   half the width of that blur, in pixels
 * @param {number} times
 * @returns {Grey}
 */
export function sharpened({ width, height, data }, radius, times) {
  const once = averaged(data, width, height, radius);
  const twice = averaged(once, width, height, radius);
  const pixels = new Uint8ClampedArray(data.length);
  for (let at = 0; at < data.length; at += 1) pixels[at] = data[at] + times * (data[at] - twice[at]);
  return { width, height, data: pixels };
}

/**
 * As strong everywhere as where it is strongest: each pixel's distance from what lies around it, by how much that
 * varies. Faded print and shade come out like fresh print; where nothing is printed, noise is not raised to print.
 * @param {Grey} grey
 * @param {number} radius  half the width of what counts as around, some modules
 * @returns {Grey}
 */
export function evened({ width, height, data }, radius) {
  const mean = averaged(data, width, height, radius);
  const off = new Float32Array(data.length);
  for (let at = 0; at < data.length; at += 1) off[at] = Math.abs(data[at] - mean[at]);
  const varies = averaged(off, width, height, radius);
  const pixels = new Uint8ClampedArray(data.length);
  for (let at = 0; at < data.length; at += 1) {
    pixels[at] = 128 + (80 * (data[at] - mean[at])) / Math.max(LEAST_VARIED, varies[at]);
  }
  return { width, height, data: pixels };
}

/**
 * The average of the square round each pixel; at the edge the square is smaller.
 * @param {ArrayLike<number>} data
 * @param {number} width
 * @param {number} height
 * @param {number} radius
 * @returns {Float32Array}
 */
export function averaged(data, width, height, radius) {
  const rows = new Float32Array(data.length);
  for (let y = 0; y < height; y += 1) averageLine(data, rows, y * width, 1, width, radius);
  const pixels = new Float32Array(data.length);
  for (let x = 0; x < width; x += 1) averageLine(rows, pixels, x, width, height, radius);
  return pixels;
}

/**
 * @param {ArrayLike<number>} from
 * @param {Float32Array} to
 * @param {number} start
 * @param {number} step
 * @param {number} count
 * @param {number} radius
 */
function averageLine(from, to, start, step, count, radius) {
  let sum = 0;
  for (let i = 0; i < Math.min(radius, count); i += 1) sum += from[start + i * step];
  for (let i = 0; i < count; i += 1) {
    if (i + radius < count) sum += from[start + (i + radius) * step];
    if (i - radius - 1 >= 0) sum -= from[start + (i - radius - 1) * step];
    to[start + i * step] = sum / (Math.min(count - 1, i + radius) - Math.max(0, i - radius) + 1);
  }
}
