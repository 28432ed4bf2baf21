// @ts-check
/**
 * Whether this phone will keep what it holds: what the browser has promised, whether the app is installed,
 * and how much room is left; said where it is looked for and, when it matters, where it is not.
 */

import { html, nothing } from 'lit-html';

import { PLACE_WORDS } from '../../phone/place-words.js';
import { icon } from '../../shapes/icons.js';
import { freeSpace } from '../../log/space.js';
import { helpLink } from '../frame/help-link.js';
import { linkTo, to } from '../frame/router.js';
import { size } from '../frame/when.js';
import { say } from '../../words/words.js';

/** About a hundred pictures; below it, a day's work may not fit any more. */
const LITTLE_LEFT = 50_000_000;

/**
 * On the screen about this phone; `data.storage` is what `device.storage()` said.
 * @param {import('../frame/context.js').Context} ctx
 */
export function keeping(ctx) {
  /** @type {import('../../log/device.js').StorageFacts} */
  const storage = ctx.data.storage;
  const { device, update } = ctx.services;
  const ask = async () => {
    await device.askToKeepData();
    await ctx.reload();
  };
  return html`<section class="screen-stack">
    <h2>${say('phone-keeps')}</h2>
    <ul class="list">
      ${fact(device.kept.value ?? false, say('phone-promised'), say('phone-not-promised'))}
      ${fact(storage.installed, say('phone-installed'), say('phone-not-installed'))}
      ${fact(update.offlineReady.value, say('phone-offline-ready'), say('phone-offline-not-ready'))}
      ${fact(!isShort(storage), roomWords(storage), say('phone-short', { room: roomWords(storage) }))}
    </ul>
    <p class="soft">${PLACE_WORDS.safe}</p>
    ${helpLink(to.help('data'), say('phone-how-to-keep'))}
    ${device.kept.value
      ? nothing
      : html`<button class="small-button" type="button" @click=${ask}>${say('phone-ask-browser')}</button>`}
    ${storage.installed ? nothing : installLink()} ${isShort(storage) ? makeRoom(ctx) : nothing}
  </section>`;
}

/**
 * On the list of jobs: that something here may get lost, and what to do about it.
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../log/device.js').StorageFacts} storage
 */
export function keepingNotice({ services }, storage) {
  const { unsentEvents, unsentPhotos } = services.sync.status.value;
  if (isShort(storage)) return room(storage);
  // Undefined: it was not asked yet. While it is only a page, the offer of the home screen says so.
  if (storage.installed && services.device.kept.value === false && unsentEvents + unsentPhotos) {
    return notice(say('phone-send-soon'));
  }
  return nothing;
}

/** @param {import('../../log/device.js').StorageFacts} storage */
function room(storage) {
  return notice(say('phone-short-notice', { room: roomWords(storage) }));
}

/** @param {unknown} words */
function notice(words) {
  return html`<a class="notice notice-row" href=${linkTo(to.you())}>${icon('caution')} <span>${words}</span></a>`;
}

/** @param {import('../../log/device.js').StorageFacts} storage */
function isShort({ left }) {
  return left !== undefined && left < LITTLE_LEFT;
}

/** @param {import('../../log/device.js').StorageFacts} storage */
function roomWords({ usage, left }) {
  const used = size(usage);
  // Browsers name a share of the disk, or a made-up figure; the disk may be full sooner.
  return left === undefined ? say('phone-room-unknown', { used }) : say('phone-room', { used, left: size(left) });
}

/** @param {import('../frame/context.js').Context} ctx */
function makeRoom(ctx) {
  const drop = async () => {
    await freeSpace(ctx.services.store);
    await ctx.reload();
  };
  return html`<p>${PLACE_WORDS.noRoom}</p>
    ${ctx.services.saved
      ? nothing
      : html`<button class="small-button" type="button" @click=${drop}>${say('phone-take-pictures-off')}</button>`}`;
}

/**
 * @param {boolean} holds
 * @param {string} yes
 * @param {string} no
 */
function fact(holds, yes, no) {
  return html`<li class="list-row">${icon(holds ? 'tick' : 'ask')}<span class="list-main">${holds ? yes : no}</span></li>`;
}

function installLink() {
  return html`<a class="link-button" href=${linkTo(to.install())}>${say('phone-how-to-install')}</a>`;
}
