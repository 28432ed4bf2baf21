// @ts-check
/**
 * Reads from a picture's own bytes what it is and how large, and takes out what it tells beside the picture.
 *
 * Names and declared types of picked files are not to be trusted, and a picture that is too large has to
 * be refused before it is decoded: decoding it can end the page.
 */

/**
 * @typedef {'jpeg' | 'png' | 'webp' | 'heic' | 'other'} PictureKind
 */

// What a decoder needs beside the picture, by marker and length with the two bytes that give it: JFIF without a
// small picture in it, Adobe's colour transform. A canvas is in the colours that go without a profile.
const KEPT_SEGMENTS = new Map([
  [0xe0, 16],
  [0xee, 14],
]);
const START_OF_SCAN = 0xda;
const HEIC_BRANDS = new Set(['heic', 'heix', 'hevc', 'heim', 'heis', 'mif1', 'msf1', 'avif']);

/**
 * Tell what a file is by its first bytes.
 * @param {Uint8Array} bytes
 * @returns {PictureKind}
 */
export function pictureKind(bytes) {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'jpeg';
  if (ascii(bytes, 1, 3) === 'PNG' && bytes[0] === 0x89) return 'png';
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 4) === 'WEBP') return 'webp';
  if (ascii(bytes, 4, 4) === 'ftyp' && HEIC_BRANDS.has(ascii(bytes, 8, 4))) return 'heic';
  return 'other';
}

/**
 * Return width and height as the header gives them, or null where it does not say.
 * @param {Uint8Array} bytes
 * @param {PictureKind} kind
 * @returns {{width: number, height: number} | null}
 */
export function pictureSize(bytes, kind) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (kind === 'png' && bytes.length >= 24) {
    return { width: view.getUint32(16), height: view.getUint32(20) };
  }
  if (kind === 'webp' && ascii(bytes, 12, 4) === 'VP8X' && bytes.length >= 30) {
    const at = (/** @type {number} */ i) => bytes[i] + bytes[i + 1] * 256 + bytes[i + 2] * 65536 + 1;
    return { width: at(24), height: at(27) };
  }
  if (kind !== 'jpeg') return null;
  for (const { marker, start } of jpegSegments(bytes)) {
    // Start of frame: C0 to CF but for three tables (ITU-T T.81, table B.1).
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame && start + 9 <= bytes.length) {
      return { width: view.getUint16(start + 7), height: view.getUint16(start + 5) };
    }
  }
  return null;
}

/**
 * Tell whether a JPEG goes on to its end mark; a copy that broke off does not.
 * @param {Uint8Array} bytes
 */
export function isWholeJpeg(bytes) {
  const scan = [...jpegSegments(bytes)].find(({ marker }) => marker === START_OF_SCAN);
  if (!scan) return false;
  // Backwards, for some phones put more behind the picture; inside a scan the mark cannot occur.
  for (let at = bytes.length - 2; at >= scan.end; at -= 1) {
    if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return true;
  }
  return false;
}

/**
 * Return the JPEG without anything but the picture: no EXIF, XMP, comments. Some browsers write an EXIF
 * block of their own, and the server takes none.
 * @param {Uint8Array} bytes
 * @returns {Uint8Array<ArrayBuffer>}
 */
export function withoutMetadata(bytes) {
  const parts = [bytes.subarray(0, 2)];
  let rest = 2;
  for (const { marker, start, end } of jpegSegments(bytes)) {
    if (marker === START_OF_SCAN) break;
    const isExtra = (marker >= 0xe0 && marker <= 0xef && KEPT_SEGMENTS.get(marker) !== end - start - 2) || marker === 0xfe;
    if (!isExtra) parts.push(bytes.subarray(start, end));
    rest = end;
  }
  parts.push(bytes.subarray(rest));
  const clean = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    clean.set(part, at);
    at += part.length;
  }
  return clean;
}

/**
 * The segments of a JPEG up to and including the start of its scan. A mark that has no length (ITU-T T.81,
 * table B.1) ends them: whoever read one behind it would see other segments than a decoder does.
 * @param {Uint8Array} bytes
 */
function* jpegSegments(bytes) {
  let start = 2;
  while (start + 4 <= bytes.length && bytes[start] === 0xff) {
    if (bytes[start + 1] === 0xff) {
      start += 1; // a fill byte before the marker
      continue;
    }
    const marker = bytes[start + 1];
    if (marker <= 0x01 || (marker >= 0xd0 && marker <= 0xd9)) return;
    const end = start + 2 + bytes[start + 2] * 256 + bytes[start + 3];
    yield { marker, start, end };
    if (marker === START_OF_SCAN) return;
    start = end;
  }
}

/**
 * @param {Uint8Array} bytes
 * @param {number} start
 * @param {number} length
 */
function ascii(bytes, start, length) {
  return String.fromCharCode(...bytes.subarray(start, start + length));
}
