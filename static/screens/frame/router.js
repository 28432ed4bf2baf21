// @ts-check
/**
 * Which screen an address means, and the addresses of the screens.
 *
 * Screens live behind `#`, so that going from one to the next loads nothing. Two paths come from outside:
 * a pairing link, whose token stands in the fragment, and the address that a label's QR code holds.
 */

import { ROOT } from '../../place.js';
import { enterPlace, watchPlace } from './place-kept.js';

/**
 * @typedef {object} Route
 * @property {string} name                     one of the names in pages.js
 * @property {Record<string, string>} params
 * @property {string} path                     tells two routes apart
 */

/**
 * The address behind `#`, the screen it means (empty: the part in it names the screen), its fields.
 * @type {Array<[RegExp, string, string[]]>}
 */
export const SCREENS = [
  [/^$/, 'jobs', []],
  [/^new$/, 'new', []],
  [/^you$/, 'you', []],
  [/^outbox$/, 'outbox', []],
  [/^file$/, 'file', []],
  [/^take-in$/, 'takeIn', []],
  [/^job\/([^/]+)$/, 'job', ['job']],
  [/^job\/([^/]+)\/(moves|trail|history|photos|assumptions|hand|ways|listen|install|shared)$/, '', ['job', 'part']],
  [/^job\/([^/]+)\/ways\/(repair|pause|hand|handed|close)$/, 'ways', ['job', 'way']],
  [/^job\/([^/]+)\/correct\/([^/]+)$/, 'history', ['job', 'about']],
  [/^job\/([^/]+)\/position\/([^/]+)$/, 'position', ['job', 'position']],
  [/^job\/([^/]+)\/photo\/([0-9a-f]+)$/, 'photo', ['job', 'photo']],
  [/^vehicle\/([^/]+)$/, 'vehicle', ['vehicle']],
  [/^unit\/([^/]+)$/, 'unit', ['unit']],
  [/^unit\/([^/]+)\/entries$/, 'entries', ['unit']],
  [/^unit\/([^/]+)\/file$/, 'takeRecord', ['unit']],
  [/^job\/([^/]+)\/file$/, 'takeRecord', ['job']],
  [/^record$/, 'checkRecord', []],
  [/^unit\/([^/]+)\/slip$/, 'slip', ['unit']],
  [/^unit\/([^/]+)\/paper$/, 'unitRecord', ['unit']],
  [/^job\/([^/]+)\/report$/, 'report', ['job']],
  [/^shared$/, 'shared', []],
  [/^shared\/(full|missed|nothing)$/, 'shared', ['trouble']],
  [/^install$/, 'install', []],
  [/^pair$/, 'pair', []],
  [/^help$/, 'help', []],
  [/^help\/([^/]+)$/, 'help', ['page']],
  [/^job\/([^/]+)\/help\/([^/]+)$/, 'help', ['job', 'page']],
  [/^find$/, 'find', []],
  [/^return\/([^/]+)$/, 'jobs', ['unit']],
  [/^returns$/, 'returns', []],
  [/^returns\/(\d{4}-\d{2}-\d{2})$/, 'returns', ['day']],
  [/^search$/, 'search', []],
  [/^phones$/, 'phones', []],
  [/^lessons$/, 'lessons', []],
  [/^lessons\/(all|year|quarter)$/, 'lessons', ['span']],
  [/^labels$/, 'labels', []],
  [/^labels\/print$/, 'print', []],
  [/^labels\/(\d+)$/, 'batch', ['batch']],
  [/^labels\/(\d+)\/sheet$/, 'labelSheet', ['batch']],
  // What a label holds where the app is only files on a host: label-place.js.
  [/^([0-9A-Z]{5})$/, 'code', ['code']],
  [/^code\/([^/]+)$/, 'code', ['code']],
  [/^code\/([^/]+)\/(scanned|typed)$/, 'code', ['code', 'how']],
];

/** A way that is longer is forgotten from its beginning. */
const MOST_KEPT = 20;

const LABEL_PATH = /^u\/([^/]+)$/i;

/**
 * @param {{pathname: string, hash: string}} address
 * @returns {Route}
 */
