// @ts-check
/**
 * How safe what was recorded is, in the places where every person sees it: the mark in the head of each screen, the
 * list of jobs, a job that was just closed. With a server that is what was sent; without one, what is in a file.
 */

import { nothing } from 'lit-html';

import { reminder, reminderAtClose, fileMark } from './reminder.js';
import { phoneNotices, unsentCount } from './phone-notices.js';
import { say } from '../../words/words.js';

/**
 * @param {import('../frame/context.js').Services} services
 * @returns {import('../frame/frame.js').Mark}
 */
export function markOf({ saved, sync }) {
  return saved ? fileMark(saved.standing.value) : sendingMark(sync.status.value);
}

/**
 * On the list of jobs.
 * @param {import('../frame/context.js').Context} ctx
 */
export function standingNotices(ctx) {
  return ctx.services.saved ? reminder(ctx) : phoneNotices(ctx);
}

/**
 * On a job that is closed.
 * @param {import('../frame/context.js').Context} ctx
 */
export function standingAtClose(ctx) {
  return ctx.services.saved ? reminderAtClose(ctx) : nothing;
}

/**
 * With a server: what is sent.
 * @param {import('../../sync/status.js').SyncStatus} status
 * @returns {import('../frame/frame.js').Mark}
 */
function sendingMark(status) {
  const { state } = status;
  const count = unsentCount(status);
  if (state === 'not paired') return { state: 'trouble', words: say('phone-mark-unpaired', { count }) };
  if (state === 'refused') return { state: 'trouble', words: say('phone-mark-not-taken', { count }) };
  if (state === 'sending' && count) return { state: 'waiting', words: say('phone-mark-sending', { count }) };
  if (count) return { state: 'waiting', words: say('phone-mark-not-sent', { count }) };
  if (state === 'server in trouble') return { state: 'trouble', words: say('phone-mark-server') };
  if (state === 'server unreachable') return { state: 'waiting', words: say('phone-mark-offline') };
  return { state: 'sent', words: state === 'sent' ? say('phone-mark-sent') : say('phone-mark-nothing') };
}
