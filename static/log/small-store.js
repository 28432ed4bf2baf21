// @ts-check
/**
 * Where small versions of pictures lie (photos/small-pictures.js): a database of their own, a cache and no more.
 */

import { openDB } from 'idb';

import { ownName } from '../place.js';

export const SMALL_PICTURES = ownName('swaptrail-small');
const VERSION = 1;

/**
 * @typedef {object} Small
 * @property {string} sha256
 * @property {number} n               the server's number of the entry that names it
 * @property {number} [wanted]        the same, until it is here
 * @property {ArrayBuffer} [bytes]
 */

/**
 * Do something with the database, which is opened for each use: a browser may drop a connection at any time. What
 * fails leaves a picture unseen for now, and nothing else.
 * @template T
 * @param {(db: import('idb').IDBPDatabase<any>) => Promise<T>} work
 * @returns {Promise<T | undefined>}
 */
export async function withSmallPictures(work) {
  try {
    const db = await openDB(SMALL_PICTURES, VERSION, { upgrade });
    try {
      return await work(db);
    } finally {
      db.close();
    }
  } catch {
    return undefined;
  }
}

/** Let all of them go, to be fetched again once there is room: where a phone is full, they go before what it recorded. */
export async function dropSmallPictures() {
  await withSmallPictures(async (db) => {
    const tx = db.transaction(['pictures', 'noted'], 'readwrite');
    await Promise.all([tx.objectStore('pictures').clear(), tx.objectStore('noted').clear(), tx.done]);
  });
}

/** @param {import('idb').IDBPDatabase<any>} fresh */
function upgrade(fresh) {
  const pictures = fresh.createObjectStore('pictures', { keyPath: 'sha256' });
  pictures.createIndex('n', 'n');
  pictures.createIndex('wanted', 'wanted');
  fresh.createObjectStore('noted');
}
