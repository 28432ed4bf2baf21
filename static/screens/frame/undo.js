// @ts-check
/**
 * Takes back what was just recorded, for a while after it: it writes the correction, as the history does.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';

/** @param {(() => Promise<void>) | null} undo */
export function undoButton(undo) {
  if (!undo) return nothing;
  return html`<div class="undo">
    <button class="small-button" type="button" @click=${undo}>${icon('undo')} ${say('frame-undo')}</button>
  </div>`;
}
