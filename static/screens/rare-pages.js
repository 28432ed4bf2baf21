// @ts-check
/**
 * The screens, and parts of one, that are opened rarely, in one script: labels, paper, records, the counter, help.
 * pages.js reads it after the first screen stands; the service worker keeps it, on a first visit after the others.
 */

export { filePage } from './alone/file-page.js';
export { takeInPage } from './alone/take-in-page.js';
export { assumptionsPage } from './job/assumptions.js';
export { checkRecordPage } from './record/check-record.js';
export { counterPage } from './counter/page.js';
export { returnsPage } from './counter/returns-page.js';
export { codeFields, codesOf } from './job/steps/test-codes.js';
export { standPart, standing } from './job/steps/stand.js';
export { searchPage } from './counter/search-page.js';
export { layoutEditor } from './job/draw-layout.js';
export { findPage } from './unit/find-page.js';
export { handPage } from './job/hand-page.js';
export { historyPage } from './job/history.js';
export { entriesPage } from './job/entries-page.js';
export { listenPage } from './job/listen-page.js';
export { helpPage } from './help/help-page.js';
export { lessonsPage } from './lessons/page.js';
export { installPage } from './phone/install-page.js';
export { batchPage } from './labels/batch-page.js';
export { batchesPage } from './labels/batches-page.js';
export { printPage } from './labels/print-page.js';
export { labelSheetPage } from './labels/sheet-page.js';
export { outboxPage } from './you/outbox.js';
export { phonesPage } from './you/phones-page.js';
export { photosPage } from './job/photos-page.js';
export { picturePage } from './job/picture-page.js';
export { positionPage } from './job/position.js';
export { reportPage } from './paper/report.js';
export { sharedAtCounterPage, sharedPage } from './job/shared-page.js';
export { slipPage } from './paper/slip.js';
export { takeRecordPage } from './record/take-record.js';
export { trailPage } from './job/trail-page.js';
export { vehiclePage } from './job/vehicle-page.js';
export { waysPage } from './job/ways-page.js';
export { unitRecordPage } from './paper/unit-record.js';
