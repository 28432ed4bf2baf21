// @ts-check
/**
 * What waits on this phone to be sent, and why some of it may not go.
 */

import { say } from '../words/words.js';

/**
 * @typedef {object} Named        what unsent entries belong to, as it was found last
 * @property {number} first       place of the first one among them
 * @property {number} last
 * @property {number} count
 * @property {Set<string>} jobs
 * @property {number} loose       entries that belong to no job
 */

/** So that one entry more does not have all read again. @type {WeakMap<import('../log/store.js').Store, Named>} */
const named = new WeakMap();

/**
 * @param {import('../log/store.js').Store} store
 * @returns {Promise<{unsentEvents: number, unsentJobs: number, unsentLoose: number, unsentPhotos: number,
 *     unsentBytes: number, oldestUnsentAt: number | null}>}
 */
export function countUnsent(store) {
  return store.withDb(async (db) => {
    const tx = db.transaction(['events', 'photos']);
    const events = tx.objectStore('events').index('unsent');
    const unsentEvents = await events.count();
    const first = await events.get(IDBKeyRange.lowerBound(0));
    /** @type {import('../log/store.js').StoredPhoto[]} */
    const photos = await tx.objectStore('photos').index('unsent').getAll();
    const { jobs, loose } = await namedBy(store, events, unsentEvents, first);
    const times = photos.map(({ at }) => at).concat(first ? first.event.at : []);
    return {
      unsentEvents,
      unsentJobs: jobs.size,
      unsentLoose: loose,
      unsentPhotos: photos.length,
      unsentBytes: photos.reduce((sum, { size }) => sum + size, 0),
      oldestUnsentAt: times.length ? Math.min(...times) : null,
    };
  });
}

/**
 * @param {import('../log/store.js').Store} store
 * @param {any} index    of the unsent entries
 * @param {number} count
 * @param {import('../log/store.js').StoredEvent | undefined} first
 * @returns {Promise<Named>}
 */
async function namedBy(store, index, count, first) {
  const known = named.get(store);
  const goesOn = known && known.first === first?.unsent && known.count <= count;
  /** @type {import('../log/store.js').StoredEvent[]} */
  let entries = goesOn ? await index.getAll(IDBKeyRange.lowerBound(known.last, true)) : [];
  /** @type {Named} */
  let before = known ?? NOTHING;
  if (!goesOn || known.count + entries.length !== count) {
    entries = await index.getAll();
    before = NOTHING;
  }
  const found = {
    first: first?.unsent ?? 0,
    last: entries[entries.length - 1]?.unsent ?? before.last,
    count,
    jobs: new Set([...before.jobs, ...entries.flatMap(({ event }) => event.job ?? [])]),
    loose: before.loose + entries.filter(({ event }) => !event.job).length,
  };
  named.set(store, found);
  return found;
}

/** @type {Named} */
const NOTHING = { first: 0, last: 0, count: 0, jobs: new Set(), loose: 0 };

/**
 * Why the server does not take the first of the waiting events or photos that it refused.
 * @param {import('../log/store.js').Store} store
 * @returns {Promise<string>} empty when it refused none
 */
export function firstRefusal(store) {
  return store.withDb(async (db) => {
    const tx = db.transaction(['events', 'photos']);
    let event = await tx.objectStore('events').index('unsent').openCursor();
    while (event && !event.value.refused) event = await event.continue();
    if (event) return say('troubles-entry-refused', { why: event.value.refused.reason });
    const photos = await tx.objectStore('photos').index('unsent').getAll();
    const photo = photos.find(({ problem }) => problem);
    return photo ? say('troubles-photo-refused', { why: problemWords(photo.problem ?? '') }) : '';
  });
}

/** What this phone itself found wrong with a photo, by the code that is kept with it. @type {Record<string, string>} */
const PROBLEMS = { missing: 'troubles-photo-missing', damaged: 'troubles-photo-damaged' };

/** @param {string} problem  a code, or what the server said */
function problemWords(problem) {
  return problem in PROBLEMS ? say(PROBLEMS[problem]) : problem;
}

