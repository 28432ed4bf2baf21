// @ts-check
/** What the server can be asked; an answer of another shape than its own is not trusted (request.js). */

import { readJson, refusal, request, untrusted } from './request.js';

const REPLY_SECONDS = 30;
const LARGE_SECONDS = 120;
/** A server keeps an answer back for less than a minute. */
const NEWS_SECONDS = 75;
/**
 * @typedef {object} Session
 * @property {string} csrf
 * @property {boolean} paired
 * @property {string} name
 * @property {string} [role]         "bench" or "counter"
 * @property {number} [return_days]
 * @property {boolean} [register]     whether other counters of a chain are asked
 * @property {number} [warranty_days]  0: each phone has its own
 * @property {string} build
 * @property {string} installation
 * @property {number} [format]         of events, the newest that the server knows
 * @property {number} [oldest_format]  in which a job may still be begun
 * @property {number} now
 * @property {string} [trust_page]     where a phone gets to trust a server whose certificate is its own
 */

/**
 * @typedef {object} NewsReply
 * @property {number} entries   how far the server's log goes
 * @property {import('./news.js').Person[]} others
 * @property {string} stamp     of `others`, to be named in the next question
 * @property {number} pause     seconds until that
 */

/** What can be asked of a server; where there is none, everything is refused. @typedef {Pick<Api, keyof Api>} ServerApi */

/** The server's HTTP interface. */
export class Api {
  /** The token that every write carries; from the last session asked for. */
  #csrf = '';

  /** The session that is being asked for. @type {Promise<Session> | null} */
  #asked = null;

  /** A pairing that is under way. @type {Promise<any> | null} */
  #pairing = null;

