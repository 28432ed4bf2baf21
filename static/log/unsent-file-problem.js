// @ts-check
/**
 * What a person is told of a file that is not taken in.
 */

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

/**
 * @param {string} place
 * @param {string} [what]
 */
export function altered(place, what = 'it is not as it was written') {
  return new UnsentFileProblem(
    'This file was altered',
    `${place}: ${what}. Nothing was taken in. Pass the file on once more from the phone that made it.`,
  );
}

/**
 * @param {{entries: number, photos: number}} told
 * @param {{entries: number, photos: number}} found
 */
export function incomplete(told, found) {
  return altered(
    'Its first line',
    `it names ${told.entries} entries and ${told.photos} photos, and ${found.entries} and ${found.photos} are there`,
  );
}

/**
 * @param {number} number  of the line
 * @param {boolean} again  whether a second file of this app begins there
 */
export function followed(number, again) {
  if (!again) return altered(`Line ${number}`, 'it stands behind the end of the file');
  return new UnsentFileProblem(
    'These are two files in one',
    `On line ${number} a second file begins. Nothing was taken in. Get each file by itself from the phone that made it, and take in one after the other.`,
  );
}

export function notOurs() {
  return new UnsentFileProblem(
    'This file was not made by this app',
    'Nothing was taken in. Pick the file that the other phone made; its name begins with swaptrail.',
  );
}
