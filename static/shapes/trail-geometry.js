// @ts-check
/**
 * Where the trail's lines run, and where its words stand.
 *
 * Around each test there is a quiet zone, half a code wide to either side, in which every line
 * runs level; lines change rows only between two such zones. A code under a mark therefore cannot
 * be crossed, however far a unit travels.
 */

/**
 * @typedef {{test: number, position: string|null, mark: string}} Point
 * @typedef {{unit: string, shown: string, suspect: boolean, points: Point[]}} Line
 * @typedef {{tests: {n: number, label: string, counted: boolean, why?: string}[],
 *   rows: {position: string, name: string, suspect?: boolean}[], lines: Line[],
 *   joins?: {start: string, end: string}[], mixed_words?: string}} TrailView
 * @typedef {Point & {x: number, y: number, named: boolean}} Place
 */

/** 18 units are one rem. The rows are as tall as their names in trail.css. */
export const UNITS_PER_REM = 18;
export const HEAD = 45;
const LANE = 45;
const ROW = 63;
const TALL_ROW = 81;
/** The longest name that fits a plain row in three lines. */
const LONG_NAME = 26;

const FIRST = 34;
/** From test to test: so that three fit a phone of 390 px, or wide where there are only two tests. */
export const NEAR = 92;
export const WIDE = 160;
/** Half the width of the quiet zone: half a code of six letters (27), and half the fault's band (8). */
const QUIET = 35;

/**
 * Gives each stay in hand a lane of its own while it lasts.
 * @param {Line[]} lines points already complete
 */
function lanes(lines) {
  /** @type {Set<string>} */
  const taken = new Set();
  /** @type {Map<string, number>} */
  const lane = new Map();
  let count = 0;
  for (const line of lines) {
    const away = line.points.filter((point) => point.position === null).map((point) => point.test);
    if (away.length === 0) {
      continue;
    }
    let free = 0;
    while (away.some((test) => taken.has(`${test}/${free}`))) {
      free += 1;
    }
    for (const test of away) {
      taken.add(`${test}/${free}`);
      lane.set(`${line.unit}/${test}`, free);
    }
    count = Math.max(count, free + 1);
  }
  return { lane, count };
}

/**
 * A line without holes: between two tests of which it is known, a unit that was at no position
 * was in hand.
 * @param {Line} line
 * @param {Map<string, number>} rowOf
 */
function complete(line, rowOf) {
  const known = new Map(line.points.map((point) => [point.test, point]));
  const tests = [...known.keys()];
  const points = [];
  for (let test = Math.min(...tests); test <= Math.max(...tests); test += 1) {
    const point = known.get(test);
    const placed = point && point.position !== null && rowOf.has(point.position);
    points.push(placed ? point : { test, position: null, mark: "hand" });
  }
  return { ...line, points };
}

/**
 * The path from one place to the next: level, across, level.
 * @param {{x: number, y: number}} from
 * @param {{x: number, y: number}} to
 */
export function step(from, to) {
  if (from.y === to.y) {
    return `M${from.x} ${from.y}H${to.x}`;
  }
  const start = from.x + QUIET;
  const end = to.x - QUIET;
  const middle = (start + end) / 2;
  return `M${from.x} ${from.y}H${start}C${middle} ${from.y} ${middle} ${to.y} ${end} ${to.y}H${to.x}`;
}

/**
 * Where the fault went from one counted test to the next: along with a unit, at a position, or
 * both. This only joins readings that are there; what they prove is the core's to say.
 * @param {TrailView} view
 * @param {(Line & {places: Place[]})[]} lines
 */
