// @ts-check
/**
 * The way to say that some of the sensors in hand got mixed up.
 */

import { to } from '../frame/router.js';

/** @typedef {import('../../core/views.js').JobView} JobView */

/**
 * From a stop to saying what got mixed up, all of them ticked; null where nothing can be.
 * @param {import('../frame/context.js').Context} ctx
 * @param {JobView} view
 */
export function wayToMixing({ services, go }, view) {
  if (!mayMix(view)) return null;
  return () => {
    services.drafts.touch(handForm(view.id), { mixing: allOf(view), stopped: true });
    go(to.jobPart(view.id, 'hand'));
  };
}

/** What is mixed up already and has no new label yet can't be mixed up once more. @param {JobView} view */
export function mayMix({ out, closed }) {
  return out.length > 1 && !closed && out.some(({ shown }) => shown);
}

/** Where what is entered on the screen of what is in hand is kept. */
export const handForm = (/** @type {string} */ job) => `hand/${job}`;

export const allOf = (/** @type {JobView} */ { out }) => out.map(({ id }) => id);
