// @ts-check
/**
 * What is true of this phone as a whole and has to be seen on every screen, most urgent first.
 */

import { html, nothing } from 'lit-html';

import { PLACE_WORDS } from '../../phone/place-words.js';
import { icon } from '../../shapes/icons.js';
import { wayBack } from './way-back.js';
import { linkTo, to } from '../frame/router.js';
import { say } from '../../words/words.js';

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {{saveAgain: (() => unknown) | null}} unsaved
 */
export function banners({ services }, { saveAgain }) {
  const { log, store, core, device, saved } = services;
  return html`${unsavedBanner(log, saveAgain)}
  ${banner('panel-stop', say('phone-this'), store.trouble.value)}
  ${banner('panel-stop', say('phone-this'), device.notice.value, {
    read: () => device.noticeRead(),
    also: saved && device.notice.value.state === 'lost' ? wayBack() : nothing,
  })}
  ${banner('panel-ask', say('phone-no-checks'), core.trouble.value)}`;
}

/**
 * @param {string} kind
 * @param {string} kicker
 * @param {{state: string, sentence: string}} trouble
 * @param {{read?: () => unknown, also?: unknown}} [more]  read: takes it away; without it, it goes by itself
 */
function banner(kind, kicker, { state, sentence }, { read, also = nothing } = {}) {
  if (state === 'none' || state === 'restarted') return nothing;
  return html`
    <section class="panel ${kind} banner" role="status">
      <p class="panel-kicker">${icon('caution')} ${kicker}</p>
      <p>${sentence}</p>
      ${also}
      ${read ? html`<button class="small-button" type="button" @click=${read}>${say('phone-read')}</button>` : nothing}
    </section>
  `;
}

/**
 * @param {import('../../log/log.js').EventLog} log
 * @param {(() => unknown) | null} saveAgain
 */
function unsavedBanner(log, saveAgain) {
  const unsaved = log.unsaved.value;
  if (!unsaved) return nothing;
  return html`
    <section class="panel panel-stop banner" role="alert">
      <p class="panel-kicker">${icon('stop')} ${say('phone-not-on-record')}</p>
      <h2>${unsaved.title}</h2>
      <p>${unsaved.sentence}</p>
      <div class="card-actions">
        <button class="small-button" type="button" @click=${() => (saveAgain ? saveAgain() : log.retry())}>
          ${say('phone-save-again')}
        </button>
        <a class="small-button" href=${linkTo(to.outbox())}>${PLACE_WORDS.seeWhatWaits}</a>
        <button class="link-button" type="button" @click=${() => log.giveUp()}>${say('phone-do-not-save')}</button>
      </div>
    </section>
  `;
}
