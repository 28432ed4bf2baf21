// @ts-check
/**
 * What proves which phone recorded an entry: the certificate that the server gave that phone's key, and the phone's
 * signature over the end of its chain. They are kept beside the entries, so that any phone can pass them on when a
 * server has lost what it had. `server/log/proof.py` reads them.
 */

import { canonicalText } from './canonical.js';
import { CannotTell, isSigned, phoneKey } from './phone-key.js';

const KEPT_AS = 'proofs';

/**
 * @typedef {object} Certificate   {"app", "v", …} as the server signed it
 * @property {string} device
 * @property {string} role
 * @property {string} name
 * @property {string} key          the phone's public point, in hex
 *
 * @typedef {{device: string, seq: number, hash: string, signature: string}} SignedHead
 *
 * @typedef {object} Proofs        as a batch and the first line of a file hold them
 * @property {Certificate[]} [certificates]
 * @property {SignedHead[]} [signed_heads]
 * @property {string} [key]        the public point of the phone that sends
 *
 * @typedef {Record<string, {certificate?: Certificate, head?: SignedHead}>} KeptProofs  by device
 */

/**
 * @param {import('./store.js').Store} store
 * @returns {Promise<KeptProofs>}
 */
async function keptProofs(store) {
  return (await store.getMeta(KEPT_AS)) ?? {};
}

/**
 * Keep what the server, or a file, brings; of two ends of a chain the later one.
 * @param {any} meta  the table, in a transaction
 * @param {Proofs} brought
 */
export async function keepProofs(meta, { certificates = [], signed_heads: heads = [] }) {
  if (!certificates.length && !heads.length) return;
  /** @type {KeptProofs} */
  const kept = (await meta.get(KEPT_AS)) ?? {};
  for (const certificate of certificates) {
    kept[certificate.device] = { ...kept[certificate.device], certificate };
  }
  for (const head of heads) {
    const known = kept[head.device];
    // Without a certificate it proves nothing to anybody: a phone that never met a server signed it.
    if (known?.certificate && !((known.head?.seq ?? 0) > head.seq)) kept[head.device] = { ...known, head };
  }
  await meta.put(kept, KEPT_AS);
}

/**
 * The proofs of some entries: of this phone's own the last one signed now, of others what is kept of them.
 * @param {import('./store.js').Store} store
 * @param {string} own  this phone's device id
 * @param {Array<{device: string, seq: number, hash: string}>} entries
 * @returns {Promise<Proofs>}
 */
export async function proofsOf(store, own, entries) {
  const [key, kept] = await Promise.all([phoneKey(store), keptProofs(store)]);
  const proofs = [...new Set(entries.map(({ device }) => device))].map((device) => kept[device] ?? {});
  const last = entries.filter(({ device }) => device === own).pop();
  const certified = kept[own]?.certificate?.key === key.key;
  const heads = proofs.flatMap(({ head }) => head ?? []);
  // A server gets no key that the next start does not have; a file may name it.
  const signs = key.kept && (last || !certified);
  const end = last ?? { device: own, seq: 0, hash: '' };
  return {
    certificates: proofs.flatMap(({ certificate }) => certificate ?? []),
    signed_heads: signs ? [...heads, await signedHead(key, end)] : heads,
    ...(signs ? { key: key.key } : {}),
  };
}

/**
 * @param {import('./phone-key.js').PhoneKey} key
 * @param {{device: string, seq: number, hash: string}} end
 * @returns {Promise<SignedHead>}
 */
async function signedHead(key, { device, seq, hash }) {
  return { device, seq, hash, signature: await key.sign(headText({ device, seq, hash })) };
}

/** @param {{device: string, seq: number, hash: string}} end */
function headText({ device, seq, hash }) {
  return canonicalText({ app: 'swaptrail-head', v: 1, device, seq, hash });
}

/**
 * The device whose certificate or signature does not fit, among the proofs of a file; undefined where all do.
 * @param {Proofs & {device: string}} head  the file's first line
 * @returns {Promise<string | undefined>}
 */
export async function unfitting({ certificates = [], signed_heads: heads = [], key = '', device }) {
  const keys = new Map([[device, key]]);
  for (const certificate of certificates) {
    const { signature, issuer, ...body } = /** @type {any} */ (certificate);
    const signed = { by: /** @type {const} */ ('installation'), key: issuer, signature, text: canonicalText({ ...body, issuer }) };
    if (!(await isSigned(signed).catch(cannotTell))) return certificate.device;
    keys.set(certificate.device, certificate.key);
  }
  for (const head of heads) {
    const signed = { by: /** @type {const} */ ('phone'), key: keys.get(head.device) ?? '', signature: head.signature, text: headText(head) };
    if (!(await isSigned(signed))) return head.device;
  }
}

/** A server looks again at what this browser can't check. @param {unknown} error */
function cannotTell(error) {
  if (error instanceof CannotTell) return true;
  throw error;
}

/**
 * What a phone adds to its pairing, so that nobody else comes in under its device id.
 * @param {import('./store.js').Store} store
 * @param {string} device
 * @param {string} token
 */
export async function pairingProof(store, device, token) {
  const key = await phoneKey(store);
  if (!key.kept) return {};
  return { key: key.key, signature: await key.sign(canonicalText({ app: 'swaptrail-pairing', v: 1, device, token })) };
}

/**
 * Whether the key that speaks for this phone's device id is gone: then the id is, too.
 * @param {import('./store.js').Store} store
 * @param {string} device
 */
export async function hasLostKey(store, device) {
  const { certificate } = (await keptProofs(store))[device] ?? {};
  return certificate !== undefined && certificate.key !== (await phoneKey(store)).key;
}
