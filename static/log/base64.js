// @ts-check
/**
 * Bytes as text and back, for a line of a text file.
 */

const ASCII_AT_ONCE = 32768; // arguments of one call

/** Bytes as text. @param {ArrayBuffer} buffer */
export function base64(buffer) {
  const bytes = new Uint8Array(buffer);
  let text = '';
  for (let at = 0; at < bytes.length; at += ASCII_AT_ONCE) {
    text += String.fromCharCode(...bytes.subarray(at, at + ASCII_AT_ONCE));
  }
  return btoa(text);
}

/**
 * The bytes that such a text stands for.
 * @param {string} text
 * @returns {ArrayBuffer | null}  null where it is no such text
 */
export function fromBase64(text) {
  try {
    return Uint8Array.from(atob(text), (character) => character.charCodeAt(0)).buffer;
  } catch {
    return null;
  }
}
