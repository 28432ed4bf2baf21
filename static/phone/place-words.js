// @ts-check
/**
 * The sentences that differ between an app with a server and one without: what keeps a record, and what is left to
 * do when this phone cannot. One table, so that no other module has to ask where it runs.
 */

import { HAS_SERVER } from '../place.js';

const WITH_SERVER = {
  lost: 'This phone lost its data: the browser removed it. What was sent is safe on the server; what was not sent is gone.',
  forked:
    'The same phone identity was in use twice, perhaps after a restored backup. This phone has a new one now; what it had not sent is kept and will be sent.',
  freeSpace: 'Free some space on the phone, or send what waits',
  safe: 'Only what was sent is safe from a lost phone.',
  safeEitherWay: 'What was sent is safe either way.',
  noRoom:
    'Send what waits and delete something else from the phone. Pictures that the server has can go from this phone: they are shown from there.',
  seeWhatWaits: 'See what waits',
  checksLater: 'when the checks run again, here or on the server',
  reopened: 'This job was closed, then another phone sent work that was done on it. Settle it and close it again.',
  ofRecord: `on a phone that is paired with ${globalThis.location?.host}`,
};

/** @type {typeof WITH_SERVER} */
const ALONE = {
  lost: 'This phone lost its data: the browser removed it. Only the last file that you saved still has it.',
  forked:
    'The same phone identity was in use on two phones, perhaps after one was copied to the other. This phone has a new one now; everything it recorded is kept.',
  freeSpace: 'Free some space on the phone',
  safeEitherWay: 'Save your file all the same.',
  safe: 'Only what is in a file that you keep elsewhere is safe from a lost phone.',
  noRoom: 'Save the file first, then delete something else from the phone: films and other apps take most.',
  seeWhatWaits: 'Save the file',
  checksLater: 'when the checks run again',
  reopened:
    'This job was closed, then a file came in with work that was done on it on another phone. Settle it and close it again.',
  ofRecord: 'on the phone that keeps it',
};

/** Of this app. */
export const PLACE_WORDS = HAS_SERVER ? WITH_SERVER : ALONE;
