// @ts-check
/**
 * The zip file of a record, byte for byte as `server/keeping/record/container.py` writes it: nothing compressed, no
 * clock told, so that every byte follows from what is in it.
 */

import { zipSync } from 'fflate';

const AS_IT_IS = /** @type {const} */ ({ level: 0, os: 0 });

/**
 * A zip file of members as they are, the same bytes each time.
 * @param {Array<[string, Uint8Array]>} members  in their order
 * @returns {Uint8Array}
 */
export function container(members) {
  // The earliest moment that a zip file knows, which it tells in local time.
  const mtime = new Date(1980, 0, 1);
  return zipSync(Object.fromEntries(members.map(([name, bytes]) => [name, [bytes, { ...AS_IT_IS, mtime }]])));
}
