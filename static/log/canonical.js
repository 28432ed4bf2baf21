// @ts-check
/**
 * Canonical JSON text and its SHA-256, as the event log hashes it.
 *
 * RFC 8785 on a narrow set: ASCII keys in order, strings, integers within ±(2^53 - 1), booleans, null,
 * lists and objects. No floats, so that every host writes the same bytes. `server/core/log/canon.py` is the
 * other side; a test holds the two equal. The text is made by `canonicalize`; version 5 of it needs a function
 * (String.isWellFormed) that browsers have only had since 2023.
 */

import canonicalize from 'canonicalize';

const ASCII_KEY = /^[\x00-\x7e]*$/;
const LONE_SURROGATE = /\p{Surrogate}/u;

/** A value that has no canonical form; names the place inside the value. */
export class NotCanonical extends TypeError {
  /**
   * @param {string} path
   * @param {string} why
   * @param {boolean} [typed]  a person can have typed it: half a character, as a keyboard leaves it
   */
  constructor(path, why, typed = false) {
    super(`${path || 'value'}: ${why}`);
    this.name = 'NotCanonical';
    this.path = path;
    this.typed = typed;
  }
}

/**
 * Return the canonical text of `value`; throws NotCanonical where it has none.
 * @param {unknown} value
 * @returns {string}
 */
export function canonicalText(value) {
  hold(value, '');
  return /** @type {string} */ (canonicalize(value));
}

/**
 * Throw NotCanonical where a value is outside the narrow set: RFC 8785 lets more through.
 * @param {unknown} value
 * @param {string} path  where it stands in the whole
 */
function hold(value, path) {
  if (value === null || value === true || value === false) return;
  if (typeof value === 'number') {
    if (!Number.isSafeInteger(value)) throw new NotCanonical(path, `${value} is not an integer within ±(2^53 - 1)`);
  } else if (typeof value === 'string') {
    if (LONE_SURROGATE.test(value)) throw new NotCanonical(path, 'text with half a character in it', true);
  } else if (Array.isArray(value)) {
    // By number: what was never set in a list has to be met, too.
    for (let index = 0; index < value.length; index += 1) hold(value[index], `${path}[${index}]`);
  } else if (typeof value === 'object' && !hasFormOfItsOwn(value)) {
    for (const [key, member] of Object.entries(value)) {
      if (!ASCII_KEY.test(key)) throw new NotCanonical(path, `key ${key} is not plain ASCII`);
      hold(member, path ? `${path}.${key}` : key);
    }
  } else {
    throw new NotCanonical(path, `${typeof value} has no place in canonical JSON`);
  }
}

/** Whether an object says itself what stands for it in JSON, as a date does. @param {{toJSON?: unknown}} value */
function hasFormOfItsOwn({ toJSON }) {
  return typeof toJSON === 'function';
}

/**
 * Return the SHA-256 of bytes, or of text as UTF-8, in lower-case hex.
 * @param {ArrayBuffer | Uint8Array | string} data
 * @returns {Promise<string>}
 */
export async function sha256Hex(data) {
  const bytes = typeof data === 'string' ? new TextEncoder().encode(data) : data;
  const digest = await crypto.subtle.digest('SHA-256', /** @type {BufferSource} */ (bytes));
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * Return the hash that identifies an event envelope.
 * @param {object} envelope
 * @returns {Promise<string>}
 */
export async function eventHash(envelope) {
  return sha256Hex(canonicalText(envelope));
}
