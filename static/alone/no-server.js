// @ts-check
/**
 * Stands where the sync loop stands in an app that has a server: nothing is sent, nothing is fetched, and
 * whatever asks for the server's interface all the same gets a refusal in place of a request.
 */

import { observable } from '../phone/observable.js';
import { NOBODY } from '../sync/news.js';
import { ApiError } from '../sync/request.js';
import { NOT_YET } from '../sync/status.js';
import { say } from '../words/words.js';

const LOOK_FOR_VERSION_MS = 60 * 60 * 1000;

/** @typedef {import('../sync/api.js').ServerApi} ServerApi */
/** @typedef {import('../sync/sync.js').Syncing} Syncing */

/** @type {import('../sync/status.js').SyncStatus} */
const NOTHING_TO_SEND = { ...NOT_YET, state: 'no server' };

/** The server's interface where there is no server; it makes no request. @implements {ServerApi} */
class NoApi {
  session = refuse;
  pair = refuse;
  get = refuse;
  post = refuse;
  news = refuse;
  file = refuse;
  hasPhoto = refuse;
  putPhoto = refuse;
  record = refuse;
  checkRecord = refuse;
  keepRecord = refuse;
  recordFingerprint = refuse;

  /** A picture that is not on this phone is nowhere else. @returns {Promise<null>} */
  async photo() {
    return null;
  }

  /** @returns {Promise<null>} */
  async smallPhoto() {
    return null;
  }
}

/** @returns {Promise<never>} */
async function refuse() {
  throw new ApiError('refused', say('troubles-no-server'));
}

/** In place of Sync. @implements {Syncing} */
export class NoServer {
  /** @param {{update: import('../phone/update.js').Update}} parts */
  constructor({ update }) {
    this.api = new NoApi();
    this.status = observable(NOTHING_TO_SEND);
    this.others = observable(NOBODY);
    this.#update = update;
  }

  #update;
  #looked = Date.now();

  async recall() {
    // There is no pairing to know of.
  }

  /** With no server to name its build, the app looks for a new version of itself when it is taken up again. */
  start() {
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState !== 'visible' || Date.now() - this.#looked < LOOK_FOR_VERSION_MS) return;
      this.#looked = Date.now();
      this.#update.check();
    });
  }

  at() {
    // There is nobody to be told.
  }

  async now() {
    // There is nobody to exchange anything with.
  }

  pair = refuse;
  pairingLink = refuse;
}
