// @ts-check
/**
 * What a person is told of a file that is not taken in.
 */

import { say } from '../words/words.js';

/** A file that is not taken; `sentence` names the place. */
export class UnsentFileProblem extends Error {
  /**
   * @param {string} title
   * @param {string} sentence
   */
  constructor(title, sentence) {
    super(sentence);
    this.name = 'UnsentFileProblem';
    this.title = title;
    this.sentence = sentence;
  }
}

/** A line, named by its number. @param {number} number  from 1 */
export function lineWords(number) {
  return say('troubles-line', { line: String(number) });
}

/**
 * The file is not as it was written.
 * @param {string} place
 * @param {string} [what]
 */
export function altered(place, what = say('troubles-not-as-written')) {
  return new UnsentFileProblem(say('troubles-altered'), say('troubles-altered-place', { place, what }));
}

/**
 * Less, or more, is in the file than its first line says.
 * @param {{entries: number, photos: number}} told
 * @param {{entries: number, photos: number}} found
 */
export function incomplete({ entries, photos }, found) {
  const there = { entries_there: found.entries, photos_there: found.photos };
  return altered(say('troubles-first-line'), say('troubles-incomplete', { entries, photos, ...there }));
}

/**
 * Something stands behind the end of the file.
 * @param {number} number  of the line
 * @param {boolean} again  whether a second file of this app begins there
 */
export function followed(number, again) {
  if (!again) return altered(lineWords(number), say('troubles-after-end'));
  return new UnsentFileProblem(say('troubles-two-files'), say('troubles-two-files-do', { line: String(number) }));
}

/** It is no file of this app. */
export function notOurs() {
  return new UnsentFileProblem(say('troubles-not-ours'), say('troubles-not-ours-do'));
}
