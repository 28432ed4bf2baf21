// @ts-check
/** What is said of a text that is no label, where no unit is at hand. */

import { LABEL_HOST } from '../../phone/label-place.js';
import { visible } from '../../words/visible.js';
import { say } from '../../words/words.js';

/** What says that a part's label comes before anything else on it. */
export const labelFirst = () => ({ title: say('counter-label-first'), sentence: say('counter-label-first-do') });

/**
 * Of the next part's bag, that its label comes first; of what was typed, which sensors have that serial number,
 * or where else to look for it.
 * @param {import('../frame/context.js').Services} services
 * @param {{text: string, answer: any}} read  with the core's answer of it
 */
export async function ofNoLabel({ core }, { text, answer }) {
  if (answer.sensors?.length) return { ...answer, title: say('counter-serial-known'), sentence: say('counter-serial-known-of', { serial: visible(text) }), serial: text };
  if (answer.sensors) return { ...answer, search: text };
  if (answer.outcome !== 'foreign') return answer;
  const read = await core.call('maker_symbol', { texts: [text], host: LABEL_HOST });
  if (read.outcome !== 'numbers' && read.outcome !== 'choices') return answer;
  const numbers = read.outcome === 'numbers' ? [read.part, read.serial].filter(Boolean).join(', ') : text;
  return { ...labelFirst(), sentence: say('counter-bag-first', { numbers: visible(numbers) }) };
}
