// @ts-check
/**
 * Reads a file of what a phone recorded (unsent-file.js says its form), checked to the last byte.
 */

import { base64, fromBase64 } from './base64.js';
import { canonicalText, eventHash, sha256Hex } from './canonical.js';
import { unfitting } from './proofs.js';
import { APP, VERSION } from './unsent-file.js';
import { UnsentFileProblem, altered, followed, incomplete, lineWords, notOurs } from './unsent-file-problem.js';
import { say } from '../words/words.js';

/** In characters. A photo of the largest size is 5.6 million; a whole file of version 1 is one line. */
const LONGEST_LINE = 32_000_000;

/**
 * @typedef {{event: import('./store.js').Envelope, hash: string}} Entry
 * @typedef {{kind: 'start', proofs: import('./proofs.js').Proofs} | {kind: 'entry', entry: Entry} | {kind: 'photo', sha256: string, bytes: ArrayBuffer}
 *   | {kind: 'end', whole: boolean, entries: number, photos: number}} Part
 *     `whole` is false for a file that was cut off; `entries` and `photos` are what it was to hold
 */

/**
 * Read a file part by part; throws UnsentFileProblem at the first place that is not as it was written.
 * @param {Blob} file
 * @returns {AsyncGenerator<Part>}
 */
export async function* partsOf(file) {
  const ends = new ChainEnds();
  const found = { entries: 0, photos: 0 };
  /** @type {{text: string, entries: number, photos: number, proofs: any} | null} */
  let head = null;
  let number = 0;
  let ended = false;
  for await (const { text, complete } of linesOf(file)) {
    number += 1;
    const value = parsed(text);
    if (ended) {
      if (text.trim() === '') continue;
      throw followed(number, value?.app === APP);
    }
    // Where a file breaks off, half a line is left.
    if (value === undefined && !complete) break;
    const line = lineWords(number);
    if (head === null) {
      const first = headOf(text, value);
      if (Array.isArray(first)) {
        for (const entry of first) yield { kind: 'entry', entry: await ends.checked(entry, line) };
        yield { kind: 'end', whole: true, entries: first.length, photos: 0 };
        return;
      }
      head = first;
      const device = await unfitting(first.proofs).catch(() => '');
      if (device !== undefined) throw altered(say('troubles-proof', { device }));
      ends.expect(first.proofs.signed_heads);
      yield { kind: 'start', proofs: first.proofs };
    } else if (value?.event !== undefined && found.photos === 0) {
      const entry = await ends.checked(value, line);
      if (canonicalText({ event: entry.event, hash: entry.hash }) !== text) throw altered(line);
      found.entries += 1;
      yield { kind: 'entry', entry };
    } else if (typeof value?.bytes === 'string') {
      found.photos += 1;
      yield { kind: 'photo', sha256: value.sha256, bytes: await photoIn(value, text, number) };
    } else if (value?.end !== undefined) {
      if (text !== canonicalText({ end: await sha256Hex(head.text) })) throw altered(say('troubles-first-or-last-line'));
      if (found.entries !== head.entries || found.photos !== head.photos) throw incomplete(head, found);
      ended = true;
    } else {
      throw altered(line);
    }
  }
  if (head === null) throw notOurs();
  yield { kind: 'end', whole: ended, entries: head.entries, photos: head.photos };
}

/** The end of each device's chain in the file; holds an entry against its hash and the one before it. */
class ChainEnds {
  /** @type {Map<string, {seq: number, hash: string}>} */
  #ends = new Map();
  /** What their phones signed. @type {import('./proofs.js').SignedHead[]} */
  #signed = [];

  /** @param {import('./proofs.js').SignedHead[]} [signed] */
  expect(signed = []) {
    this.#signed = signed;
  }

  /**
   * @param {any} entry
   * @param {string} line
   * @returns {Promise<Entry>}
   */
  async checked(entry, line) {
    const { event, hash } = entry ?? {};
    const { device, seq } = event ?? {};
    if (typeof device !== 'string' || !Number.isSafeInteger(seq)) throw altered(line);
    const place = say('troubles-entry', { seq: String(seq), device });
    if ((await eventHash(event).catch(() => '')) !== hash) {
      throw altered(place, say('troubles-bytes'));
    }
    const last = this.#ends.get(device);
    if (last && seq !== last.seq + 1) {
      throw altered(say('troubles-entry', { seq: String(last.seq + 1), device }), say('troubles-missing'));
    }
    if (last && event.prev !== last.hash) throw altered(place, say('troubles-not-next'));
    if (this.#signed.some((head) => head.device === device && head.seq === seq && head.hash !== hash)) throw altered(place);
    this.#ends.set(device, { seq, hash });
    return { event, hash };
  }
}

/**
 * @param {string} text
 * @param {any} value
 * @returns {{text: string, entries: number, photos: number, proofs: any} | any[]}  a list for a file of version 1
 */
function headOf(text, value) {
  if (value?.app !== APP) throw notOurs();
  if (value.v === 1 && Array.isArray(value.events)) return value.events;
  if (value.v !== VERSION) {
    const versions = { version: String(value.v), known: String(VERSION) };
    throw new UnsentFileProblem(say('troubles-newer-file'), say('troubles-newer-file-do', versions));
  }
  const { entries, photos } = value;
  if (!Number.isSafeInteger(entries) || !Number.isSafeInteger(photos)) throw altered(lineWords(1));
  return { text, entries, photos, proofs: value };
}

/**
 * @param {{bytes: string, sha256: string}} value
 * @param {string} text
 * @param {number} number  of its line
 */
async function photoIn({ bytes: coded, sha256 }, text, number) {
  const bytes = fromBase64(coded);
  if (!bytes || canonicalText({ bytes: base64(bytes), sha256 }) !== text) throw altered(lineWords(number));
  if ((await sha256Hex(bytes)) !== sha256) {
    throw altered(say('troubles-photo-line', { line: String(number) }), say('troubles-bytes'));
  }
  return bytes;
}

/**
 * @param {Blob} file
 * @returns {AsyncGenerator<{text: string, complete: boolean}>}  `complete`: a line end followed
 */
async function* linesOf(file) {
  const reader = file.stream().getReader();
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  /** The beginning of a line that goes on. @type {string[]} */
  let begun = [];
  let length = 0;
  for (let step = await reader.read(); !step.done; step = await reader.read()) {
    const pieces = decoder.decode(step.value, { stream: true }).split('\n');
    for (const piece of pieces.slice(0, -1)) {
      yield { text: begun.join('') + piece, complete: true };
      begun = [];
      length = 0;
    }
    const last = pieces[pieces.length - 1];
    begun.push(last);
    length += last.length;
    // A film, for one, has no lines; nobody wants all of it in memory.
    if (length > LONGEST_LINE) break;
  }
  const rest = begun.join('') + decoder.decode();
  if (rest) yield { text: rest, complete: false };
}

/** @param {string} text */
function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
