// @ts-check
/**
 * Canonical JSON text and its SHA-256, as the event log hashes it.
 *
 * RFC 8785 on a narrow set: ASCII keys in order, strings, integers within ±(2^53 - 1), booleans, null,
 * lists and objects. No floats, so that every host writes the same bytes. `server/core/log/canon.py` is the
 * other side; a test holds the two equal.
 */

const ASCII_KEY = /^[\x00-\x7e]*$/;
const LONE_SURROGATE = /\p{Surrogate}/u;

/** A value that has no canonical form; names the place inside the value. */
export class NotCanonical extends TypeError {
  /**
   * @param {string} path
   * @param {string} why
   */
  constructor(path, why) {
    super(`${path || 'value'}: ${why}`);
    this.name = 'NotCanonical';
    this.path = path;
  }
}

/**
 * Return the canonical text of `value`; throws NotCanonical where it has none.
 * @param {unknown} value
 * @param {string} [path]
 * @returns {string}
 */
export function canonicalText(value, path = '') {
  if (value === null || value === true || value === false) return String(value);
  if (typeof value === 'number') return integerText(value, path);
  if (typeof value === 'string') return stringText(value, path);
  if (Array.isArray(value)) {
    const items = Array.from(value, (item, index) => canonicalText(item, `${path}[${index}]`));
    return `[${items.join(',')}]`;
  }
  if (typeof value === 'object') return objectText(value, path);
  throw new NotCanonical(path, `${typeof value} has no place in canonical JSON`);
}

/**
 * @param {number} value
 * @param {string} path
 */
function integerText(value, path) {
  if (!Number.isSafeInteger(value)) {
    throw new NotCanonical(path, `${value} is not an integer within ±(2^53 - 1)`);
  }
  return String(value === 0 ? 0 : value);
}

/**
 * @param {string} value
 * @param {string} path
 */
function stringText(value, path) {
  // JSON.stringify escapes exactly what RFC 8785 wants escaped, except for half a surrogate pair.
  if (LONE_SURROGATE.test(value)) throw new NotCanonical(path, 'text with half a character in it');
  return JSON.stringify(value);
}

/**
 * @param {object} value
 * @param {string} path
 */
function objectText(value, path) {
  const entries = /** @type {Record<string, unknown>} */ (value);
  const members = Object.keys(entries)
    .sort()
    .map((key) => {
      if (!ASCII_KEY.test(key)) throw new NotCanonical(path, `key ${key} is not plain ASCII`);
      return `${JSON.stringify(key)}:${canonicalText(entries[key], path ? `${path}.${key}` : key)}`;
    });
  return `{${members.join(',')}}`;
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
