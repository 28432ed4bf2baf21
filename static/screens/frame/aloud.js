// @ts-check
/**
 * What the phone says aloud where the person wants it: each step once, a stop at once.
 */

import { speak } from '../../phone/voice.js';
import { CODE } from '../../shapes/code.js';

/** The step that was said last. */
let said = '';

/**
 * A step is on the screen: it is said when it appears, not each time that it is drawn; where the page was loaded anew
 * and may not speak yet, when it is drawn after a tap.
 * @param {string} key  tells one step from the next
 * @param {string[]} words
 */
export function sayStep(key, words) {
  const step = [key, ...words].join(' ');
  if (step === said) return;
  if (sayNow(words)) said = step;
}

/**
 * Cuts off what is being said. A code is spelt: it is no word.
 * @param {string[]} words
 * @returns {boolean}  whether it is said
 */
export function sayNow(words) {
  const sentences = words.filter(Boolean).map((each) => (/[.?:]$/.test(each) ? each : `${each}.`));
  return speak(sentences.join(' ').replace(new RegExp(CODE, 'g'), (code) => [...code.replace('-', '')].join(', ')));
}
