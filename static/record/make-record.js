// @ts-check
/**
 * The record of a sensor or a job as a file, made and sealed on this phone.
 *
 * The core picks what goes in and says what is concluded; here entries, hashes and pictures are put together
 * and signed. `server/keeping/record/` makes the same file, and checks both.
 */

import { canonicalText, sha256Hex } from '../log/canonical.js';
import { coreDigest } from '../core/parts.js';
import { proofsOf } from '../log/proofs.js';
import { smallerVersion } from '../photos/prepare-photo.js';
import { container } from './container.js';
import { NoRecord } from './no-record.js';
import { say } from '../words/words.js';

/**
 * Make the record of one sensor or job; nothing is recorded.
 * @param {import('../screens/frame/context.js').Services} services
 * @param {import('../log/phone-key.js').PhoneKey} key
 * @param {{unit: string} | {job: string}} subject
 * @param {boolean} [wanted]  pictures without room go in as smaller versions
 * @returns {Promise<{file: File, smaller: number, roomless: number}>}  throws NoRecord
 */
export async function makeRecord({ core, store, device }, key, subject, wanted = false) {
  const parts = await core.call('record_parts', subject);
  const { names, seal } = parts;
  const events = await eventsOf(store, parts.order);
  const entries = events.map(({ event }) => `${canonicalText(event)}\n`).join('');
  const devices = await chainsOf(store, parts.order);
  const proofs = await proofsOf(store, device.id, events);
  // What was signed of entries that are not in here proves nothing about those that are.
  const heads = proofs.signed_heads?.filter((head) => devices[head.device]?.hashes[head.seq - devices[head.device].first] === head.hash);
  const phones = await certifiedPhones(store, proofs.certificates ?? []);
  const listed = { devices, order: parts.order, certificates: proofs.certificates, signed_heads: heads, phones };
  const text = [entries, canonicalText(listed), canonicalText(parts.fields.told)].reduce((sum, each) => sum + utf8(each).length, 0);
  if (text > parts.most_text) {
    throw new NoRecord(say('troubles-record-large', { size: text >> 20, most: parts.most_text >> 20 }));
  }
  const { members, smaller, missing, roomless } = await picturesFor({ core, store }, parts.photos, text, wanted ? parts.smaller : null);
  const count = Object.keys(smaller).length;
  const hashes = canonicalText(count ? { ...listed, smaller } : listed);
  const record = {
    ...parts.fields,
    ...(count ? { v: parts.smaller.v } : {}),
    made_at: Date.now(),
    installation: device.id,
    key: key.key,
    core: await coreDigest(),
    missing,
  };
  /** @type {Array<[string, Uint8Array]>} */
  const others = [[names.entries, utf8(entries)], [names.hashes, utf8(hashes)], ...members];
  /** @type {Record<string, string>} */
  const digests = {};
  for (const [name, value] of Object.entries(record)) digests[seal.field + name] = await sha256Hex(canonicalText(value));
  for (const [name, bytes] of others) digests[name] = await sha256Hex(bytes);
  const body = { app: seal.app, v: seal.v, key: key.key, digests };
  const sealed = canonicalText({ ...body, signature: await key.sign(canonicalText(body)) });
  const [entriesMember, hashesMember, ...rest] = others;
  const file = container([
    [names.record, utf8(canonicalText(record))],
    entriesMember,
    hashesMember,
    [names.seal, utf8(sealed)],
    ...rest,
  ]);
  return { file: new File([/** @type {BlobPart} */ (file)], parts.name, { type: 'application/zip' }), smaller: count, roomless };
}

/**
 * @param {import('../log/store.js').Store} store
 * @param {Array<[string, number]>} order
 * @returns {Promise<import('../log/store.js').StoredEvent[]>}
 */
async function eventsOf(store, order) {
  return store.withDb((db) => {
    const events = db.transaction('events').store;
    return Promise.all(order.map((place) => events.get(place)));
  });
}

/**
 * What is said of phones, as far as a certificate bears it out.
 * @param {import('../log/store.js').Store} store
 * @param {import('../log/proofs.js').Certificate[]} certificates
 */
async function certifiedPhones(store, certificates) {
  const { rows = [] } = (await store.getMeta('phones')) ?? {};
  return rows.filter((/** @type {import('../log/beside-the-log.js').Phone} */ row) =>
    certificates.some(({ device, role, name }) => device === row.device && role === row.role && name === row.name),
  );
}

/**
 * Of each device the hashes of all its entries from the first to the last one in the record.
 * @param {import('../log/store.js').Store} store
 * @param {Array<[string, number]>} order
 */
async function chainsOf(store, order) {
  /** @type {Record<string, {first: number, hashes: string[]}>} */
  const chains = {};
  for (const device of new Set(order.map(([each]) => each))) {
    const seqs = order.filter(([each]) => each === device).map(([, seq]) => seq);
    const [first, last] = [Math.min(...seqs), Math.max(...seqs)];
    const range = IDBKeyRange.bound([device, first], [device, last]);
    const records = await store.withDb((db) => db.getAll('events', range));
    if (records.length !== last - first + 1) {
      throw new NoRecord(say('troubles-record-gap'));
    }
    chains[device] = { first, hashes: records.map(({ hash }) => hash) };
  }
  return chains;
}

/**
 * The pictures that there is room for, as `server/keeping/record/pictures.py` takes them.
 * @param {{core: import('../core/client.js').Core, store: import('../log/store.js').Store}} services
 * @param {string[]} photos  their digests
 * @param {number} text  bytes of it
 * @param {{side: number, quality: number} | null} drawn  how those without room are drawn again; null for not at all
 */
async function picturesFor({ core, store }, photos, text, drawn) {
  /** @type {Array<number | null>} */
  const sizes = await Promise.all(photos.map(async (sha256) => (await store.photo(sha256))?.size ?? null));
  /** @type {Map<string, Uint8Array<ArrayBuffer>>} */
  const versions = new Map();
  let { fits, over } = await core.call('record_room', { sizes, text });
  for (let n = photos.length - 1; drawn && over > 0 && n >= 0; n -= 1) {
    const [size, whole] = [sizes[n], await wholeBytes(store, photos[n])];
    const version = whole && (await smallerVersion(whole, drawn));
    if (!version || size === null || version.length >= size) continue;
    versions.set(photos[n], version);
    sizes[n] = version.length;
    over -= size - version.length;
  }
  if (versions.size) ({ fits } = await core.call('record_room', { sizes, text }));
  /** @type {Map<string, Uint8Array>} */
  const members = new Map();
  /** @type {Record<string, string>} */
  const smaller = {};
  const missing = [];
  let roomless = 0;
  for (const [n, sha256] of photos.entries()) {
    const version = versions.get(sha256);
    const bytes = fits[n] ? (version ?? (await wholeBytes(store, sha256))) : null;
    if (!bytes || version) missing.push(sha256);
    if (!fits[n] && sizes[n] !== null) roomless += 1;
    if (!bytes) continue;
    const digest = version ? await sha256Hex(version) : sha256;
    members.set(`photos/${digest}.jpg`, bytes);
    if (version) smaller[sha256] = digest;
  }
  return { members, smaller, missing, roomless };
}

/**
 * A picture that is here as it was taken.
 * @param {import('../log/store.js').Store} store
 * @param {string} sha256
 */
async function wholeBytes(store, sha256) {
  const bytes = await store.photoBytes(sha256);
  return bytes && (await sha256Hex(bytes)) === sha256 ? new Uint8Array(bytes) : null;
}

/** @param {string} text */
function utf8(text) {
  return new TextEncoder().encode(text);
}
