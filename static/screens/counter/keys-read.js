// @ts-check
/**
 * Makes of what a hand scanner typed what the code held, or says what is wrong with the scanner's setting: nothing is
 * guessed, for a part that is named wrongly is worse than one that is scanned again.
 */

import { LABEL_HOST } from '../../phone/label-place.js';
import { say } from '../../words/words.js';

/** The setting that keeps what the scanner types before each code. */
export const PREFIX_SETTING = 'scanner.prefix';
/** What a scanner may type first to say of which sort a symbol is (AIM, as in ISO/IEC 15424). */
const SORT_OF_SYMBOL = /^\][A-Za-z][0-9A-Za-z]/;
/** The same of the code after this one. */
const SORT_OF_NEXT = /\][A-Za-z][0-9A-Za-z]$/;
/** What a code begins with that has a beginning. */
const BEGINS = /\[\)>|https?:\/\//i;

/** Between two codes that were typed at one go: the scanner sent no end after the first. */
const NEXT = /(?=\[\)>|https?:\/\/)/i;

/**
 * The codes in what was typed at one go: one, unless another begins within it.
 * @param {import('./key-presses.js').Keyed} keyed
 * @returns {import('./key-presses.js').Keyed[]}
 */
export function codesIn(keyed) {
  const pieces = keyed.text.split(NEXT);
  // What stands before the first beginning is a prefix of it.
  if (pieces.length > 1 && !BEGINS.test(pieces[0])) pieces.splice(0, 2, pieces[0] + pieces[1]);
  if (pieces.length === 1) return [keyed];
  return pieces.map((piece) => piece.replace(SORT_OF_NEXT, '')).map((text) => ({ ...keyed, text, us: text }));
}

/**
 * The text without what the scanner adds to it.
 * @param {import('../frame/context.js').Services} services
 * @param {string} typed
 */
export async function withoutMarks({ device }, typed) {
  const prefix = (await device.setting(PREFIX_SETTING)) ?? '';
  const bare = prefix && typed.startsWith(prefix) ? typed.slice(prefix.length) : typed;
  const text = bare.replace(SORT_OF_SYMBOL, '');
  return text.slice(Math.max(0, text.search(BEGINS)));
}

/**
 * What is wrong with how the keys arrive; null where nothing is seen.
 * @param {import('../frame/context.js').Services} services
 * @param {import('./key-presses.js').Keyed} keyed
 * @returns {Promise<{title: string, sentence: string} | null>}
 */
export async function keysFault(services, { text, us }) {
  if (us === text && !BEGINS.test(text)) return null;
  const understood = await isUnderstood(services, text);
  if (understood !== 'no') return understood === 'broken' ? fault('separators') : null;
  if (us === text || (await isUnderstood(services, us)) === 'no') return null;
  // Not every browser knows of Caps Lock, and a scanner may be set so, too: the letters tell.
  return fault(us.toLowerCase() === text.toLowerCase() ? 'caps' : 'layout');
}

/** @param {'separators' | 'caps' | 'layout'} what */
function fault(what) {
  return { title: say('counter-keys-title', { what }), sentence: say('counter-keys-do', { what }) };
}

/**
 * @param {import('../frame/context.js').Services} services
 * @param {string} typed
 * @returns {Promise<'yes' | 'broken' | 'no'>}  'no' also where it may be anything, as a bare number is
 */
async function isUnderstood(services, typed) {
  const text = await withoutMarks(services, typed);
  const { outcome } = await services.core.call('code', { text, host: LABEL_HOST });
  if (outcome === 'ours' || outcome === 'other_host') return 'yes';
  const read = await services.core.call('maker_symbol', { texts: [text], host: LABEL_HOST });
  if (read.outcome === 'broken' && BEGINS.test(text)) return 'broken';
  return read.outcome === 'numbers' || (read.outcome === 'choices' && BEGINS.test(text)) ? 'yes' : 'no';
}
