// @ts-check
/**
 * The words of this phone's language: everything that a person reads is said here. The messages come from
 * server/words/<language>/ as one file, which is read while the core starts; `startWords` settles before anything is drawn.
 */

import { APP, ownName } from '../place.js';
import { Speech } from './speech.js';

const KEY = ownName('swaptrail.language');

/** Stands in for a language that is not there. */
const FIRST = 'en';

/** @type {Promise<void> | null} */
let started = null;
let speech = new Speech(FIRST, '');

/** Which languages the app can be read in; the server writes them into the page. */
function languages() {
  return (document.documentElement.dataset.languages ?? FIRST).split(' ');
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

/**
 * What the core handed out, each message in it as its text.
 * @param {unknown} value
 */
export const render = (value) => speech.render(value);

async function read() {
  const wanted = wantedLanguage();
  speech = new Speech(wanted, await fetched(wanted));
  document.documentElement.lang = wanted;
}

/** What the person chose, else the first of the phone's languages that is there. */
function wantedLanguage() {
  const there = languages();
  const ofThePhone = navigator.languages.map((tag) => tag.split('-')[0].toLowerCase());
  return [chosenLanguage(), ...ofThePhone].find((each) => there.includes(each)) ?? FIRST;
}

/** Empty where the phone's own language is followed. */
function chosenLanguage() {
  try {
    return localStorage.getItem(KEY) ?? '';
  } catch {
    return '';
  }
}

/** @param {string} wanted */
async function fetched(wanted) {
  const response = await fetch(new URL(`words/${wanted}.ftl`, APP));
  if (!response.ok) throw new Error(`${response.url} answered ${response.status}`);
  return response.text();
}
