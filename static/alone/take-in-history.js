// @ts-check
/**
 * Takes a file in on a phone without a server: an empty phone is set up from it, one with work of its own gets
 * what it lacks behind what it has (alone/history-file.js says why that order holds).
 *
 * The entries stay those of the phone that recorded them, under its identity and hashes; this phone goes on with its
 * own. Where it turns out to share its identity with the phone in the file, as a copied phone does, what it
 * recorded since the two parted moves to an identity of its own. Nothing that is here is ever lost.
 */

import { startNewDevice } from '../log/fork.js';
import { holdInBounds, takeIn } from '../log/take-in.js';
import { UnsentFileProblem } from '../log/unsent-file-problem.js';
import { say } from '../words/words.js';

/**
 * @param {object} parts
 * @param {import('../core/client.js').Core} parts.core
 * @param {import('../log/store.js').Store} parts.store
 * @param {import('../log/device.js').Device} parts.device
 * @param {import('./saved.js').Saved} parts.saved
 * @param {File} file
 * @param {(done: number, all: number) => void} [onPhoto]  hears how many photos were gone through
 * @returns {Promise<import('../log/take-in.js').TakenIn>}  throws UnsentFileProblem where it may not be
 */
export async function takeInHistory({ core, store, device, saved }, file, onPhoto) {
  await saved.count();
  const { held } = saved.standing.value;
  const wasEmpty = held.entries + held.photos === 0;
  let actor = '';
  const taken = await takeIn(store, file, {
    onPhoto,
    before: async (entries) => {
      await holdInBounds(core, entries);
      actor = entries[entries.length - 1]?.event.actor ?? '';
      const { parted } = await compared(store, device.id, entries);
      if (parted !== null) await startNewDevice(store, device, { from: parted });
    },
  });
  // One person's tool: whoever brings the file goes on under the name that stands in it.
  if (!device.actor && actor) await device.setActor(actor);
  if (wasEmpty && !taken.cutOff) await noteSource(store, saved, file.name);
  await saved.count();
  return taken;
}

/**
 * What an empty phone was set up from holds all that is on it.
 * @param {import('../log/store.js').Store} store
 * @param {import('./saved.js').Saved} saved
 * @param {string} name
 */
async function noteSource(store, saved, name) {
  await saved.count();
  const { held } = saved.standing.value;
  if (held.entries === 0) return;
  const { nextUnsent } = await store.getMeta('head');
  await saved.note({ name, at: Date.now(), how: 'taken in', upTo: nextUnsent, ...held });
}

/**
 * Hold the entries of a file against what is here; throws UnsentFileProblem where the file leaves a gap, or where
 * two other phones use one identity.
 * @param {import('../log/store.js').Store} store
 * @param {string} own
 * @param {import('../log/unsent-file-reader.js').Entry[]} entries
 * @returns {Promise<{parted: number | null}>}  from which of its own entries on this phone holds others than the file
 */
function compared(store, own, entries) {
  return store.withDb(async (db) => {
    const events = db.transaction('events').objectStore('events');
    /** @type {Set<string>} */
    const begun = new Set();
    let parted = null;
    for (const { event, hash } of entries) {
      const { device, seq } = event;
      if (!begun.has(device) && seq > 1) {
        const before = await events.get([device, seq - 1]);
        if (!before) throw beginsInTheMiddle(device, seq, (await lastOf(events, device)) + 1);
        if (before.hash !== event.prev) throw twoOthers(device, seq - 1);
      }
      begun.add(device);
      const kept = await events.get([device, seq]);
      if (!kept || kept.hash === hash) continue;
      if (device !== own) throw twoOthers(device, seq);
      parted ??= seq;
    }
    return { parted };
  });
}

/**
 * @param {any} events
 * @param {string} device
 * @returns {Promise<number>}  the number of the last entry of a phone that is here
 */
async function lastOf(events, device) {
  const range = IDBKeyRange.bound([device, 0], [device, Number.MAX_SAFE_INTEGER]);
  return (await events.openKeyCursor(range, 'prev'))?.key[1] ?? 0;
}

/**
 * @param {string} device
 * @param {number} seq
 * @param {number} missing
 */
function beginsInTheMiddle(device, seq, missing) {
  const gap = { count: seq - missing, first: String(missing), last: String(seq - 1) };
  return new UnsentFileProblem(say('troubles-begins-middle'), say('troubles-begins-middle-do', { ...gap, device }));
}

/**
 * @param {string} device
 * @param {number} seq
 */
function twoOthers(device, seq) {
  return new UnsentFileProblem(say('troubles-two-phones'), say('troubles-two-phones-do', { seq: String(seq), device }));
}
