// @ts-check
/**
 * What this phone recorded as one file that a person can keep or pass on, photos included; and reading such a
 * file again, checked to the last byte. With a server it holds what was not sent, the last resort where a phone
 * gets no network any more; without one (alone/history-file.js) it holds everything.
 *
 * A text file, because that is what phones share with the fewest questions: one canonical JSON value a line,
 *
 *   {"app":"swaptrail","device":…,"entries":N,"made_at":…,"photos":M,"v":2}
 *   {"event":{…},"hash":"…"}            N times; the entries of each device in order, without a gap
 *   {"bytes":"<base64>","sha256":"…"}   M times
 *   {"end":"<SHA-256 of the first line>"}
 *
 * so that every byte is under a hash or has only one right value, and half a file is still good as far as it
 * goes. Version 1, of the first release, is one line without photos: {"app", "device", "events", "v"}.
 * `server/log/unsent_file.py` reads the same.
 */

import { canonicalText, eventHash, sha256Hex } from './canonical.js';

const APP = 'swaptrail';
const VERSION = 2;
const ASCII_AT_ONCE = 32768; // arguments of one call
/** In characters. A photo of the largest size is 5.6 million; a whole file of version 1 is one line. */
const LONGEST_LINE = 32_000_000;

/** A file that is not taken; `sentence` names the place. */
export class UnsentFileProblem extends Error {
  /**
   * @param {string} title
   * @param {string} sentence
   */
  constructor(title, sentence) {
    super(sentence);
    this.name = 'UnsentFileProblem';
    this.title = title;
    this.sentence = sentence;
  }
}

/**
 * @typedef {{event: import('./store.js').Envelope, hash: string}} Entry
 * @typedef {{kind: 'entry', entry: Entry} | {kind: 'photo', sha256: string, bytes: ArrayBuffer}
 *   | {kind: 'end', whole: boolean, entries: number, photos: number}} Part
 *     `whole` is false for a file that was cut off; `entries` and `photos` are what it was to hold
 */

/**
 * Make the file of what was not sent.
 * @param {import('./store.js').Store} store
 * @param {string} device  who makes it
 * @returns {Promise<File>}
 */
export async function unsentFile(store, device) {
  const [records, photos] = await store.withDb((db) => {
    const tx = db.transaction(['events', 'photos']);
    return Promise.all([
      tx.objectStore('events').index('unsent').getAll(),
      tx.objectStore('photos').index('unsent').getAllKeys(),
    ]);
  });
  const name = `swaptrail-unsent-${device}.txt`;
  return (await fileOf(store, { device, records, photos: /** @type {string[]} */ (photos), name })).file;
}

/**
 * Make a file of entries and photos.
 * @param {import('./store.js').Store} store
 * @param {object} content
 * @param {string} content.device   who makes it
 * @param {import('./store.js').EventRecord[]} content.records  those of each device in order, without a gap
 * @param {string[]} content.photos  their hashes
 * @param {string} content.name     of the file
 * @param {(done: number) => void} [content.onPhoto]  hears how many photos were gone through
 * @returns {Promise<{file: File, photos: number, damaged: number}>}  photos in it, and those left out because their
 *     bytes have changed on this phone: with one of them in it, no reader would take the file
 */
export async function fileOf(store, { device, records, photos, name, onPhoto = () => undefined }) {
  // Each photo becomes a Blob at once: a browser may keep those on disk, and all of them can be a lot.
  /** @type {Blob[]} */
  const pictures = [];
  let damaged = 0;
  for (const [index, sha256] of photos.entries()) {
    const bytes = await store.photoBytes(sha256);
    if (bytes && (await sha256Hex(bytes)) !== sha256) damaged += 1;
    else if (bytes) pictures.push(new Blob([canonicalText({ bytes: base64(bytes), sha256 }), '\n']));
    onPhoto(index + 1);
  }
  const made = { app: APP, device, entries: records.length, made_at: Date.now(), photos: pictures.length, v: VERSION };
  const first = canonicalText(made);
  const entries = records.map(({ event, hash }) => `${canonicalText({ event, hash })}\n`);
  const end = canonicalText({ end: await sha256Hex(first) });
  const parts = [`${first}\n`, ...entries, ...pictures, `${end}\n`];
  return { file: new File(parts, name, { type: 'text/plain' }), photos: pictures.length, damaged };
}

/**
 * Read a file part by part; throws UnsentFileProblem at the first place that is not as it was written.
 * @param {Blob} file
 * @returns {AsyncGenerator<Part>}
 */