function faultPath(view, lines) {
  const counted = view.tests.map((_, n) => n).filter((n) => view.tests[n].counted);
  const paths = [];
  for (let k = 1; k < counted.length; k += 1) {
    const [before, after] = [counted[k - 1], counted[k]];
    for (const from of lines) {
      const start = from.places.find((place) => place.test === before && place.mark === "fault");
      if (!start) {
        continue;
      }
      for (const to of lines) {
        const end = to.places.find((place) => place.test === after && place.mark === "fault");
        if (!end) {
          continue;
        }
        if (to.unit === from.unit) {
          const run = from.places.filter((place) => place.test >= before && place.test <= after);
          paths.push(run.slice(1).map((place, n) => step(run[n], place)).join(""));
        } else if (end.position === start.position) {
          paths.push(step(start, { x: end.x, y: start.y }));
        }
      }
    }
  }
  return paths;
}

/**
 * Who may be who among sensors that got mixed up: from where one was last tested to where a part that may
 * be it was tested first.
 * @param {TrailView} view
 * @param {(Line & {places: Place[]})[]} lines
 */
function maybePaths(view, lines) {
  /** @param {string} unit */
  const find = (unit) => lines.find((line) => line.unit === unit);
  return (view.joins ?? []).flatMap(({ start, end }) => {
    const from = find(start)?.places.at(-1);
    const to = find(end)?.places[0];
    return from && to && from.test < to.test ? [step(from, to)] : [];
  });
}

/**
 * A trail in pieces that each fit a narrow paper. A piece begins with the test that the one before ended
 * with, so that every change of place is drawn once, whole.
 * @param {TrailView} view
 * @param {number} most   tests in one piece, at least two
 * @returns {TrailView[]}
 */
export function trailPieces(view, most) {
  const pieces = [];
  for (let from = 0; from === 0 || from < view.tests.length - 1; from += most - 1) {
    const to = Math.min(from + most, view.tests.length);
    const lines = view.lines.map((line) => ({
      ...line,
      points: line.points
        .filter(({ test }) => test >= from && test < to)
        .map((point) => ({ ...point, test: point.test - from })),
    }));
    pieces.push({
      ...view, tests: view.tests.slice(from, to), lines: lines.filter(({ points }) => points.length),
      mixed_words: to === view.tests.length ? view.mixed_words : "",
    });
  }
  return pieces;
}

/**
 * @param {TrailView} view
 * @param {number} [distance] from one test to the next
 */
export function trailGeometry(view, distance = NEAR) {
  const rowHeight = view.rows.some((row) => row.name.length > LONG_NAME) ? TALL_ROW : ROW;
  const rowOf = new Map(view.rows.map((row, n) => [row.position, n]));
  const whole = view.lines.filter((line) => line.points.length).map((line) => complete(line, rowOf));
  const { lane, count } = lanes(whole);
  const handTop = HEAD + view.rows.length * rowHeight;
  const last = view.tests.length - 1;
  /** @param {number} test */
  const column = (test) => FIRST + test * distance;
  /** @param {number} row */
  const middle = (row) => HEAD + row * rowHeight + 22;
  const lines = whole.map((line) => ({
    ...line,
    places: line.points.map((point, n) => {
      const before = line.points[n - 1];
      const y = point.position === null
        ? handTop + Number(lane.get(`${line.unit}/${point.test}`)) * LANE + 16
        : middle(Number(rowOf.get(point.position)));
      // A code stands where a line starts, where its unit has moved, and at the end of a long
      // trail, where the start has been scrolled away.
      const moved = !before || before.position !== point.position;
      return { ...point, x: column(point.test), y, named: moved || (point.test === last && last > 2) };
    }),
    changesPlace: line.points.some((point) => point.position !== line.points[0].position),
  }));
  return {
    rowHeight, tall: rowHeight === TALL_ROW, lanes: count, lines, column,
    faultPath: faultPath(view, lines), maybePaths: maybePaths(view, lines),
    suspectRows: view.rows.flatMap((row, n) => (row.suspect && last >= 0
      ? [`M${column(0) - 26} ${middle(n)}H${column(last) + 26}`] : [])),
    width: FIRST * 2 + Math.max(0, last) * distance,
    height: handTop + count * LANE,
  };
}
