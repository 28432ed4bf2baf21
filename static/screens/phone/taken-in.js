// @ts-check
/**
 * What became of a file that was taken in, in words.
 */

import { html, nothing } from 'lit-html';

import { PLACE_WORDS } from '../../phone/place-words.js';
import { isQuotaError } from '../../log/space.js';
import { UnsentFileProblem } from '../../log/unsent-file-problem.js';
import { countWords } from './phone-notices.js';

/** @typedef {{title: string, sentence: string, good: boolean}} Outcome */

/**
 * Take a file in and say what came of it; throws what a person can do nothing about.
 * @param {() => Promise<import('../../log/take-in.js').TakenIn>} take
 * @returns {Promise<Outcome>}
 */
export async function outcomeOf(take) {
  try {
    return takenWords(await take());
  } catch (error) {
    if (error instanceof UnsentFileProblem) return { title: error.title, sentence: error.sentence, good: false };
    if (isQuotaError(error)) {
      return {
        title: 'Not taken in: this phone is full',
        sentence: `Nothing was changed. ${PLACE_WORDS.freeSpace}, then take the file in again.`,
        good: false,
      };
    }
    if (isUnreadable(error)) {
      return {
        title: 'The file could not be read',
        sentence: 'This phone no longer gives it out; it may lie in another app or on a drive. Nothing was changed. Copy it onto the phone and pick it again.',
        good: false,
      };
    }
    throw error;
  }
}

/** @param {import('../../log/take-in.js').TakenIn} taken */
function takenWords({ entries, photos, known, cutOff }) {
  const said = [];
  if (entries || photos) said.push(`${countWords(entries, photos)} came in.`);
  if (known) said.push(`${countWords(known, 0)} of it ${known === 1 ? 'was' : 'were'} here already.`);
  if (!cutOff) return { title: 'Taken in', sentence: said.join(' ') || 'The file is empty.', good: true };
  const missing = cutOff.entries + cutOff.photos;
  const gone = countWords(cutOff.entries, cutOff.photos) || 'its last line';
  said.push(`The file was cut off: ${gone} ${missing > 1 ? 'are' : 'is'} missing. Pass it on once more from the phone that made it.`);
  return { title: 'Taken in as far as it goes', sentence: said.join(' '), good: false };
}

/** A file that was moved, or lies in an app that lost its network. @param {unknown} error */
function isUnreadable(error) {
  return error instanceof DOMException && (error.name === 'NotReadableError' || error.name === 'NotFoundError');
}

/** @param {Outcome | null} outcome  null: nothing has ended yet */
export function outcomePanel(outcome) {
  if (!outcome) return nothing;
  return html`<section class="panel ${outcome.good ? 'panel-good' : 'panel-stop'}" role="alert">
    <h2>${outcome.title}</h2>
    <p>${outcome.sentence}</p>
  </section>`;
}
