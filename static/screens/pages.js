// @ts-check
/**
 * The screens by name (the names that router.js gives).
 */

import { HAS_SERVER } from '../place.js';
import { codePage } from './unit/code-page.js';
import { atBenchPage, atCounterPage } from './you/other-role.js';
import { faultPage, nowherePage } from './frame/fault.js';
import { readRarePages } from './frame/read-late.js';
import { jobPage, stepContext } from './job/job.js';
import { jobsPage } from './job/jobs.js';
import { jobQuestion, loadJob } from './job/job-data.js';
import { movesPage } from './job/moves-page.js';
import { openJobPage } from './job/open-job.js';
import { pairPage } from './you/pair.js';
import { needsCorePage, uncheckedJobPage } from './job/unchecked.js';
import { unitPage } from './unit/unit.js';
import { youPage } from './you/you.js';
import { noCounterPage, noPairingPage, onePhonePage } from './alone/no-server-pages.js';

/**
 * @typedef {object} Page
 * @property {(services: import('./frame/context.js').Services, params: Record<string, string>) => Promise<any> | any} load
 * @property {(ctx: any) => import('./frame/frame.js').Parts} draw
 * @property {(params: Record<string, string>) => import('../core/client.js').Question | null} [asks]
 *     what `load` asks of the core first; it may be answered in the trip of the record before
 * @property {(params: Record<string, string>, data: any) => string} [formKey]  where what is entered here is kept
 */

/**
 * A screen that is opened rarely: its script is read once the first screen stands, or when it is opened.
 * @param {(rare: typeof import('./rare-pages.js')) => Page} which
 * @returns {Page}
 */
function later(which) {
  /** @type {Page} */
  let page;
  return {
    async load(services, params) {
      page = which(await readRarePages());
      return page.load(services, params);
    },
    draw: (ctx) => page.draw(ctx),
    asks: (params) => page.asks?.(params) ?? null,
    formKey: (params, data) => page.formKey?.(params, data) ?? '',
  };
}

/** @type {Record<string, Page>} */
const PAGES = {
  jobs: jobsPage,
  new: openJobPage,
  job: jobPage,
  // A move chosen here is entered at the step, so both share its form.
  moves: { ...jobPage, load: loadJob, asks: jobQuestion, draw: (ctx) => movesPage({ ...ctx, ...stepContext(ctx.data) }) },
  trail: later((rare) => rare.trailPage),
  history: later((rare) => rare.historyPage),
  photos: later((rare) => rare.photosPage),
  assumptions: later((rare) => rare.assumptionsPage),
  hand: later((rare) => rare.handPage),
  ways: later((rare) => rare.waysPage),
  listen: later((rare) => rare.listenPage),
  photo: later((rare) => rare.picturePage),
  position: later((rare) => rare.positionPage),
  vehicle: later((rare) => rare.vehiclePage),
  unit: unitPage,
  entries: later((rare) => rare.entriesPage),
  takeRecord: later((rare) => rare.takeRecordPage),
  checkRecord: later((rare) => rare.checkRecordPage),
  slip: later((rare) => rare.slipPage),
  unitRecord: later((rare) => rare.unitRecordPage),
  report: later((rare) => rare.reportPage),
  help: later((rare) => rare.helpPage),
  find: later((rare) => rare.findPage),
  code: codePage,
  lessons: later((rare) => rare.lessonsPage),
  labels: later((rare) => rare.batchesPage),
  print: later((rare) => rare.printPage),
  batch: later((rare) => rare.batchPage),
  labelSheet: later((rare) => rare.labelSheetPage),
  you: youPage,
  outbox: later((rare) => rare.outboxPage),
  // With a server both are there: what is sent needs no file, and one of another phone is taken in.
  file: later((rare) => rare.outboxPage),
  takeIn: later((rare) => rare.outboxPage),
  pair: pairPage,
  install: later((rare) => rare.installPage),
  shared: later((rare) => rare.sharedPage),
  phones: later((rare) => rare.phonesPage),
  returns: atCounterPage,
  search: atCounterPage,
};

/** What a phone at the parts counter shows in their place. @type {Record<string, Page>} */
const AT_COUNTER = {
  shared: later((rare) => rare.sharedAtCounterPage),
  jobs: later((rare) => rare.counterPage),
  returns: later((rare) => rare.returnsPage),
  search: later((rare) => rare.searchPage),
  code: later((rare) => rare.counterPage),
  find: later((rare) => rare.counterPage),
  new: atBenchPage,
  job: atBenchPage,
  moves: atBenchPage,
  assumptions: atBenchPage,
  hand: atBenchPage,
  ways: atBenchPage,
  listen: atBenchPage,
  photo: atBenchPage,
  position: atBenchPage,
  entries: atBenchPage,
  labels: atBenchPage,
  print: atBenchPage,
  batch: atBenchPage,
  labelSheet: atBenchPage,
};

/** What an app without a server shows in their place: one person's tool. @type {Record<string, Page>} */
const ALONE = {
  outbox: later((rare) => rare.filePage),
  file: later((rare) => rare.filePage),
  takeIn: later((rare) => rare.takeInPage),
  pair: noPairingPage,
  phones: onePhonePage,
  returns: noCounterPage,
  search: noCounterPage,
};

/** What is left of the screens while the core does not run; the others do without it. @type {Record<string, Page>} */
const WITHOUT_CORE = {
  shared: needsCorePage,
  new: needsCorePage,
  job: uncheckedJobPage,
  moves: uncheckedJobPage,
  trail: uncheckedJobPage,
  history: uncheckedJobPage,
  photos: uncheckedJobPage,
  assumptions: uncheckedJobPage,
  hand: uncheckedJobPage,
  photo: uncheckedJobPage,
  position: uncheckedJobPage,
  returns: needsCorePage,
  search: needsCorePage,
  vehicle: needsCorePage,
  unit: needsCorePage,
  entries: needsCorePage,
  takeRecord: needsCorePage,
  checkRecord: needsCorePage,
  slip: needsCorePage,
  unitRecord: needsCorePage,
  report: needsCorePage,
  find: needsCorePage,
  code: needsCorePage,
  // A server prints labels without the phone's core; a phone alone does not.
  ...(HAS_SERVER ? {} : { labels: needsCorePage, print: needsCorePage, batch: needsCorePage }),
  labelSheet: needsCorePage,
};

/**
 * @param {string} name
 * @param {{coreRuns: boolean, role: import('../log/device.js').Role, alone: boolean}} phone  role: what it is for; alone:
 *     without a server
 * @returns {Page}
 */
export function pageFor(name, { coreRuns, role, alone }) {
  if (alone && ALONE[name]) return ALONE[name];
  const atCounter = role === 'counter' && !alone ? AT_COUNTER[name] : undefined;
  if (!coreRuns && (WITHOUT_CORE[name] || atCounter)) return atCounter ? needsCorePage : WITHOUT_CORE[name];
  return atCounter ?? PAGES[name] ?? nowherePage;
}

export { faultPage };
