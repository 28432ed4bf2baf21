// @ts-check
/**
 * Starts a new device id when the same one turns out to live on two phones (a cloned or restored phone), and where the
 * old one has ended: its key was lost, or the phone was put out.
 *
 * What this phone recorded and the server does not have is recorded again under the new id, in the same
 * order and with its own times; the old copies are set aside, not deleted.
 */

import { newHead } from './device.js';
import { LOG_LOCK, withLock } from '../phone/locks.js';
import { chain } from './append.js';
import { orderChanged } from './order.js';

/** The kinds that name another entry. */
const CORRECTIONS = new Set(['corrected', 'put_right']);

/**
 * @param {import('./store.js').Store} store
 * @param {import('./device.js').Device} device
 * @param {{from?: number, as?: 'forked' | 'renewed'}} [options]  from: the number from which on the two chains differ, where that
 *     is known; as: what a person is told
 * @returns {Promise<number>} how many facts were recorded again
 */
export function startNewDevice(store, device, { from = 1, as = 'forked' } = {}) {
  return withLock(LOG_LOCK, async () => {
    let rechained = -1;
    while (rechained < 0) rechained = await rechain(store, from);
    await device.reread();
    await device.tell(as);
    return rechained;
  });
}

/**
 * @param {import('./store.js').Store} store
 * @param {number} from
 * @returns {Promise<number>} -1 when another tab recorded meanwhile
 */
async function rechain(store, from) {
  const head = await store.getMeta('head');
  const unsent = await store.withDb((db) => db.getAllFromIndex('events', 'unsent'));
  const stranded = unsent.filter(({ device, seq }) => device === head.device && seq >= from);
  const fresh = newHead(head.nextUnsent);
  const entries = await chainAgain(stranded, fresh);
  return store.write(['meta', 'events', 'set_aside'], async (tx) => {
    const meta = tx.objectStore('meta');
    const current = await meta.get('head');
    if (current.device !== head.device || current.seq !== head.seq) return -1;
    const events = tx.objectStore('events');
    for (const entry of stranded) {
      await tx.objectStore('set_aside').add({ ...entry, why: 'fork' });
      await events.delete([entry.device, entry.seq]);
    }
    for (const entry of entries) await events.add(entry);
    const last = entries[entries.length - 1];
    await meta.put(last ? headAt(last) : fresh, 'head');
    await orderChanged(tx);
    return entries.length;
  });
}

/**
 * @param {import('./store.js').StoredEvent[]} stranded
 * @param {import('./device.js').Head} fresh
 */
async function chainAgain(stranded, fresh) {
  /** @type {Map<string, number>} */
  const newSeq = new Map();
  /** @type {import('./store.js').StoredEvent[]} */
  const entries = [];
  let head = fresh;
  for (const { device, seq, event, unchecked } of stranded) {
    newSeq.set(`${device}/${seq}`, head.seq + 1);
    const draft = { ...event, data: pointed(event, newSeq, fresh.device) };
    const [entry] = await chain([draft], head, event.actor, event.at, unchecked === 1);
    entries.push(entry);
    head = headAt(entry);
  }
  return entries;
}

/**
 * A correction names the entry that it takes back or puts right; when that one has moved, so does the name.
 * @param {import('./store.js').Envelope} event
 * @param {Map<string, number>} newSeq
 * @param {string} device
 */
function pointed(event, newSeq, device) {
  const seq = newSeq.get(`${event.data.device}/${event.data.seq}`);
  if (!CORRECTIONS.has(event.kind) || seq === undefined) return event.data;
  return { ...event.data, device, seq };
}

/** @param {import('./store.js').StoredEvent} entry */
function headAt({ device, seq, hash, unsent = 0 }) {
  return { device, seq, hash, nextUnsent: unsent + 1 };
}
