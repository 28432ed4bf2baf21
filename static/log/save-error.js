// @ts-check
/**
 * What a person is told when something could not be saved.
 */

import { PLACE_WORDS } from '../phone/place-words.js';

/** Something could not be saved; `entered` is what the person gave, kept for another try. */
export class SaveError extends Error {
  /**
   * @param {'full' | 'storage'} reason
   * @param {{drafts: import('./log.js').Draft[], photo?: import('./log.js').Photo}} entered
   */
  constructor(reason, entered) {
    super(SAVE_PROBLEMS[reason].sentence);
    this.name = 'SaveError';
    this.reason = reason;
    this.title = SAVE_PROBLEMS[reason].title;
    this.sentence = SAVE_PROBLEMS[reason].sentence;
    this.entered = entered;
  }
}

const SAVE_PROBLEMS = {
  full: {
    title: 'Not saved: this phone is full',
    sentence: `What you entered is still here. ${PLACE_WORDS.freeSpace}, then save again.`,
  },
  storage: {
    title: 'Not saved: this phone could not write',
    sentence: 'What you entered is still here. Save again; if it fails again, close the app and open it.',
  },
};
