// @ts-check
/**
 * The words of this phone's language: everything that a person reads is said here. The messages come from
 * server/words/<language>/ as one file, which is read while the core starts; `startWords` settles before anything is
 * drawn. The few that stand on the screen before that the page itself brings, in every language (`early`).
 */

import { APP, ownName } from '../place.js';
import { Speech } from './speech.js';

const KEY = ownName('swaptrail.language');
/** See sw.js. */
const UNREACHABLE = 'X-Unreachable';
/** Stands in for a language that is not there. */
const FIRST = 'en';

/** What the server wrote into the page: the messages of begin.ftl, by language. @type {Record<string, Record<string, string>>} */
const BEGIN = JSON.parse(globalThis.document?.documentElement.dataset.words ?? `{"${FIRST}": {}}`);

/** @type {Promise<void> | null} */
let started = null;
let speech = new Speech(FIRST, '');

/** The languages that the app can be read in, each by its own name. */
export function languages() {
  return Object.entries(BEGIN).map(([id, said]) => ({ id, name: said['begin-language'] ?? id }));
}

/** The language in use, settled by `startWords`. */
export const language = () => speech.language;

/**
 * Read the words, once; settles when they can be said, throws where they did not come over.
 * @returns {Promise<void>}
 */
export function startWords() {
  started ??= read();
  return started;
}

/**
 * The text of a message.
 * @param {string} id
 * @param {Record<string, unknown>} [args]  text, a count, a message or a figure each
 */
export const say = (id, args) => speech.say(id, args);

/** The text of a message of begin.ftl, which can be said at once. @param {string} id */
export const early = (id) => BEGIN[wantedLanguage()]?.[id] ?? id;

/**
 * What the core handed out, each message in it as its text.
 * @param {unknown} value
 */
export const render = (value) => speech.render(value);

/** What the person chose, else the first of the phone's languages that is there. */
export function wantedLanguage(chosen = chosenLanguage()) {
  const ofThePhone = navigator.languages.map((tag) => tag.split('-')[0].toLowerCase());
  return [chosen, ...ofThePhone].find((each) => each in BEGIN) ?? FIRST;
}

/** Empty where the phone's own language is followed. */
export function chosenLanguage() {
  try {
    return localStorage.getItem(KEY) ?? '';
  } catch {
    return '';
  }
}

/** For pages that are loaded from now on. @param {string} chosen  empty to follow the phone */
export function chooseLanguage(chosen) {
  try {
    if (chosen) localStorage.setItem(KEY, chosen);
    else localStorage.removeItem(KEY);
  } catch {
    // Without storage the phone's own is followed.
  }
}

/**
 * Have a language come to this phone, its help with its words (sw.js); false where it cannot.
 * @param {string} wanted
 */
export async function fetchLanguage(wanted) {
  try {
    await (await fetched(wanted)).text();
    return true;
  } catch {
    return false;
  }
}

/** Where the help is. */
export const helpAddress = () => new URL(`help/${language()}.json`, APP);

async function read() {
  const wanted = wantedLanguage();
  let fault;
  // Offline there may be another one than the phone is set to by now.
  for (const each of new Set([wanted, FIRST, ...Object.keys(BEGIN)])) {
    document.documentElement.lang = each;
    try {
      const response = await fetched(each);
      speech = new Speech(each, await response.text());
      return;
    } catch (error) {
      fault ??= error;
    }
  }
  throw fault;
}

/** @param {string} wanted */
async function fetched(wanted) {
  const response = await fetch(new URL(`words/${wanted}.ftl`, APP), { headers: { [UNREACHABLE]: 'say' } });
  if (!response.ok || response.headers.has(UNREACHABLE)) throw new Error(`The words of ${wanted} are not to be had.`);
  return response;
}
