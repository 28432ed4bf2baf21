// @ts-check
/**
 * What a person is told when something could not be saved.
 */

import { PLACE_WORDS } from '../phone/place-words.js';
import { say } from '../words/words.js';

/** Something could not be saved; `entered` is what the person gave, kept for another try. */
export class SaveError extends Error {
  /**
   * @param {'full' | 'storage'} reason
   * @param {{drafts: import('./log.js').Draft[], photo?: import('./log.js').Photo}} entered
   */
  constructor(reason, entered) {
    const { title, sentence } = problemOf(reason);
    super(sentence);
    this.name = 'SaveError';
    this.reason = reason;
    this.title = title;
    this.sentence = sentence;
    this.entered = entered;
  }
}

/** @param {'full' | 'storage'} reason */
function problemOf(reason) {
  return reason === 'full'
    ? { title: say('troubles-full'), sentence: PLACE_WORDS.fullSave }
    : { title: say('troubles-not-written'), sentence: say('troubles-not-written-do') };
}
