// @ts-check
/**
 * Finds photos again: whole on this phone or on the server, small on every phone that has the job.
 */

import { sha256Hex } from '../log/canonical.js';
import { pictureKind } from './picture-file.js';
import { preparePhoto } from './prepare-photo.js';
import { say } from '../words/words.js';

const KEPT_URLS = 60;

/** Finds photos by their hash: on this phone, else on the server. */
export class Photos {
  /**
   * @param {import('../log/store.js').Store} store
   * @param {import('../sync/api.js').ServerApi} api
   * @param {import('./small-pictures.js').SmallPictures} small
   */
  constructor(store, api, small) {
    this.#store = store;
    this.#api = api;
    this.#small = small;
  }

  /** What stands in place of a photo that cannot be found. */
  get absent() {
    return say('troubles-picture-absent');
  }

  /** Each is what was taken: of none is there anything to say; of one in a record there may be. @param {string} _sha256 */
  note(_sha256) {
    return '';
  }

  #store;
  #api;
  #small;
  /** The latest used last. @type {Map<string, string>} */
  #urls = new Map();

  /**
   * Turn a captured or picked picture into the photo that `log.record` takes; throws PhotoProblem.
   * @param {Blob} file
   */
  prepare(file) {
    return preparePhoto(file);
  }

  /**
   * An address to show a photo by; stays good while fewer than 60 others are shown.
   * @param {string} sha256
   * @param {{small?: boolean}} [options]  small: a small version does
   * @returns {Promise<string | null>} null when neither this phone nor the server has it now
   */
  async url(sha256, { small = false } = {}) {
    const name = small ? `small ${sha256}` : sha256;
    const known = this.#urls.get(name);
    if (known) {
      this.#urls.delete(name);
      this.#urls.set(name, known);
      return known;
    }
    const bytes = small ? await this.#smallBytes(sha256) : await this.#wholeBytes(sha256);
    if (!bytes) return null;
    const url = URL.createObjectURL(new Blob([bytes], { type: 'image/jpeg' }));
    this.#urls.set(name, url);
    if (this.#urls.size > KEPT_URLS) {
      const [oldest, oldUrl] = this.#urls.entries().next().value ?? ['', ''];
      URL.revokeObjectURL(oldUrl);
      this.#urls.delete(oldest);
    }
    return url;
  }

  /** @param {string} sha256 */
  async #smallBytes(sha256) {
    const here = (await this.#small.bytes(sha256)) ?? (await this.#store.photoBytes(sha256));
    if (here) return here;
    const bytes = await quietly(() => this.#api.smallPhoto(sha256));
    return bytes && pictureKind(new Uint8Array(bytes)) === 'jpeg' ? bytes : null;
  }

  /** @param {string} sha256 */
  async #wholeBytes(sha256) {
    const here = await this.#store.photoBytes(sha256);
    if (here) return here;
    const bytes = await quietly(() => this.#api.photo(sha256));
    return bytes && (await sha256Hex(bytes)) === sha256 ? bytes : null;
  }
}

/**
 * What cannot be had now is as good as absent.
 * @param {() => Promise<ArrayBuffer | null>} ask
 */
async function quietly(ask) {
  try {
    return await ask();
  } catch {
    return null;
  }
}
