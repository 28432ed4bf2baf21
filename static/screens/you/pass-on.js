// @ts-check
/**
 * The way out without a network: what waits as a file, shared or saved, and the file of another phone
 * taken in.
 */

import { html, nothing } from 'lit-html';

import { canShare, saveFile, shareFile } from '../../phone/save-file.js';
import { icon } from '../../shapes/icons.js';
import { holdInBounds, takeIn } from '../../log/take-in.js';
import { unsentFile } from '../../log/unsent-file.js';
import { countWords } from '../phone/phone-notices.js';
import { outcomeOf, outcomePanel } from '../phone/taken-in.js';
import { size } from '../frame/when.js';
import { say } from '../../words/words.js';

/** The file that was made last; it is not kept. @type {{file: File, events: number, photos: number} | null} */
let made = null;
let making = false;
/** What became of the file that was picked last. @type {import('../phone/taken-in.js').Outcome | null} */
let outcome = null;
let taking = false;

/** @param {import('../frame/context.js').Context} ctx */
export function passOn(ctx) {
  const { services } = ctx;
  const { unsentEvents: events, unsentPhotos: photos } = services.sync.status.value;
  if (!events && !photos) return nothing;
  const make = async () => {
    making = true;
    ctx.redraw();
    made = { file: await unsentFile(services.store, services.device.id), events, photos };
    making = false;
    ctx.redraw();
  };
  return html`<section class="screen-stack">
    <h2>${say('you-no-network')}</h2>
    <p>
      ${say('you-no-network-do')}
    </p>
    ${made ? ready(made) : nothing}
    <button class="small-button" type="button" ?disabled=${making} @click=${make}>
      ${icon('out')} ${making ? say('frame-one-moment') : made ? say('you-make-afresh') : say('you-make-file')}
    </button>
  </section>`;
}

/** @param {{file: File, events: number, photos: number}} made */
function ready({ file, events, photos }) {
  return html`<div class="card">
    <p>${say('you-file-holds', { what: countWords(events, photos), size: size(file.size) })}</p>
    <p class="device-id">${file.name}</p>
    <div class="card-actions">
      ${canShare(file)
        ? html`<button class="small-button" type="button" @click=${() => shareFile(file)}>${say('you-share-file')}</button>`
        : nothing}
      <button class="small-button" type="button" @click=${() => saveFile(file)}>${say('phone-save-file')}</button>
    </div>
  </div>`;
}

/** @param {import('../frame/context.js').Context} ctx */
export function takeInFile(ctx) {
  const picked = async (/** @type {{target: HTMLInputElement}} */ { target }) => {
    const file = target.files?.[0];
    target.value = '';
    if (!file) return;
    taking = true;
    ctx.redraw();
    outcome = await take(ctx, file);
    taking = false;
    ctx.redraw();
  };
  return html`<section class="screen-stack">
    <h2>${say('you-other-file')}</h2>
    <p>${say('you-other-file-note')}</p>
    ${outcomePanel(outcome)}
    <label class="small-button file-button">
      ${icon('in')} ${taking ? say('you-reading-file') : say('you-take-in')}
      <input class="aloud" type="file" accept=".txt,.json,text/plain,application/json" ?disabled=${taking} @change=${picked} />
    </label>
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {File} file
 */
function take({ services }, file) {
  const { core, store, log, sync } = services;
  return outcomeOf(async () => {
    const taken = await takeIn(store, file, { before: (entries) => holdInBounds(core, entries) });
    await log.catchUp();
    sync.now();
    return taken;
  });
}
