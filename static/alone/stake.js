// @ts-check
/**
 * How much stands to be lost with this phone, in four stages, and why: what the reminder to save the file
 * grows with. Pure: the same facts give the same stage.
 *
 *   none    nothing is outside of a file
 *   quiet   something is
 *   due     a job's worth of work, or days of it
 *   urgent  several jobs, or more days than some browsers keep a page that is not on the home screen
 *
 * The thresholds are our choice. The days rest on one fact: Safari clears what a page stored after seven days of
 * its use without a visit (webkit.org/blog/10218), so where nothing stands against that, `urgent` comes before it.
 */

/** @typedef {'none' | 'quiet' | 'due' | 'urgent'} Stage */

const DAY = 24 * 60 * 60 * 1000;

/** Reaching one of the three is enough. A simple job makes about 45 entries and 5 pictures. */
const KEPT = {
  due: { entries: 40, photos: 12, days: 7 },
  urgent: { entries: 150, photos: 45, days: 21 },
};

/** Where the browser does not promise to keep the data, or the app is not on the home screen. */
const AT_RISK = {
  due: { entries: 15, photos: 4, days: 2 },
  urgent: { entries: 60, photos: 16, days: 5 },
};

/**
 * @param {{entries: number, photos: number, since: number | null}} unsaved  as Saved counts it
 * @param {{promised: boolean, installed: boolean}} phone  whether the browser promised to keep the data, and the
 *     app is on the home screen
 * @param {number} now  ms
 * @returns {Stage}
 */
export function stageOf({ entries, photos, since }, { promised, installed }, now) {
  if (entries + photos === 0) return 'none';
  const limits = promised && installed ? KEPT : AT_RISK;
  // A clock that was set back must not silence the reminder for good, so time only counts forward.
  const days = since === null ? 0 : Math.max(0, now - since) / DAY;
  const reaches = (/** @type {{entries: number, photos: number, days: number}} */ limit) =>
    entries >= limit.entries || photos >= limit.photos || days >= limit.days;
  if (reaches(limits.urgent)) return 'urgent';
  return reaches(limits.due) ? 'due' : 'quiet';
}