export function routeOf({ pathname, hash }) {
  const below = pathname.startsWith(ROOT.pathname) ? pathname.slice(ROOT.pathname.length) : '';
  if (below === 'pair') return { name: 'pair', params: { token: hash.slice(1) }, path: 'pair' };
  const label = LABEL_PATH.exec(below);
  if (label && !hash) {
    return { name: 'code', params: { code: decode(label[1]) }, path: `code/${label[1]}` };
  }
  const path = hash.replace(/^#?\/?/, '');
  for (const [pattern, name, fields] of SCREENS) {
    const found = pattern.exec(path);
    if (!found) continue;
    const params = Object.fromEntries(fields.map((field, n) => [field, decode(found[n + 1])]));
    return { name: name || params.part, params, path };
  }
  return { name: 'nowhere', params: {}, path };
}

/** The addresses of the screens, for links and for `go`. */
export const to = {
  jobs: () => '#/',
  newJob: () => '#/new',
  you: () => '#/you',
  outbox: () => '#/outbox',
  /** What was recorded as a file. */
  file: () => '#/file',
  takeIn: () => '#/take-in',
  job: (/** @type {string} */ job) => `#/job/${encodeURIComponent(job)}`,
  /** @param {string} job @param {'moves' | 'trail' | 'history' | 'photos' | 'assumptions' | 'hand' | 'ways' | 'listen' | 'install' | 'shared'} part */
  jobPart: (job, part) => `${to.job(job)}/${part}`,
  /** One of the other ways. @param {string} job @param {'repair' | 'pause' | 'hand' | 'handed' | 'close'} way */
  way: (job, way) => `${to.jobPart(job, 'ways')}/${way}`,
  /** What shows there is not right. @param {string} job @param {string} about  as an entry of the history has it */
  correct: (job, about) => `${to.job(job)}/correct/${encodeURIComponent(about)}`,
  /** @param {string} job @param {string} position */
  position: (job, position) => `${to.job(job)}/position/${encodeURIComponent(position)}`,
  /** @param {string} job @param {string} sha256 */
  photo: (job, sha256) => `${to.job(job)}/photo/${sha256}`,
  /** What was done on a vehicle, and what is on it. */
  vehicle: (/** @type {string} */ vehicle) => `#/vehicle/${encodeURIComponent(vehicle)}`,
  unit: (/** @type {string} */ unit) => `#/unit/${encodeURIComponent(unit)}`,
  /** What was recorded of it outside any job. */
  unitEntries: (/** @type {string} */ unit) => `${to.unit(unit)}/entries`,
  /** The record as a file. */
  unitFile: (/** @type {string} */ unit) => `${to.unit(unit)}/file`,
  jobFile: (/** @type {string} */ job) => `${to.job(job)}/file`,
  checkRecord: () => '#/record',
  /** @param {string} unit @param {'slip' | 'paper'} sheet  what is printed of it */
  unitSheet: (unit, sheet) => `${to.unit(unit)}/${sheet}`,
  report: (/** @type {string} */ job) => `${to.job(job)}/report`,
  /** Pictures that another app has shared with this one. */
  shared: () => '#/shared',
  /** How the app gets onto the home screen. */
  install: () => '#/install',
  /** By a link that is scanned or pasted here. */
  pair: () => '#/pair',
  /** @param {string} [page]  its name; the page that leads to all of them when left out */
  help: (page) => (page ? `#/help/${page}` : '#/help'),
  /** @param {string} job @param {string} page  help for the step of this job; the way back leads to it */
  stepHelp: (job, page) => `${to.job(job)}/help/${page}`,
  find: () => '#/find',
  /** @param {string} unit  one that waits at the counter */
  return: (unit) => `#/return/${encodeURIComponent(unit)}`,
  /** @param {string} [day]  YYYY-MM-DD; today when left out */
  returns: (day) => (day ? `#/returns/${day}` : '#/returns'),
  search: () => '#/search',
  phones: () => '#/phones',
  /** @param {string} [span]  what the page looks back over; all when left out */
  lessons: (span) => (span ? `#/lessons/${span}` : '#/lessons'),
  labels: () => '#/labels',
  printLabels: () => '#/labels/print',
  batch: (/** @type {number} */ batch) => `#/labels/${batch}`,
  labelSheet: (/** @type {number} */ batch) => `#/labels/${batch}/sheet`,
  /** @param {string} code @param {string} how  how it was read, scanned or typed */
  code: (code, how) => `#/code/${encodeURIComponent(code)}/${how}`,
};

/**
 * What a link to a screen holds, whatever the page's own path is.
 * @param {string} hash  one of `to`
 */
export function linkTo(hash) {
  return ROOT.pathname + hash;
}

/** Follows the address and says which screen it means. */
export class Router {
  /** @param {(route: Route) => void} onRoute */
  constructor(onRoute) {
    this.#onRoute = onRoute;
  }

  #onRoute;
  #shown = '';
  /** What led to it. @type {string[]} */
  #trail = [];

  start() {
    addEventListener('hashchange', this.#look);
    addEventListener('popstate', this.#look);
    watchPlace();
    this.#look();
  }

  /**
   * Go to a screen. From a part of it to the screen itself that is a way back, as the phone's own Back leads.
   * @param {string} hash   one of `to`
   * @param {{replace?: boolean}} [options]  leave no way back to the present address
   */
  go(hash, { replace = false } = {}) {
    const link = linkTo(hash);
    if (replace) history.replaceState(history.state, '', link);
    else if (here() !== link) {
      if (here().startsWith(`${link}/`) && wentBack(link)) return;
      history.pushState(cameBy(trail(), here()), '', link);
    }
    this.#look();
  }

  #look = () => {
    // A tapped link has left no note of where it was tapped.
    if (history.state === null) history.replaceState(cameBy(this.#trail, this.#shown), '');
    this.#shown = here();
    this.#trail = trail();
    enterPlace();
    this.#onRoute(routeOf(location));
  };
}

/** The address on the screen, as a link holds it. */
function here() {
  return `${location.pathname}${location.hash}`;
}

/** The addresses that the phone's own Back leads to one after the other, the nearest last. @returns {string[]} */
function trail() {
  return history.state?.trail ?? [];
}

/** @param {string[]} before @param {string} link  the address that is left; none where the app begins */
function cameBy(before, link) {
  return { trail: (link ? [...before, link] : before).slice(-MOST_KEPT) };
}

/** To a page that one came by go back, and say so: the way from there on is forgotten. @param {string} link */
function wentBack(link) {
  const passed = trail();
  const place = passed.lastIndexOf(link);
  if (place < 0) return false;
  history.go(place - passed.length);
  return true;
}

/**
 * Go back in the app. Where that is a page one came by, the way here is forgotten, so that the phone's own
 * Back leads on from there and never forward again.
 * @param {string} hash  one of `to`
 */
export function goBack(hash) {
  const link = linkTo(hash);
  if (wentBack(link)) return;
  history.replaceState({ trail: trail() }, '', link);
  dispatchEvent(new PopStateEvent('popstate'));
}

/** @param {string} part */
function decode(part) {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
