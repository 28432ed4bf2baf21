// @ts-check
/**
 * Talks to the server and trusts an answer only when it is really the server's: JSON of the right shape.
 *
 * A phone in a workshop meets sign-in pages of networks that answer everything with 200 and HTML, and
 * replies that never arrive; each becomes an ApiError whose sentence a person can read.
 */

import { ROOT } from '../place.js';
import { language, say } from '../words/words.js';

const REPLY_SECONDS = 30;
const LARGE_SECONDS = 120;
/** A server keeps an answer back for less than a minute. */
const NEWS_SECONDS = 75;
/**
 * Asks the worker of the app (sw.js) to answer in place of a server that cannot be reached, and tells its answer
 * from one of the server. For the page a request that fails is an error, and every phone without a network
 * would be full of them.
 */
const UNREACHABLE = 'X-Unreachable';
/** Names that no public certificate is made for: there, a failed answer may be one that is not trusted. */
const OWN_CERTIFICATE = /^https:\/\/([^/:]+\.local|[\d.]+|\[[^\]]+\])(:|\/)/;

/** A request that did not bring the server's answer, or brought a refusal. */
export class ApiError extends Error {
  /**
   * @param {'unreachable' | 'untrusted' | 'in trouble' | 'not paired' | 'refused'} kind
   * @param {string} sentence
   * @param {number} [status]
   * @param {string} [field]  what the server found wrong
   */
  constructor(kind, sentence, status = 0, field = '') {
    super(sentence);
    this.name = 'ApiError';
    this.kind = kind;
    this.sentence = sentence;
    this.status = status;
    this.field = field;
  }
}

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

/**
 * @param {string} path
 * @param {RequestInit} options
 * @param {number} seconds
 */
async function request(path, options, seconds) {
  // When the browser knows that it is offline, asking would only fill its console.
  if (!navigator.onLine) throw unreachable();
  const ended = new AbortController();
  const end = () => ended.abort();
  const timer = setTimeout(end, seconds * 1000);
  options.signal?.addEventListener('abort', end);
  if (options.signal?.aborted) end();
  try {
    const response = await fetch(apiAddress(path), {
      ...options,
      headers: { ...options.headers, 'Accept-Language': language(), [UNREACHABLE]: 'say' },
      cache: 'no-store',
      credentials: 'same-origin',
      redirect: 'error',
      signal: ended.signal,
    });
    if (!response.headers.has(UNREACHABLE)) return response;
    // An answer that nobody reads counts as broken off.
    await response.arrayBuffer();
  } catch {
    // As below.
  } finally {
    clearTimeout(timer);
  }
  throw unreachable();
}

/**
 * The whole address of something of the API.
 * @param {string} path  below the app's root folder, beginning with '/'
 */
export function apiAddress(path) {
  return new URL(`.${path}`, ROOT).href;
}

/** @param {Response} response */
async function readJson(response) {
  if (!response.headers.get('Content-Type')?.includes('application/json')) throw untrusted();
  try {
    const value = await response.json();
    if (value !== null && typeof value === 'object') return value;
  } catch {
    // Cut off on the way; the same as no answer.
  }
  throw untrusted();
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

/** @param {Response} response */
async function refusal(response) {
  const { status } = response;
  const reply = await readJson(response).catch(() => null);
  // The server itself says what is wrong, a full disk for one; what stands between does not.
  if (status >= 500 && reply?.error) return new ApiError('in trouble', reply.error.message, status);
  if (status >= 500) return new ApiError('unreachable', say('troubles-server-fault'), status);
  if (!reply?.error) return untrusted();
  const kind = status === 401 ? 'not paired' : 'refused';
  return new ApiError(kind, reply.error.message, status, reply.error.field);
}

function unreachable() {
  const mayNotTrust = OWN_CERTIFICATE.test(ROOT.href);
  return new ApiError('unreachable', mayNotTrust ? say('troubles-unreachable-untrusted') : say('troubles-unreachable'));
}

function untrusted() {
  return new ApiError(
    'untrusted',
    say('troubles-untrusted'),
  );
}
