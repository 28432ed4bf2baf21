// @ts-check
/**
 * The key of this phone: ECDSA over P-256, made here, kept in IndexedDB, never to be had out of the browser again.
 * It signs what the phone records (proofs.js) and seals the records that it makes.
 *
 * Some browsers keep no keys (private browsing, lockdown), and what a browser keeps it may lose; nothing that
 * was recorded hangs on it. Such a phone seals with a key that lasts until the app is closed, and says so.
 */

import { sha256Hex } from './canonical.js';

const KEPT_AS = 'record_key';
const ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256' };
const SIGNING = { name: 'ECDSA', hash: 'SHA-256' };
/** Of the points of P-256: SEC 2, 2.4.2, and FIPS 186-5. */
const ORDER = 0xffffffff00000000ffffffffffffffffbce6faada7179e84f3b9cac2fc632551n;
const TRIAL = 'trial';
const GROUPS = 5; // of four hex digits, as server/phones/signing.py has it

/**
 * @typedef {object} PhoneKey
 * @property {string} key          the public point, in hex
 * @property {string} fingerprint  the same in short, for two people to compare
 * @property {number} madeAt
 * @property {boolean} kept        false: the next time the app is opened there is another one
 * @property {(text: string) => Promise<string>} sign  the signature of a text, in hex
 *
 * @typedef {{privateKey: CryptoKey, key: string, madeAt: number}} Pair
 */

/** Where none can be kept. @type {Pair | null} */
let untilClosed = null;

/** Those that were seen to sign. @type {WeakMap<import('./store.js').Store, PhoneKey>} */
const tried = new WeakMap();

/**
 * The key of this phone, made now where it has none.
 * @param {import('./store.js').Store} store
 * @returns {Promise<PhoneKey>}
 */
export async function phoneKey(store) {
  try {
    const known = tried.get(store) ?? (await described(await keptPair(store), true));
    tried.set(store, known);
    return known;
  } catch {
    untilClosed ??= await newPair();
    return described(untilClosed, false);
  }
}

/**
 * The pair in the store; throws where the browser keeps none that works.
 * @param {import('./store.js').Store} store
 */
async function keptPair(store) {
  const known = await store.getMeta(KEPT_AS);
  if (known && (await works(known))) return known;
  const made = await newPair();
  // Another tab may have been first.
  await store.write(['meta'], async (tx) => {
    const meta = tx.objectStore('meta');
    const now = await meta.get(KEPT_AS);
    if (!now || now.key === known?.key) await meta.put(made, KEPT_AS);
  });
  // What was written may come back as something that can't sign any more.
  const back = await store.getMeta(KEPT_AS);
  if (!back || !(await works(back))) throw new Error('This browser keeps no keys.');
  return back;
}

/** @returns {Promise<Pair>} */
async function newPair() {
  const { privateKey, publicKey } = await crypto.subtle.generateKey(ALGORITHM, false, ['sign', 'verify']);
  return { privateKey, key: hex(await crypto.subtle.exportKey('raw', publicKey)), madeAt: Date.now() };
}

/** @param {Pair} pair */
async function works({ privateKey, key }) {
  try {
    const publicKey = await crypto.subtle.importKey('raw', bytesOf(key), ALGORITHM, true, ['verify']);
    const text = new TextEncoder().encode(TRIAL);
    const signature = await crypto.subtle.sign(SIGNING, privateKey, text);
    return await crypto.subtle.verify(SIGNING, publicKey, signature, text);
  } catch {
    return false;
  }
}

/**
 * @param {Pair} pair
 * @param {boolean} kept
 * @returns {Promise<PhoneKey>}
 */
async function described({ privateKey, key, madeAt }, kept) {
  const fingerprint = await fingerprintOf(key);
  const sign = async (/** @type {string} */ text) =>
    lowered(hex(await crypto.subtle.sign(SIGNING, privateKey, new TextEncoder().encode(text))));
  return { key, fingerprint, madeAt, kept, sign };
}

/**
 * A public key in short, for two people to compare.
 * @param {string} key  in hex
 */
export async function fingerprintOf(key) {
  const digest = await sha256Hex(bytesOf(key));
  return Array.from({ length: GROUPS }, (_, n) => digest.slice(4 * n, 4 * n + 4)).join(' ');
}

/**
 * A signature with the lower of the two s that would do: then it can be written in one way.
 * @param {string} signature  r and s in hex
 */
function lowered(signature) {
  const s = BigInt(`0x${signature.slice(64)}`);
  const low = s > ORDER / 2n ? ORDER - s : s;
  return signature.slice(0, 64) + low.toString(16).padStart(64, '0');
}

const KINDS = {
  phone: { key: ALGORITHM, signing: SIGNING, form: /^04[0-9a-f]{128}$/ },
  installation: { key: { name: 'Ed25519' }, signing: { name: 'Ed25519' }, form: /^[0-9a-f]{64}$/ },
};
const SIGNATURE = /^[0-9a-f]{128}$/;

/** This browser can't check a signature. */
export class CannotTell extends Error {}

/**
 * Whether a phone or an installation signed a text.
 * @param {{by: 'phone' | 'installation', key: string, signature: string, text: string}} signed
 * @returns {Promise<boolean>}  throws CannotTell
 */
export async function isSigned({ by, key, signature, text }) {
  const kind = KINDS[by];
  if (!kind.form.test(key) || !SIGNATURE.test(signature)) return false;
  // Of the two s that would do, only the lower is taken (server/phones/signing.py).
  if (by === 'phone' && BigInt(`0x${signature.slice(64)}`) > ORDER / 2n) return false;
  /** @type {CryptoKey} */
  let maker;
  try {
    maker = await crypto.subtle.importKey('raw', bytesOf(key), kind.key, true, ['verify']);
  } catch (error) {
    // Not every browser knows the keys of installations yet.
    if (error instanceof DOMException && error.name === 'NotSupportedError') throw new CannotTell();
    return false;
  }
  return crypto.subtle.verify(kind.signing, maker, bytesOf(signature), new TextEncoder().encode(text));
}

/** @param {ArrayBuffer} bytes */
function hex(bytes) {
  return Array.from(new Uint8Array(bytes), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** @param {string} text */
function bytesOf(text) {
  return Uint8Array.from(text.match(/../g) ?? [], (pair) => parseInt(pair, 16));
}
