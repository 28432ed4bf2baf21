// @ts-check
/**
 * Checks a record on this phone, where there is no server to ask: takes the file apart, hashes what is in it
 * and checks the signature; the core says what is not as it was sealed. `server/keeping/record/check.py` does the same.
 */

import { sha256Hex } from '../log/canonical.js';
import { coreDigest } from '../core/parts.js';
import { container } from './container.js';
import { fingerprintOf, isSigned, phoneKey } from '../log/phone-key.js';
import { render, say } from '../words/words.js';

const LOCAL_HEAD = 30; // bytes before a member's name; APPNOTE.TXT 4.3.7
const LOCAL_MARK = 0x04034b50;
const CENTRAL_MARK = 0x02014b50;
const END = 22; // bytes of the end of a zip file; APPNOTE.TXT 4.3.16
const END_MARK = 0x06054b50;
const BEGINNINGS = ['record.json{"app":"swaptrail record"', 'record.json{"app":"swaptrail phone record"'];
const NAMES = /^(record\.json|entries\.jsonl|hashes\.json|seal\.json|photos\/[0-9a-f]{64}\.jpg)$/;
const TEXTS = ['record.json', 'entries.jsonl', 'hashes.json', 'seal.json'];
const MAKERS = 'record_makers';
const CONFIRMED = 'record_makers_confirmed';

/** A place in the file where it can't be taken apart. */
class Broken extends Error {}

/** The file ends before the record does. */
class Cut extends Broken {}

/**
 * Whether a file is a record as it was sealed, and what it holds: the answer that a server gives.
 * @param {{core: import('../core/client.js').Core, store: import('../log/store.js').Store}} services
 * @param {File} file
 * @returns {Promise<any>}  throws CannotTell (log/phone-key.js)
 */
export async function checkHere({ core, store }, file) {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const head = new TextDecoder().decode(bytes.subarray(LOCAL_HEAD, LOCAL_HEAD + 48));
  if (!BEGINNINGS.some((each) => head.startsWith(each))) {
    return { outcome: 'none', sentence: say('troubles-record-no-record') };
  }
  try {
    const members = membersOf(bytes);
    const { later, seal, ...sound } = await soundParts(core, members);
    if (later) return { outcome: 'none', sentence: render(later) };
    const packed = container(members.map(({ name, content }) => [name, content]));
    const at = packed.findIndex((byte, n) => byte !== bytes[n]);
    if (at === bytes.length) throw new Cut(say('troubles-record-cut-end'));
    if (at >= 0 || packed.length !== bytes.length) throw new Broken(say('troubles-record-between'));
    return await answerOf(store, sound, seal, members);
  } catch (error) {
    if (!(error instanceof Broken)) throw error;
    if (error instanceof Cut) return { outcome: 'cut', sentence: say('troubles-record-cut-place', { place: error.message }) };
    return { outcome: 'altered', sentence: say('troubles-first-place', { place: error.message }) };
  }
}

/**
 * @typedef {{name: string, at: number, content: Uint8Array}} Member
 *
 * The members as they stand one behind the other.
 * @param {Uint8Array} bytes
 * @returns {Member[]}
 */
function membersOf(bytes) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  /** @type {Member[]} */
  const members = [];
  let at = 0;
  // A file that has its end was not cut short: it says of a part that it is longer.
  const ended = bytes.length >= END && view.getUint32(bytes.length - END, true) === END_MARK;
  const endless = (/** @type {string} */ place) => (ended ? new Broken(place) : new Cut(place));
  const mark = () => (at + 4 <= bytes.length ? view.getUint32(at, true) : 0);
  while (mark() === LOCAL_MARK) {
    const last = members.at(-1)?.name ?? say('troubles-record-beginning');
    if (at + LOCAL_HEAD > bytes.length) throw endless(say('troubles-record-cut-after', { last }));
    const [method, held, size] = [view.getUint16(at + 8, true), view.getUint32(at + 18, true), view.getUint32(at + 22, true)];
    const begin = at + LOCAL_HEAD + view.getUint16(at + 26, true);
    if (begin > bytes.length) throw endless(say('troubles-record-cut-after', { last }));
    const name = new TextDecoder().decode(bytes.subarray(at + LOCAL_HEAD, begin));
    if (!NAMES.test(name)) throw new Broken(say('troubles-record-foreign-after', { last }));
    if (members.some((each) => each.name === name)) throw new Broken(say('troubles-record-twice', { file: name }));
    if (method !== 0 || held !== size) throw new Broken(say('troubles-record-packed', { file: name }));
    if (begin + size > bytes.length) throw endless(say('troubles-record-cut-in', { file: name }));
    members.push({ name, at: begin, content: bytes.subarray(begin, begin + size) });
    at = begin + size;
  }
  if (mark() !== CENTRAL_MARK) {
    const last = members.at(-1)?.name ?? say('troubles-record-beginning');
    if (at + 4 > bytes.length) throw endless(say('troubles-record-cut-after', { last }));
    throw new Broken(say('troubles-record-foreign-after', { last }));
  }
  return members;
}

