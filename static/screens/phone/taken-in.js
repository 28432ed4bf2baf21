// @ts-check
/**
 * What became of a file that was taken in, in words.
 */

import { html, nothing } from 'lit-html';

import { PLACE_WORDS } from '../../phone/place-words.js';
import { isQuotaError } from '../../log/space.js';
import { UnsentFileProblem } from '../../log/unsent-file-problem.js';
import { countWords } from './phone-notices.js';
import { say } from '../../words/words.js';

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
        title: say('phone-full-title'),
        sentence: PLACE_WORDS.fullTakeIn,
        good: false,
      };
    }
    if (isUnreadable(error)) {
      return {
        title: say('phone-unreadable'),
        sentence: say('phone-unreadable-do'),
        good: false,
      };
    }
    throw error;
  }
}

/** @param {import('../../log/take-in.js').TakenIn} taken */
function takenWords({ entries, photos, known, cutOff }) {
  const said = [];
  if (entries || photos) said.push(say('phone-came-in', { what: countWords(entries, photos) }));
  if (known) said.push(say('phone-known', { count: known }));
  if (!cutOff) return { title: say('phone-taken-in'), sentence: said.join(' ') || say('phone-file-empty'), good: true };
  const missing = cutOff.entries + cutOff.photos;
  said.push(say('phone-cut-off', { count: missing, what: countWords(cutOff.entries, cutOff.photos) }));
  return { title: say('phone-taken-in-partly'), sentence: said.join(' '), good: false };
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
