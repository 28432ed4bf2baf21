// @ts-check
/**
 * Letting the next phone in: a link, good for a short while, as a QR symbol and as text.
 */

import { html, nothing } from 'lit-html';

import { ApiError } from '../api.js';
import { qrDrawing } from './qr.js';
import { dayAndTime } from './when.js';

/** The link that is shown; it is not kept. @type {{link: string, expires_at: number, qr: string[]} | null} */
let invitation = null;
let problem = '';

/** @param {import('./app.js').Context} ctx */
export function pairNext(ctx) {
  const { sync } = ctx.services;
  if (sync.status.value.state === 'not paired') {
    return html`<section class="panel panel-ask">
      <h2>This phone is not paired</h2>
      <p>Open a pairing link on it: from a phone that is paired, or the one that the server printed.</p>
    </section>`;
  }
  const invite = async () => {
    problem = '';
    try {
      await sync.api.session();
      invitation = await sync.api.post('/api/pairings', {});
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      problem = error.sentence;
    }
    ctx.redraw();
  };
  return html`<section class="screen-stack">
    <h2>Pair another phone</h2>
    ${problem ? html`<p class="field-fault" role="alert">${problem}</p>` : nothing}
    ${invitation ? shown(invitation) : nothing}
    <button class="small-button" type="button" @click=${invite}>
      ${invitation ? 'Make a fresh link' : 'Make a pairing link'}
    </button>
  </section>`;
}

/** @param {{link: string, expires_at: number, qr: string[]}} invitation */
function shown({ link, expires_at: until, qr }) {
  return html`<div class="card invitation">
    ${qrDrawing(qr, 'The pairing link as a QR code')}
    <p>Scan it with the camera of the other phone. It works once, until ${dayAndTime(until)}.</p>
    <p class="invitation-link">${link}</p>
  </div>`;
}
