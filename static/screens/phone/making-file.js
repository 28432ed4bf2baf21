// @ts-check
/**
 * The file in the making, and what became of it: one at a time for the whole app, not kept over a reload.
 *
 * It is made on one tap and handed on with the next: a share sheet opens only right after a tap, and many pictures
 * take longer than a browser remembers one.
 */

import { historyFile } from '../../alone/history-file.js';
import { saveFile, shareFile } from '../../phone/save-file.js';
import { say } from '../../words/words.js';

/**
 * @typedef {{state: 'idle'}
 *   | {state: 'making', done: number, all: number}
 *   | {state: 'ready', made: import('../../alone/history-file.js').MadeFile, problem: string}
 *   | {state: 'saved', how: 'shared' | 'downloaded', name: string, before: import('../../alone/saved.js').Standing | null}
 *   | {state: 'failed', sentence: string}} Making
 */

/** @type {Making} */
let making = { state: 'idle' };

/** @returns {Making} */
export function fileInMaking() {
  return making;
}

/** Forget a file that no longer holds everything. @param {number} upTo  this phone's order by now */
export function dropOldFile(upTo) {
  if (making.state === 'ready' && making.made.upTo !== upTo) making = { state: 'idle' };
}

/** Start over. */
export function dropFile() {
  if (making.state !== 'making') making = { state: 'idle' };
}

/** @param {import('../frame/context.js').Context} ctx */
export async function makeFile(ctx) {
  if (making.state === 'making') return;
  const show = (/** @type {Making} */ next) => {
    making = next;
    ctx.redraw();
  };
  show({ state: 'making', done: 0, all: 0 });
  try {
    const made = await historyFile(ctx.services.store, (done, all) => show({ state: 'making', done, all }));
    show({ state: 'ready', made, problem: '' });
  } catch (error) {
    show({
      state: 'failed',
      sentence: say('phone-file-failed', { error: String(error) }),
    });
  }
}

/** Hand the file to another app of the phone. @param {import('../frame/context.js').Context} ctx */
export async function share(ctx) {
  if (making.state !== 'ready') return;
  const { made } = making;
  let handedOn = false;
  try {
    handedOn = await shareFile(made.file);
  } catch {
    making = { state: 'ready', made, problem: say('phone-not-shared') };
  }
  if (handedOn) await confirm(ctx, made, 'shared');
  ctx.redraw();
}

/** Put the file into the phone's downloads. @param {import('../frame/context.js').Context} ctx */
export async function download(ctx) {
  if (making.state !== 'ready') return;
  const { made } = making;
  saveFile(made.file);
  await confirm(ctx, made, 'downloaded');
  ctx.redraw();
}

/** The person did not find it where it should be: what was saved before counts again. @param {import('../frame/context.js').Context} ctx */
export async function takeBack(ctx) {
  if (making.state !== 'saved') return;
  const { before } = making;
  making = { state: 'idle' };
  await ctx.services.saved?.note(before?.last ?? null, before?.since);
  await makeFile(ctx);
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../alone/history-file.js').MadeFile} made
 * @param {'shared' | 'downloaded'} how
 */
async function confirm({ services }, { file, upTo, held }, how) {
  const before = services.saved?.standing.value ?? null;
  await services.saved?.note({ name: file.name, at: Date.now(), how, upTo, ...held });
  making = { state: 'saved', how, name: file.name, before };
}
