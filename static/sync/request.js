// @ts-check
/**
 * One request to the server, whose answer is trusted only when it is really the server's.
 *
 * A phone in a workshop meets sign-in pages of networks that answer everything with 200 and HTML, and
 * replies that never arrive; each becomes an ApiError whose sentence a person can read.
 */

import { ROOT } from '../place.js';
import { language, say } from '../words/words.js';

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
 * Return the server's answer, whatever its status; throw an ApiError where none came.
 * @param {string} path  as for `apiAddress`
 * @param {RequestInit} options
 * @param {number} seconds  how long it may take to come
 */
export async function request(path, options, seconds) {
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

/** Return what an answer holds, which must be an object of JSON. @param {Response} response */
export async function readJson(response) {
  if (!response.headers.get('Content-Type')?.includes('application/json')) throw untrusted();
  try {
    const value = await response.json();
    if (value !== null && typeof value === 'object') return value;
  } catch {
    // Cut off on the way; the same as no answer.
  }
  throw untrusted();
}

/** Return what the server refused and why, as it says so itself. @param {Response} response */
export async function refusal(response) {
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

/** What is thrown where an answer is not one of the server. */
export function untrusted() {
  return new ApiError(
    'untrusted',
    say('troubles-untrusted'),
  );
}
