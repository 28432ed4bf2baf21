// @ts-check
/**
 * Whether a sound ticks at a steady rate: what a working ultrasonic sensor does, whose bursts are heard as ticks.
 *
 * A level every millisecond; single bangs are cut, slow changes taken out, ticks widened so that a wavering
 * one still meets the next; then how alike the sound is to itself some milliseconds later. Of a steady tick
 * that is high after one period and after two. The rates that are looked for hold all that is published of
 * such modules, with room (4 to 60 a second; no measured rate of a vehicle is known to us).
 */

/** Levels a second: one each millisecond. */
export const LEVELS_PER_SECOND = 1000;
/** How much of the sound is looked at, in levels; before that many there is no answer. */
export const LOOKED_AT = 4000;

const SHORTEST = 16;
const LONGEST = 250;
// Above any of 2,000 seeds of noise (`python -m tests.bench.hearing`).
const STEADY = 0.18;
/** How far a level may stand out: a bang is no tick. */
const MOST = Math.log(4);
/** Of the best likeness: the first peak that comes near it is the period, not a multiple. */
const NEAR = 0.65;
const HANN = window(9);
const SLOW = 125;
const SECTIONS = 4;

/**
 * @typedef {object} Rhythm
 * @property {number} perSecond  ticks a second; 0 where nothing is regular
 * @property {number} strength   how alike the sound is to itself a period later: 1 is the same
 */

/**
 * Look for a steady tick in the latest levels.
 * @param {ArrayLike<number>} levels  at least LOOKED_AT of them
 * @returns {Rhythm}
 */
export function rhythm(levels) {
  const alike = likeness(flattened(Array.from(levels).slice(-LOOKED_AT)), 2 * LONGEST + 1);
  const steady = alike.slice(0, LONGEST + 2).map((each, lag) => (each + around(alike, 2 * lag)) / 2);
  const peaks = [];
  for (let lag = SHORTEST; lag <= LONGEST; lag += 1) {
    if (steady[lag] > steady[lag - 1] && steady[lag] >= steady[lag + 1]) peaks.push(lag);
  }
  const best = Math.max(0, ...peaks.map((lag) => steady[lag]));
  const first = peaks.find((lag) => steady[lag] >= NEAR * best);
  const regular = first !== undefined && best >= STEADY;
  return { perSecond: regular ? LEVELS_PER_SECOND / summit(steady, first) : 0, strength: best };
}

/** The best of a place and its neighbours: a period need not be whole milliseconds. @param {number[]} alike @param {number} lag */
function around(alike, lag) {
  return Math.max(alike[lag - 1] ?? 0, alike[lag] ?? 0, alike[lag + 1] ?? 0);
}

/** Where a parabola through a peak and its neighbours is highest. @param {number[]} found @param {number} lag */
function summit(found, lag) {
  const [before, at, after] = [found[lag - 1], found[lag], found[lag + 1]];
  const bend = before - 2 * at + after;
  return bend < 0 ? lag + (before - after) / (2 * bend) : lag;
}

/** How far levels stand out of what is around them; each tick as wide as it may waver. @param {number[]} levels */
function flattened(levels) {
  // By their logarithms a bang stands out no more than many ticks do, and a gust is one step up.
  const logs = levels.map((level) => Math.log(level + Number.EPSILON));
  const sums = [0];
  for (const level of logs) sums.push(sums[sums.length - 1] + level);
  const out = logs.map((level, at) => {
    const from = Math.max(0, at - SLOW);
    const to = Math.min(logs.length, at + SLOW + 1);
    return Math.min(MOST, level - (sums[to] - sums[from]) / (to - from));
  });
  return out.map((_, at) => HANN.reduce((sum, weight, k) => sum + weight * (out[at + k - 4] ?? 0), 0));
}

/**
 * How alike a sound is to itself, by how many levels later; 1 is the same. Each section counts as much as any
 * other, and the one that is most alike is left out: what happens once is not regular.
 * @param {number[]} sound
 * @param {number} most
 */
function likeness(sound, most) {
  const length = Math.floor(sound.length / SECTIONS);
  const parts = Array.from({ length: SECTIONS }, (_, n) => sectionLikeness(sound, n * length, length, most));
  return parts[0].map((_, lag) => {
    const each = parts.map((part) => part[lag]);
    return (each.reduce((sum, one) => sum + one) - Math.max(...each)) / (SECTIONS - 1);
  });
}

/** @param {number[]} sound @param {number} from @param {number} length @param {number} most */
function sectionLikeness(sound, from, length, most) {
  let whole = 0;
  for (let at = from; at < from + length; at += 1) whole += sound[at] ** 2;
  return Array.from({ length: most + 1 }, (_, lag) => {
    let sum = 0;
    for (let at = from + lag; at < from + length; at += 1) sum += sound[at] * sound[at - lag];
    return ((sum / (length - lag)) * length) / (whole || 1);
  });
}

/** @param {number} length */
function window(length) {
  return Array.from({ length }, (_, at) => Math.sin((Math.PI * (at + 1)) / (length + 1)) ** 2);
}
