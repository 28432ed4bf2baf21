// @ts-check
/**
 * The files of the batch that was just made. They are kept only while the app is open: what is on record
 * is the batch, and its page can make them again.
 */

import { html, nothing } from 'lit-html';

import { saveFile } from '../../phone/save-file.js';
import { say } from '../../words/words.js';

/** @typedef {{batch: number, labels: number, files: Array<{name: string, mime: string, base64: string}>}} Made */

/** @type {Made | null} */
let made = null;

/** @param {Made} answer */
export function keepFiles(answer) {
  made = answer;
}

/**
 * The files of a batch, if they are at hand, and how to print them. A single one is saved by the main
 * button of the screen; of several each has its own.
 * @param {number} batch
 * @returns {{told: unknown, main: {words: string, run: () => void} | null}}
 */
export function filesMade(batch) {
  if (!made || made.batch !== batch) return { told: nothing, main: null };
  const { files, labels } = made;
  const told = html`<section class="panel panel-good" role="status">
    <h2>${say('labels-ready', { count: labels })}</h2>
    <p>${say('labels-ready-how')}</p>
    ${files.length > 1
      ? html`<div class="card-actions">
          ${files.map(
            (file, index) => html`<button class="small-button" type="button" @click=${() => save(file)}>
              ${say('labels-save-page', { number: index + 1 })}
            </button>`,
          )}
        </div>`
      : nothing}
  </section>`;
  const [only] = files;
  const words = say('labels-save-kind', { kind: only.name.split('.').pop()?.toUpperCase() });
  return { told, main: files.length === 1 ? { words, run: () => save(only) } : null };
}

/** @param {{name: string, mime: string, base64: string}} file */
function save({ name, mime, base64 }) {
  const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
  saveFile(new File([bytes], name, { type: mime }));
}
