// @ts-check
/**
 * Puts what the server sent into the store: numbers for our own events, and the events of others.
 *
 * Nothing is taken on trust: each event's hash is computed again before it is stored. Where the server
 * holds other bytes under an identity that we hold too, ours are set aside, never lost.
 */

import { eventHash } from '../log/canonical.js';
import { orderChanged } from '../log/order.js';
import { keepProofs } from '../log/proofs.js';

/** What the server answers when another phone uses our device id, or another key speaks for it. */
const IDENTITY_TAKEN = new Set(['forked', 'not_yours', 'unsigned', 'bad_signature']);

/**
 * @typedef {object} ReceivedEvent
 * @property {number} n
 * @property {number} received_at
 * @property {string} hash
 * @property {import('../log/store.js').Envelope} event
 *
 * @typedef {object} LostPhoto
 * @property {string} sha256
 * @property {string} job         empty for none
 *
 * @typedef {object} Reply        what `POST /api/sync` answers
 * @property {string} installation  the epoch of the log: another one whenever it may have gone back
 * @property {number} cursor
 * @property {string} [place_signature]  the server's, over where the cursor stands
 * @property {boolean} more
 * @property {ReceivedEvent[]} events
 * @property {Record<string, {seq: number, hash: string}>} heads
 * @property {Array<{device: string, seq: number, reason: string, code: string}>} refused
 * @property {string[]} photos_wanted
 * @property {LostPhoto[]} [photos_lost]  not whole on the server any more, whoever may have them
 * @property {string} build
 * @property {import('../log/proofs.js').Certificate[]} [certificates]  of the phones that recorded `events`
 * @property {import('../log/proofs.js').SignedHead[]} [signed_heads]
 * @property {import('../log/beside-the-log.js').Phone[]} [phones]  what is said of phones, behind what was asked for
 * @property {number} [phones_upto]
 * @property {string[]} [labels_out]  all printed labels that went out of use, where this phone knew of fewer: of an older server
 * @property {string[]} [labels_out_after]  those that went out of use behind the number that was asked for
 * @property {number} [labels_out_upto]  the number of the last of them
 */

/**
 * Return whether `reply` has the shape of a sync reply and every hash in it is right.
 * @param {any} reply
 * @returns {Promise<boolean>}
 */
export async function isSound(reply) {
  const shaped =
    typeof reply.installation === 'string' &&
    Number.isSafeInteger(reply.cursor) &&
    typeof reply.more === 'boolean' &&
    [reply.events, reply.refused, reply.photos_wanted].every(Array.isArray) &&
    reply.heads !== null &&
    typeof reply.heads === 'object';
  if (!shaped) return false;
  const hashes = await Promise.all(reply.events.map((/** @type {any} */ { event }) => hashOrNothing(event)));
  return reply.events.every(
    (/** @type {any} */ { n, hash }, /** @type {number} */ at) => Number.isSafeInteger(n) && hashes[at] === hash,
  );
}

/** @param {any} event */
async function hashOrNothing(event) {
  try {
    return await eventHash(event);
  } catch {
    return undefined;
  }
}

/**
 * Store a sound reply together with the cursor that goes with it. Where it shows that our device id lives
 * on another phone too, nothing is stored: this phone has to take a new id first.
 * @param {import('../log/store.js').Store} store
 * @param {Reply} reply
 * @returns {Promise<{forked: boolean}>}
 */
export function storeReply(store, reply) {
  return store.write(['meta', 'events', 'set_aside'], async (tx) => {
    const events = tx.objectStore('events');
    const head = await tx.objectStore('meta').get('head');
    if (await showsFork(reply, head, events)) return { forked: true };
    // Asked for and written all at once: one by one, each would wait for the one before.
    const known = await Promise.all(reply.events.map(({ event: { device, seq } }) => events.get([device, seq])));
    const others = known.filter((mine, at) => mine && mine.hash !== reply.events[at].hash);
    if (others.length || (await areHere(reply.phones ?? [], events))) await orderChanged(tx);
    await Promise.all([
      ...others.map((mine) => tx.objectStore('set_aside').add({ ...mine, why: 'other bytes' })),
      ...reply.events.map((received, at) =>
        events.put(numbered(received, known[at]?.hash === received.hash ? known[at] : undefined)),
      ),
    ]);
    for (const { device, seq, reason, code } of reply.refused) {
      const known = await events.get([device, seq]);
      if (known?.unsent) await events.put({ ...known, refused: { reason, code } });
    }
    const meta = tx.objectStore('meta');
    await keepProofs(meta, reply);
    if (reply.phones?.length) {
      const { rows = [] } = (await meta.get('phones')) ?? {};
      await meta.put({ rows: [...rows, ...reply.phones], upto: reply.phones_upto }, 'phones');
    }
    if (reply.labels_out) await meta.put(reply.labels_out, 'labels_out');
    if (reply.labels_out_after?.length) {
      const known = (await meta.get('labels_out')) ?? [];
      await meta.put([...new Set([...known, ...reply.labels_out_after])], 'labels_out');
      await meta.put(reply.labels_out_upto, 'labels_out_upto');
    }
    await meta.put(reply.more, 'more_to_come');
    await tx.objectStore('meta').put(reply.cursor, 'cursor');
    await meta.put(reply.place_signature, 'place_signature');
    await tx.objectStore('meta').put(reply.installation, 'installation');
    return { forked: false };
  });
}