  /**
   * Ask who this phone is to the server. Each answer sets the cookie: one that was asked for before a pairing and
   * came after it would put the cookie of before in its place. So they are never under way together.
   * @returns {Promise<Session>}
   */
  async session() {
    await this.#pairing?.catch(() => undefined);
    this.#asked ??= this.#askForSession().finally(() => {
      this.#asked = null;
    });
    return this.#asked;
  }

  /**
   * Take up a pairing link by its token.
   * @param {{token: string, device: string, name: string, key?: string, signature?: string}} given
   */
  async pair(given) {
    await this.session();
    this.#pairing = this.post('/api/pair', given).finally(() => {
      this.#pairing = null;
    });
    return this.#pairing;
  }

  /** @returns {Promise<Session>} */
  async #askForSession() {
    const session = await this.#json('/api/session', {});
    if (typeof session.csrf !== 'string' || typeof session.paired !== 'boolean') throw untrusted();
    this.#csrf = session.csrf;
    return session;
  }

  /** @param {string} path  as for `apiAddress` */
  get(path) {
    return this.#json(path, {});
  }

  /**
   * @param {string} path
   * @param {object} body
   */
  post(path, body) {
    return this.#json(path, this.#posting(body));
  }

  /**
   * What is new; the answer may be long in coming.
   * @param {object} question
   * @param {AbortSignal} signal  takes the question back
   * @returns {Promise<NewsReply>}
   */
  async news(question, signal) {
    const reply = await this.#json('/api/news', { ...this.#posting(question), signal }, NEWS_SECONDS);
    const sound = Number.isSafeInteger(reply.entries) && Array.isArray(reply.others) && typeof reply.stamp === 'string';
    if (!sound || !(reply.pause >= 0)) throw untrusted();
    return reply;
  }

  /**
   * A file that the server makes.
   * @param {string} path
   * @returns {Promise<Blob>}
   */
  async file(path) {
    const response = await request(path, {}, REPLY_SECONDS);
    if (!response.ok) throw await refusal(response);
    if (!response.headers.get('Content-Disposition')) throw untrusted();
    return response.blob();
  }

  /**
   * @param {string} sha256
   * @returns {Promise<boolean>} whether the server holds this photo
   */
  async hasPhoto(sha256) {
    const response = await request(`/api/photos/${sha256}`, { method: 'HEAD' }, REPLY_SECONDS);
    if (response.ok) return isImage(response);
    if (response.status === 404) return false;
    throw await refusal(response);
  }

  /**
   * @param {string} sha256
   * @param {ArrayBuffer} bytes
   * @param {string} mime
   */
  async putPhoto(sha256, bytes, mime) {
    const reply = await this.#json(
      `/api/photos/${sha256}`,
      {
        method: 'PUT',
        headers: { 'Content-Type': mime, 'X-CSRFToken': this.#csrf },
        body: bytes,
      },
      LARGE_SECONDS,
    );
    if (reply.sha256 !== sha256 || reply.stored !== true) throw untrusted();
  }

  /**
   * @param {string} sha256
   * @returns {Promise<ArrayBuffer | null>} null when the server has no such photo
   */
  photo(sha256) {
    return image(`/api/photos/${sha256}`);
  }

  /**
   * A photo small enough to keep all of them.
   * @param {string} sha256
   * @returns {Promise<ArrayBuffer | null>} null when the server has no such photo
   */
  smallPhoto(sha256) {
    return image(`/api/photos/${sha256}/small`);
  }

  /**
   * The record of a sensor or a job, sealed by the server.
   * @param {string} name  a unit's id, the code on a label or a job's id
   * @param {boolean} smaller  pictures without room go in as smaller versions
   * @returns {Promise<{file: File, smaller: number, roomless: number}>}
   */
  async record(name, smaller) {
    const response = await request(`/api/records/${encodeURIComponent(name)}${smaller ? '?smaller=1' : ''}`, {}, LARGE_SECONDS);
    if (!response.ok) throw await refusal(response);
    const fileName = /filename="([^"]+)"/.exec(response.headers.get('Content-Disposition') ?? '')?.[1];
    if (!fileName) throw untrusted();
    const [made, roomless] = ['Smaller', 'Roomless'].map((each) => Number(response.headers.get(`Swaptrail-${each}`)));
    return { file: new File([await response.blob()], fileName, { type: 'application/zip' }), smaller: made, roomless };
  }

  /**
   * Let the server verify a file that may be a record.
   * @param {Blob} file
   * @returns {Promise<any>}
   */
  checkRecord(file) {
    return this.#sendRecord('/api/records/check', file);
  }

  /**
   * Let the server keep a record as evidence.
   * @param {Blob} file
   * @returns {Promise<{file: string}>} its digest
   */
  keepRecord(file) {
    return this.#sendRecord('/api/records/kept', file);
  }

  /**
   * @param {string} path
   * @param {Blob} file
   * @returns {Promise<any>}
   */
  #sendRecord(path, file) {
    return this.#json(
      path,
      {
        method: 'POST',
        headers: { 'Content-Type': 'application/zip', 'X-CSRFToken': this.#csrf },
        body: file,
      },
      LARGE_SECONDS,
    );
  }

  /**
   * By which fingerprint others know the records that this server seals.
   * @returns {Promise<string>}
   */
  async recordFingerprint() {
    return (await this.#json('/api/records/key', {})).fingerprint;
  }

  /** @param {object} body @returns {RequestInit} */
  #posting(body) {
    return {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'X-CSRFToken': this.#csrf },
      body: JSON.stringify(body),
    };
  }

  /**
   * @param {string} path
   * @param {RequestInit} options
   * @param {number} [seconds]
   * @returns {Promise<any>}
   */
  async #json(path, options, seconds = REPLY_SECONDS) {
    const response = await request(path, options, seconds);
    if (!response.ok) throw await refusal(response);
    return readJson(response);
  }
}

/** @param {string} path @returns {Promise<ArrayBuffer | null>} */
async function image(path) {
  const response = await request(path, {}, LARGE_SECONDS);
  if (response.status === 404 || response.status === 204) return null;
  if (!response.ok) throw await refusal(response);
  return isImage(response) ? response.arrayBuffer() : null;
}

/** @param {Response} response */
function isImage(response) {
  return response.headers.get('Content-Type')?.startsWith('image/') ?? false;
}
