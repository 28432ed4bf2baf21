// @ts-check
/**
 * Which rows of a trail tell something: where a fault was, where a unit came or went, and what is suspected.
 * The rest, clean throughout with nothing moved, would only push them off a phone's screen.
 */

/** @typedef {import("./trail-geometry.js").TrailView} TrailView */

/** So many rows stand on a phone beside everything else; up to here nothing is folded away. */
const ROOM = 6;

/**
 * The trail in two: the rows that matter, and the others, each in the order of the board. Null where nothing is
 * folded away.
 * @param {TrailView} view
 * @param {number} [room] up to so many rows all are shown
 * @returns {{shown: TrailView, folded: TrailView | null}}
 */
export function rowsThatMatter(view, room = ROOM) {
  const telling = new Set(view.rows.filter((row) => row.suspect).map((row) => row.position));
  const joined = new Set((view.joins ?? []).flatMap(({ start, end }) => [start, end]));
  for (const line of view.lines) {
    const places = new Set(line.points.map((point) => point.position));
    const isTelling = line.suspect || joined.has(line.unit) || places.size > 1
      || line.points.some((point) => point.mark === "fault");
    if (isTelling) places.forEach((place) => place !== null && telling.add(place));
  }
  const others = view.rows.filter((row) => !telling.has(row.position));
  if (view.rows.length <= room || !telling.size || others.length < 2) return { shown: view, folded: null };
  return { shown: rowsOf(view, (position) => telling.has(position)), folded: rowsOf(view, (position) => !telling.has(position)) };
}

/**
 * @param {TrailView} view
 * @param {(position: string) => boolean} wanted
 * @returns {TrailView}
 */
function rowsOf(view, wanted) {
  return {
    ...view,
    rows: view.rows.filter((row) => wanted(row.position)),
    lines: view.lines.filter((line) => line.points.some((point) => point.position !== null && wanted(point.position))),
  };
}
