// @ts-check
/**
 * Letting the next phone in: a link, good for a short while, as a QR symbol and as text.
 */

import { html, nothing } from 'lit-html';

import { ApiError } from '../../sync/request.js';
import { copied } from '../../phone/clipboard.js';
import { qrDrawing } from '../../shapes/qr.js';
import { linkTo, to } from '../frame/router.js';
import { dayAndTime } from '../frame/when.js';
import { say } from '../../words/words.js';

/** The link that is shown; it is not kept. @type {{link: string, role: string, expires_at: number, qr: string[]} | null} */
let invitation = null;
let problem = '';
/** What came of copying the link. */
let copyWords = '';
/** What the next phone is for. @type {import('../../log/device.js').Role | null} */
let chosen = null;

/** @param {import('../frame/context.js').Context} ctx */
export function pairNext(ctx) {
  const { sync, device } = ctx.services;
  const own = device.role.value;
  const role = own === 'counter' ? 'counter' : (chosen ?? 'bench');
  if (sync.status.value.state === 'not paired') {
    return html`<section class="panel panel-ask">
      <h2>${say('phone-unpaired')}</h2>
      <p>${say('you-unpaired-note')}</p>
      <a class="small-button" href=${linkTo(to.pair())}>${say('phone-pair')}</a>
    </section>`;
  }
  const invite = async () => {
    problem = '';
    copyWords = '';
    try {
      invitation = await sync.pairingLink(role);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      problem = error.sentence;
    }
    ctx.redraw();
  };
  return html`<section class="screen-stack">
    <h2>${say('you-pair-another')}</h2>
    ${problem ? html`<p class="field-fault" role="alert">${problem}</p>` : nothing}
    ${own === 'counter' ? html`<p class="soft">${say('you-counter-too')}</p>` : roleChoice(ctx, role)}
    ${invitation ? shown(ctx, invitation) : nothing}
    <button class="small-button" type="button" @click=${invite}>
      ${invitation ? say('you-fresh-link') : say('you-make-link')}
    </button>
    <a class="link-button" href=${linkTo(to.phones())}>${say('you-see-phones')}</a>
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../log/device.js').Role} role
 */
function roleChoice(ctx, role) {
  const roles = /** @type {import('../../log/device.js').Role[]} */ (['bench', 'counter']);
  return html`<div class="choices choices-two" role="radiogroup" aria-label=${say('you-other-for')}>
    ${roles.map(
      (each) => html`<label class="choice">
        <input
          type="radio"
          name="role"
          .checked=${each === role}
          @change=${() => {
            chosen = each;
            invitation = null;
            ctx.redraw();
          }}
        />
        <span class="choice-word">${say('you-role', { role: each })}</span>
      </label>`,
    )}
  </div>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {{link: string, role: string, expires_at: number, qr: string[]}} invitation
 */
function shown(ctx, { link, role, expires_at: until, qr }) {
  const copy = async () => {
    copyWords = (await copied(link)) ? say('you-link-copied') : say('you-no-copy');
    ctx.redraw();
  };
  return html`<div class="card invitation">
    ${qrDrawing(qr, say('you-link-qr'))}
    <p>${say('you-link-scan', { role, moment: dayAndTime(until) })}</p>
    <p class="invitation-link">${link}</p>
    <button class="small-button" type="button" @click=${copy}>${say('you-copy-link')}</button>
    <p class="soft" role="status">${copyWords}</p>
  </div>`;
}
