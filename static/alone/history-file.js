// @ts-check
/**
 * Everything this phone holds as one file: the entries of all devices in this phone's order, and all pictures.
 *
 * Without a server there is no order of receipt between devices. This phone's order takes its place: its own entries
 * as they were recorded, those of another phone where they were taken in, and so they stand in the file. Whatever
 * an entry rests on stands before it on every phone that knew both, so that also holds in the file, and on each phone
 * that takes it in: what is new there is put behind what it has, in the order of the file.
 *
 * The format is that of unsent-file.js, so a server, a paired phone and another phone like this read it.
 */

import { fileOf } from '../log/unsent-file.js';

/**
 * @typedef {object} MadeFile
 * @property {File} file
 * @property {number} upTo      place of the first entry that is not in it, in this phone's order
 * @property {{entries: number, photos: number}} held     what this phone held when it was made
 * @property {{entries: number, photos: number}} content  what is in it
 * @property {number} damaged   photos left out because their bytes have changed on this phone
 */

/**
 * Everything that this phone holds as one file; nothing counts as saved yet.
 * @param {import('../log/store.js').Store} store
 * @param {(done: number, all: number) => void} [onPhoto]  hears how many photos were gone through
 * @returns {Promise<MadeFile>}
 */
export async function historyFile(store, onPhoto = () => undefined) {
  const { head, entries, photos } = await everything(store);
  const made = await fileOf(store, {
    device: head.device,
    entries,
    photos,
    name: `swaptrail-${stamp(new Date())}.txt`,
    onPhoto: (done) => onPhoto(done, photos.length),
  });
  return {
    file: made.file,
    upTo: head.nextUnsent,
    held: { entries: entries.length, photos: photos.length },
    content: { entries: entries.length, photos: made.photos },
    damaged: made.damaged,
  };
}

/**
 * One look at all of it, so that the count fits the entries. The pictures' bytes are read later, one by one.
 * @param {import('../log/store.js').Store} store
 * @returns {Promise<{head: import('../log/device.js').Head, entries: import('../log/store.js').StoredEvent[], photos: string[]}>}
 */
function everything(store) {
  return store.withDb(async (db) => {
    const tx = db.transaction(['meta', 'events', 'photo_bytes']);
    const head = await tx.objectStore('meta').get('head');
    const events = tx.objectStore('events');
    // Numbered ones come from a server that once stood at this address.
    const entries = (await events.index('n').getAll()).concat(await events.index('unsent').getAll());
    const photos = /** @type {string[]} */ (await tx.objectStore('photo_bytes').getAllKeys());
    return { head, entries, photos };
  });
}

/**
 * By this phone's clock, for people who look for the latest one: 2026-11-28-1031.
 * @param {Date} now
 */
function stamp(now) {
  const two = (/** @type {number} */ number) => String(number).padStart(2, '0');
  const day = [now.getFullYear(), two(now.getMonth() + 1), two(now.getDate())].join('-');
  return `${day}-${two(now.getHours())}${two(now.getMinutes())}`;
}
