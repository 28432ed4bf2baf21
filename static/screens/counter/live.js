// @ts-check
/** The camera that stays on from label to label: what it reads comes in, and what is said of it stands right under it. */

import { html, nothing } from 'lit-html';

import { scanHost } from '../scan/scan-host.js';
import { decided, told, which, whose } from './told.js';
import { say } from '../../words/words.js';

const FORMATS = ['qr_code', 'data_matrix', 'code_128'];

/**
 * The camera, what a code said that is no label, and what is under it.
 * @param {import('./work.js').Work} work
 * @param {unknown} below
 */
export function live(work, below) {
  const { form } = work.ctx;
  return {
    key: 'live',
    body: html`<div class="counter-live" data-at-hand=${work.hand.current !== null}>
        ${form.mode === 'camera'
          ? scanHost(work.ctx, { words: say('counter-aim'), formats: FORMATS, onTexts: work.comingIn.show, onPicture: work.comingIn.see }, 'counter')
          : nothing}
      </div>
      ${told(work.ctx.form.told, work)} ${which(work)} ${whose(work)} ${below === nothing ? ready(work) : below}`,
  };
}

/** @param {import('./work.js').Work} work */
function ready(work) {
  return html`${decided(work)}
    <p class="lead">${work.ctx.form.done ? say('counter-ready') : say('counter-show-label')}</p>
    <div class="ways-row">
      <button class="link-button" type="button" @click=${work.close}>${say('scan-close')}</button>
    </div>`;
}
