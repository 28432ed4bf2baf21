// @ts-check
/**
 * What waits on this phone to be sent, and why some of it may not go.
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
    /** @type {import('./store.js').PhotoRecord[]} */
    const photos = await tx.objectStore('photos').index('unsent').getAll();
    const times = photos.map(({ at }) => at).concat(first ? first.event.at : []);
    return {
      unsentEvents,
      unsentPhotos: photos.length,
      unsentBytes: photos.reduce((sum, { size }) => sum + size, 0),
      oldestUnsentAt: times.length ? Math.min(...times) : null,
    };
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
    const photos = await tx.objectStore('photos').index('unsent').getAll();
    const photo = photos.find(({ problem }) => problem);
    return photo ? `A photo cannot be sent: ${photo.problem}` : '';
  });
}
