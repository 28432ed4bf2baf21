// @ts-check
/**
 * A layout of one's own as a file: saved for another phone, read from one.
 */

import { html, nothing } from 'lit-html';

import { saveFile } from '../../phone/save-file.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { change } from './layout-drawing.js';
import { lineFault } from './open-layout.js';

/** @typedef {import('./layout-drawing.js').Drawing} Drawing */

const MOST_FILE = 100_000;

/**
 * Another program may have written a letter beyond the first 65,536 as two halves, which the core's reader leaves apart.
 * @param {string} text
 */
function asWritten(text) {
  if (!/\\ud[89ab]/i.test(text)) return text;
  try {
    return JSON.stringify(JSON.parse(text));
  } catch {
    return text; // damaged: the core says how
  }
}

/**
 * The buttons for it, and what went wrong.
 * @param {import('../frame/context.js').Context} ctx
 * @param {Drawing} drawing
 */
export function files(ctx, drawing) {
  const { core } = ctx.services;
  const or = async (/** @type {() => Promise<void>} */ task) => {
    drawing.fault = '';
    await task().catch((fault) => change(ctx, { fault: fault.field ? lineFault(fault) : String(fault.message) }));
  };
  const save = () => or(async () => {
    const { sort, model, positions } = drawing;
    const { text } = await core.call('layout_file', { sort, model, positions });
    saveFile(new File([text], 'layout.json', { type: 'application/json' }));
  });
  const read = (/** @type {{target: HTMLInputElement}} */ { target }) => or(async () => {
    const file = target.files?.[0];
    target.value = '';
    // Longer than any layout: the core says so of its first part.
    if (file) change(ctx, { ...(await core.call('read_layout', { text: asWritten(await file.slice(0, MOST_FILE * 4 + 4).text()) })), at: -1 });
  });
  return html`<div class="plan-row">
      <button class="small-button" type="button" ?disabled=${!drawing.positions.length} @click=${save}>${icon('out')} ${say('job-draw-save')}</button>
      <label class="small-button file-button">${icon('in')} ${say('job-draw-read')}
        <input class="aloud" type="file" accept=".json,application/json" @change=${read} /></label>
    </div>
    ${drawing.fault ? html`<p class="field-fault" role="alert">${drawing.fault}</p>` : nothing}`;
}
