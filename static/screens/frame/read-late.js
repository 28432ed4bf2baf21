// @ts-check
/**
 * Reads the scripts that come after the first screen (rare-pages.js, job/steps/late-steps.js): once, or again after
 * a failure.
 */

import { say } from '../../words/words.js';

/** The screens, and parts of one, that are opened rarely. */
export const readRarePages = () => whole(import('../rare-pages.js'));

/** The steps of a job that no job begins with. */
export const readLateSteps = () => whole(import('../job/steps/late-steps.js'));

/**
 * @template T
 * @param {Promise<T>} script
 * @returns {Promise<T>}
 */
function whole(script) {
  return script.catch(() => {
    throw new Error(say('frame-screen-missing'));
  });
}