/** As many of the oldest entries are listed; the rest is only counted. */
const MOST_LISTED = 500;

/**
 * @typedef {object} WaitingJob   what waits of one job, or of none (a spare, for one)
 * @property {string} job         empty for none
 * @property {number} events
 * @property {number} photos
 *
 * @typedef {object} NotTaken     an entry that the server refused, with what it said
 * @property {string} job
 * @property {string} kind
 * @property {number} at
 * @property {string} reason
 *
 * @typedef {object} PhotoNotTaken
 * @property {string} sha256
 * @property {string} problem
 * @property {number} at
 * @property {string} job         empty where no entry names the photo
 * @property {string} position    empty where it shows none
 *
 * @typedef {object} Waiting
 * @property {WaitingJob[]} jobs
 * @property {boolean} all        whether `jobs` counts everything
 * @property {NotTaken[]} entriesNotTaken
 * @property {PhotoNotTaken[]} photosNotTaken
 */

/**
 * What waits, job by job, and what the server did not take.
 * @param {import('../log/store.js').Store} store
 * @param {{onlyNotTaken?: boolean}} [options]  onlyNotTaken: `jobs` need not tell of pictures. Finding their jobs
 *     reads the whole log once their entries are sent, and that at each step of a sending would hold up the screen
 * @returns {Promise<Waiting>}
 */
export function whatWaits(store, { onlyNotTaken = false } = {}) {
  return store.withDb(async (db) => {
    const tx = db.transaction(['events', 'photos']);
    /** @type {import('../log/store.js').StoredEvent[]} */
    const entries = await tx.objectStore('events').index('unsent').getAll(null, MOST_LISTED + 1);
    /** @type {import('../log/store.js').StoredPhoto[]} */
    const unsent = await tx.objectStore('photos').index('unsent').getAll();
    const photos = onlyNotTaken ? unsent.filter(({ problem }) => problem) : unsent;
    const listed = entries.slice(0, MOST_LISTED);
    const named = namedPhotos(listed);
    if (photos.some(({ sha256 }) => !named.has(sha256))) {
      for (const [sha256, event] of namedPhotos(await tx.objectStore('events').getAll())) named.set(sha256, event);
    }
    return {
      jobs: byJob(listed, photos.map(({ sha256 }) => named.get(sha256)?.job ?? '')),
      all: entries.length <= MOST_LISTED,
      entriesNotTaken: listed
        .filter(({ refused }) => refused)
        .map(({ event, refused }) => ({
          job: event.job ?? '',
          kind: event.kind,
          at: event.at,
          reason: refused?.reason ?? '',
        })),
      photosNotTaken: photos
        .filter(({ problem }) => problem)
        .map(({ sha256, problem = '', at }) => ({
          sha256,
          problem: problemWords(problem),
          at,
          job: named.get(sha256)?.job ?? '',
          position: named.get(sha256)?.data.position ?? '',
        })),
    };
  });
}

/**
 * @param {import('../log/store.js').StoredEvent[]} entries
 * @returns {Map<string, import('../log/store.js').Envelope>}  by the hash of the photo
 */
function namedPhotos(entries) {
  const events = entries.map(({ event }) => event).filter(({ kind }) => kind === 'photo_taken');
  return new Map(events.map((event) => [event.data.sha256, event]));
}

/**
 * @param {import('../log/store.js').StoredEvent[]} entries
 * @param {string[]} photoJobs
 * @returns {WaitingJob[]}
 */
function byJob(entries, photoJobs) {
  /** @type {Map<string, WaitingJob>} */
  const jobs = new Map();
  const of = (/** @type {string} */ job) => {
    const found = jobs.get(job) ?? { job, events: 0, photos: 0 };
    jobs.set(job, found);
    return found;
  };
  for (const { event } of entries) of(event.job ?? '').events += 1;
  for (const job of photoJobs) of(job).photos += 1;
  return [...jobs.values()];
}
