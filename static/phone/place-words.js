// @ts-check
/**
 * The sentences that differ between an app with a server and one without: what keeps a record, and what is left to
 * do when this phone cannot. One table, so that no other module has to ask where it runs.
 */

import { HAS_SERVER, ROOT } from '../place.js';
import { say } from '../words/words.js';

/** Of this app, each said when it is read. */
export const PLACE_WORDS = {
  get lost() {
    return HAS_SERVER ? say('phone-lost') : say('phone-lost-alone');
  },
  get forked() {
    return HAS_SERVER ? say('phone-forked') : say('phone-forked-alone');
  },
  get renewed() {
    return say('phone-renewed');
  },
  get fullSave() {
    return HAS_SERVER ? say('phone-full-save') : say('phone-full-save-alone');
  },
  get fullTakeIn() {
    return HAS_SERVER ? say('phone-full-take-in') : say('phone-full-take-in-alone');
  },
  get safe() {
    return HAS_SERVER ? say('phone-safe') : say('phone-safe-alone');
  },
  get safeEitherWay() {
    return HAS_SERVER ? say('phone-safe-either-way') : say('phone-safe-either-way-alone');
  },
  get noRoom() {
    return HAS_SERVER ? say('phone-no-room') : say('phone-no-room-alone');
  },
  get seeWhatWaits() {
    return HAS_SERVER ? say('phone-see-what-waits') : say('phone-save-file');
  },
  get checksLater() {
    return HAS_SERVER ? say('phone-checks-later') : say('phone-checks-later-alone');
  },
  get ofRecord() {
    return HAS_SERVER ? say('phone-of-record', { host: ROOT.host }) : say('phone-of-record-alone');
  },
};
