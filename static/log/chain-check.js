// @ts-check
/**
 * Whether the log on this phone is as it was recorded: each event's hash is computed again, and each must
 * continue the one before it on its device. What was found sound once is not looked at again before the
 * app is opened anew.
 */

import { eventHash } from './canonical.js';

/**
 * @typedef {{device: string, seq: number, what: 'changed' | 'missing' | 'other'}} ChainFault
 * @typedef {{seq: number, hash: string}} Sound  how far a device's chain was found sound
 */

/** @type {Map<string, Sound>} */
const sound = new Map();

/**
 * The first fault of each device that recorded anything on a job.
 * @param {import('./store.js').Store} store
 * @param {string | null} job
 * @returns {Promise<ChainFault[]>}
 */
export async function chainFaults(store, job) {
  if (!job) return [];
  const entries = await store.withDb((db) => db.getAllFromIndex('events', 'job', job));
  const devices = [...new Set(entries.map(({ device }) => device))].sort();
  const found = await Promise.all(devices.map((device) => firstFault(store, device)));
  return found.filter((fault) => fault !== null);
}

/**
 * @param {import('./store.js').Store} store
 * @param {string} device
 * @returns {Promise<ChainFault | null>}
 */
async function firstFault(store, device) {
  let { seq, hash } = sound.get(device) ?? { seq: 0, hash: '' };
  const behind = IDBKeyRange.bound([device, seq + 1], [device, Number.MAX_SAFE_INTEGER]);
  for (const entry of await store.withDb((db) => db.getAll('events', behind))) {
    const { event } = entry;
    const fault = (/** @type {ChainFault['what']} */ what) => ({ device, seq: entry.seq, what });
    if (entry.seq !== seq + 1) return fault('missing');
    if ((await hashOrNothing(event)) !== entry.hash || event.seq !== entry.seq) return fault('changed');
    if (event.prev !== hash) return fault('other');
    ({ seq, hash } = entry);
    sound.set(device, { seq, hash });
  }
  return null;
}

/** @param {import('./store.js').Envelope} event */
async function hashOrNothing(event) {
  try {
    return await eventHash(event);
  } catch {
    return '';
  }
}
