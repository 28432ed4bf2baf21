// @ts-check
/**
 * What waits on this phone to be sent, counted without loading a single picture.
 */

/**
 * @param {import('./store.js').Store} store
 * @returns {Promise<{unsentEvents: number, unsentPhotos: number, unsentBytes: number, oldestUnsentAt: number | null}>}
 */
export function countUnsent(store) {
  return store.withDb(async (db) => {
    const tx = db.transaction(['events', 'photos']);
    const events = tx.objectStore('events').index('unsent');
    const unsentEvents = await events.count();
    const first = await events.get(IDBKeyRange.lowerBound(0));
    let oldest = first ? first.event.at : Infinity;
    let unsentPhotos = 0;
    let unsentBytes = 0;
    let cursor = await tx.objectStore('photos').index('unsent').openKeyCursor();
    while (cursor) {
      const [, size, at] = /** @type {[1, number, number]} */ (cursor.key);
      unsentPhotos += 1;
      unsentBytes += size;
      oldest = Math.min(oldest, at);
      cursor = await cursor.continue();
    }
    return { unsentEvents, unsentPhotos, unsentBytes, oldestUnsentAt: oldest === Infinity ? null : oldest };
  });
}

/**
 * Why the server does not take the first of the waiting events or photos that it refused.
 * @param {import('./store.js').Store} store
 * @returns {Promise<string>} empty when it refused none
 */
export function firstRefusal(store) {
  return store.withDb(async (db) => {
    const tx = db.transaction(['events', 'photos']);
    let event = await tx.objectStore('events').index('unsent').openCursor();
    while (event && !event.value.refused) event = await event.continue();
    if (event) return `The server does not take an entry of this phone. ${event.value.refused.reason}`;
    let photo = await tx.objectStore('photos').index('unsent').openCursor();
    while (photo && !photo.value.problem) photo = await photo.continue();
    return photo ? `A photo cannot be sent: ${photo.value.problem}` : '';
  });
}
