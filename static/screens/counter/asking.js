// @ts-check
/**
 * Asks the core about a unit at the counter, with what this phone knows besides: the time, the return
 * window, and whether the record is as it was written.
 */

import { LABEL_HOST } from '../../phone/label-place.js';
import { chainFaults } from '../../log/chain-check.js';

/** @typedef {import('../../core/views.js').CounterAnswer} CounterAnswer */
/** @typedef {import('../../core/views.js').CounterCard} CounterCard */

/**
 * @typedef {object} Asked        which unit, and what was read off it
 * @property {string} [text]      of its label
 * @property {string} [unit]      its id, where its label is not at hand
 * @property {string} [how]       scanned or typed
 * @property {{part: string, serial: string, compared: string}} read
 * @property {import('./others.js').Heard | null} [register]  what other counters have of it; null as long as nobody said
 * @property {string} [heard]     for which keys they were asked
 *
 * @typedef {Asked & {answer: CounterCard}} Current
 */

/** Nothing was read off the part yet. */
export const nothingRead = () => ({ part: '', serial: '', compared: '' });

/**
 * What the core proposes for a unit; for a text that is no label, what it is instead.
 * @param {import('../frame/context.js').Services} services
 * @param {Asked} asked
 * @returns {Promise<CounterAnswer>}
 */
export async function proposal({ core, device, store }, { text = '', unit = '', how = '', read, register = null }) {
  const question = { text, unit, how, host: LABEL_HOST, read, now: Date.now(), window_days: device.returnDays };
  const first = await core.call('counter', question);
  if (first.outcome !== 'unit') return first;
  return core.call('counter', { ...question, register, record: await chainFaults(store, first.job) });
}