/**
 * Return whether rows say something of entries that are here already: they were folded without it.
 * @param {import('../log/beside-the-log.js').Phone[]} rows
 * @param {any} events
 */
async function areHere(rows, events) {
  const ranges = rows.map(({ device, from }) => IDBKeyRange.bound([device, from], [device, Number.MAX_SAFE_INTEGER]));
  const counts = await Promise.all(ranges.map((range) => events.count(range)));
  return counts.some(Boolean);
}

/**
 * Return whether the server holds other events under our device id than we do.
 * @param {Reply} reply
 * @param {import('../log/device.js').Head} head
 * @param {any} events
 */
async function showsFork(reply, head, events) {
  const elsewhere = reply.refused.some(
    ({ device, code }) => device === head.device && IDENTITY_TAKEN.has(code),
  );
  if (elsewhere) return true;
  const claims = reply.events
    .filter(({ event }) => event.device === head.device)
    .map(({ event, hash }) => ({ seq: event.seq, hash }));
  const known = reply.heads[head.device];
  if (known && known.seq > 0) claims.push(known);
  for (const { seq, hash } of claims) {
    const mine = await events.get([head.device, seq]);
    if (mine?.hash !== hash) return true;
  }
  return false;
}

/**
 * @param {ReceivedEvent} received
 * @param {import('../log/store.js').StoredEvent | undefined} known
 * @returns {import('../log/store.js').StoredEvent}
 */
function numbered({ n, received_at, hash, event }, known) {
  const { device, seq, job } = event;
  /** @type {import('../log/store.js').StoredEvent} */
  const entry = { device, seq, hash, event, n, received_at };
  if (job !== null) entry.job = job;
  if (known?.own) entry.own = 1;
  if (known?.unchecked) entry.unchecked = 1;
  return entry;
}

/**
 * Return whether the server knows less than it has confirmed before, or another epoch of its log has begun: a
 * backup was put back.
 * @param {import('../log/store.js').Store} store
 * @param {Reply} reply
 * @returns {Promise<boolean>}
 */
export function serverWentBack(store, reply) {
  return store.withDb(async (db) => {
    const tx = db.transaction(['meta', 'events']);
    const meta = tx.objectStore('meta');
    const installation = (await meta.get('installation')) ?? reply.installation;
    const cursor = (await meta.get('cursor')) ?? 0;
    if (reply.installation !== installation || reply.cursor < cursor) return true;
    const { device } = await meta.get('head');
    const known = reply.heads[device]?.seq ?? 0;
    const beyond = IDBKeyRange.bound([device, known + 1], [device, Number.MAX_SAFE_INTEGER]);
    const first = await tx.objectStore('events').get(beyond);
    return first !== undefined && first.n !== undefined;
  });
}

/**
 * Start over with a server that went back: its numbers mean nothing any more, and everything is fetched
 * anew. All that is here is sent again, also what others recorded: their phones may be gone.
 * @param {import('../log/store.js').Store} store
 */
export function forgetNumbers(store) {
  return store.write(['meta', 'events', 'photos'], async (tx) => {
    const meta = tx.objectStore('meta');
    const events = tx.objectStore('events');
    const head = await meta.get('head');
    const inOrder = (await events.index('n').getAll()).concat(await events.index('unsent').getAll());
    let nextUnsent = 1;
    for (const { n, received_at, refused, ...rest } of inOrder) {
      await events.put({ ...rest, unsent: nextUnsent });
      nextUnsent += 1;
    }
    const photos = tx.objectStore('photos');
    for (const photo of await photos.getAll()) {
      if (!photo.left_out) await photos.put({ ...photo, unsent: 1 });
    }
    await meta.put({ ...head, nextUnsent }, 'head');
    await meta.put(0, 'cursor');
    await meta.delete('place_signature');
    await meta.delete('installation');
    await meta.delete('phones');
    await meta.delete('labels_out');
    await meta.delete('labels_out_upto');
    await orderChanged(tx);
  });
}