/**
 * What the core makes of the parts, once the signature fits; throws Broken at the first place that is not as
 * it was sealed.
 * @param {import('../core/client.js').Core} core
 * @param {Member[]} members
 */
async function soundParts(core, members) {
  const sizes = Object.fromEntries(members.map(({ name, content }) => [name, content.length]));
  // A mark at the beginning of a text would be swallowed otherwise, and could be changed unseen.
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  const texts = Object.fromEntries(
    members.filter(({ name }) => TEXTS.includes(name)).map(({ name, content }) => [name, decoder.decode(content)]),
  );
  const seal = await core.call('record_seal', { sizes, text: texts['seal.json'] ?? '' });
  if (seal.fault) throw brokenAt(seal.fault);
  if (!(await isSigned(seal))) throw new Broken(say('record-unsigned', { file: 'seal.json' }));
  const digests = await Promise.all(members.map(async ({ name, content }) => [name, await sha256Hex(content)]));
  const found = await core.call('record_check', { digests, texts });
  if (found.fault) throw brokenAt(found.fault);
  for (const each of found.signatures ?? []) if (!(await isSigned(each))) throw brokenAt(each.fault);
  return { ...found, seal };
}

/** @param {[string, number, unknown]} place  device, number, and as a message what is wrong */
function brokenAt([device, seq, fault]) {
  const what = render(fault);
  return new Broken(device ? say('troubles-record-entry', { device, seq: String(seq), what }) : what);
}

/**
 * @param {import('../log/store.js').Store} store
 * @param {any} sound
 * @param {{by: string, key: string}} seal
 * @param {Member[]} members
 */
async function answerOf(store, { record, events, photos, smaller, phones }, { by, key }, members) {
  const own = (await phoneKey(store)).key === key;
  const { unit, job, code, jobs, made_at, elsewhere, missing, told } = record;
  return {
    outcome: 'intact',
    unit, job, code, jobs, made_at, elsewhere, missing, told,
    maker: { kind: by, fingerprint: await fingerprintOf(key), own, known_since: own ? null : await metBefore(store, key), confirmed: own ? null : await confirmedHere(store, key) },
    same_core: record.core === (await coreDigest()),
    events,
    phones,
    photos: Object.fromEntries(
      [...photos.map((/** @type {string} */ digest) => [digest, digest]), ...smaller].map(([photo, digest]) => {
        const member = members.find(({ name }) => name === `photos/${digest}.jpg`);
        return [photo, [member?.at, member?.content.length]];
      }),
    ),
    smaller: smaller.map((/** @type {[string, string]} */ [photo]) => photo),
  };
}

/**
 * Keep whose a seal is: a person has compared its fingerprint.
 * @param {import('../log/store.js').Store} store
 * @param {string} fingerprint
 * @param {Omit<import('./foreign-record.js').Confirmed, 'at'>} confirmed
 * @returns {Promise<import('./foreign-record.js').Confirmed>}
 */
export async function confirmHere(store, fingerprint, confirmed) {
  const kept = { ...confirmed, at: Date.now() };
  await store.setMeta(CONFIRMED, { ...(await store.getMeta(CONFIRMED)), [fingerprint]: kept });
  return kept;
}

/**
 * @param {import('../log/store.js').Store} store
 * @param {string} key
 */
async function confirmedHere(store, key) {
  return (await store.getMeta(CONFIRMED))?.[await fingerprintOf(key)] ?? null;
}

/**
 * When this seal was seen here first, before now; null the first time.
 * @param {import('../log/store.js').Store} store
 * @param {string} key
 */
async function metBefore(store, key) {
  const known = (await store.getMeta(MAKERS)) ?? {};
  if (known[key]) return known[key];
  // Only for show: on a full phone it may be lost.
  await store.setMeta(MAKERS, { ...known, [key]: Date.now() }).catch(() => undefined);
  return null;
}