export async function* partsOf(file) {
  const ends = new ChainEnds();
  const found = { entries: 0, photos: 0 };
  /** @type {{text: string, entries: number, photos: number} | null} */
  let head = null;
  let number = 0;
  let ended = false;
  for await (const { text, complete } of linesOf(file)) {
    number += 1;
    const value = parsed(text);
    if (ended) {
      if (text.trim() === '') continue;
      throw followed(number, value);
    }
    // Where a file breaks off, half a line is left.
    if (value === undefined && !complete) break;
    const line = `Line ${number}`;
    if (head === null) {
      const first = headOf(text, value);
      if (Array.isArray(first)) {
        for (const entry of first) yield { kind: 'entry', entry: await ends.checked(entry, line) };
        yield { kind: 'end', whole: true, entries: first.length, photos: 0 };
        return;
      }
      head = first;
    } else if (value?.event !== undefined && found.photos === 0) {
      const entry = await ends.checked(value, line);
      if (canonicalText({ event: entry.event, hash: entry.hash }) !== text) throw altered(line);
      found.entries += 1;
      yield { kind: 'entry', entry };
    } else if (typeof value?.bytes === 'string') {
      found.photos += 1;
      yield { kind: 'photo', sha256: value.sha256, bytes: await photoIn(value, text, line) };
    } else if (value?.end !== undefined) {
      if (text !== canonicalText({ end: await sha256Hex(head.text) })) throw altered('Its first or its last line');
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

  /**
   * @param {any} entry
   * @param {string} line
   * @returns {Promise<Entry>}
   */
  async checked(entry, line) {
    const { event, hash } = entry ?? {};
    const { device, seq } = event ?? {};
    if (typeof device !== 'string' || !Number.isSafeInteger(seq)) throw altered(line);
    const place = `Entry ${seq} of phone ${device}`;
    if ((await eventHash(event).catch(() => '')) !== hash) {
      throw altered(place, 'its bytes do not match its hash');
    }
    const last = this.#ends.get(device);
    if (last && seq !== last.seq + 1) throw altered(`Entry ${last.seq + 1} of phone ${device}`, 'it is missing');
    if (last && event.prev !== last.hash) throw altered(place, 'it does not continue the entry before it');
    this.#ends.set(device, { seq, hash });
    return { event, hash };
  }
}

/**
 * @param {string} text
 * @param {any} value
 * @returns {{text: string, entries: number, photos: number} | any[]}  a list for a file of version 1
 */
function headOf(text, value) {
  if (value?.app !== APP) throw notOurs();
  if (value.v === 1 && Array.isArray(value.events)) return value.events;
  if (value.v !== VERSION) {
    throw new UnsentFileProblem(
      'This file is from a newer version',
      `It has version ${value.v}; this phone reads up to ${VERSION}. Bring the app up to date, then take it in again.`,
    );
  }
  const { entries, photos } = value;
  if (!Number.isSafeInteger(entries) || !Number.isSafeInteger(photos)) throw altered('Line 1');
  return { text, entries, photos };
}

/**
 * @param {{bytes: string, sha256: string}} value
 * @param {string} text
 * @param {string} line
 */
async function photoIn({ bytes: coded, sha256 }, text, line) {
  const bytes = fromBase64(coded);
  if (!bytes || canonicalText({ bytes: base64(bytes), sha256 }) !== text) throw altered(line);
  if ((await sha256Hex(bytes)) !== sha256) {
    throw altered(`The photo on line ${line.slice('Line '.length)}`, 'its bytes do not match its hash');
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

/** @param {ArrayBuffer} buffer */
function base64(buffer) {
  const bytes = new Uint8Array(buffer);
  let text = '';
  for (let at = 0; at < bytes.length; at += ASCII_AT_ONCE) {
    text += String.fromCharCode(...bytes.subarray(at, at + ASCII_AT_ONCE));
  }
  return btoa(text);
}

/**
 * @param {string} text
 * @returns {ArrayBuffer | null}
 */
function fromBase64(text) {
  try {
    return Uint8Array.from(atob(text), (character) => character.charCodeAt(0)).buffer;
  } catch {
    return null;
  }
}

/**
 * @param {string} place
 * @param {string} [what]
 */
function altered(place, what = 'it is not as it was written') {
  return new UnsentFileProblem(
    'This file was altered',
    `${place}: ${what}. Nothing was taken in. Pass the file on once more from the phone that made it.`,
  );
}

/**
 * @param {{entries: number, photos: number}} told
 * @param {{entries: number, photos: number}} found
 */
function incomplete(told, found) {
  return altered(
    'Its first line',
    `it names ${told.entries} entries and ${told.photos} photos, and ${found.entries} and ${found.photos} are there`,
  );
}

/**
 * @param {number} number
 * @param {any} value
 */
function followed(number, value) {
  if (value?.app !== APP) return altered(`Line ${number}`, 'it stands behind the end of the file');
  return new UnsentFileProblem(
    'These are two files in one',
    `On line ${number} a second file begins. Nothing was taken in. Get each file by itself from the phone that made it, and take in one after the other.`,
  );
}

function notOurs() {
  return new UnsentFileProblem(
    'This file was not made by this app',
    'Nothing was taken in. Pick the file that the other phone made; its name begins with swaptrail.',
  );
}
