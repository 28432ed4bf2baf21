// @ts-check
/**
 * The way out without a network: what waits as a file, shared or saved, and the file of another phone
 * taken in.
 */

import { html, nothing } from 'lit-html';

import { canShare, saveFile, shareFile } from '../../phone/save-file.js';
import { icon } from '../../shapes/icons.js';
import { takeIn } from '../../log/take-in.js';
import { unsentFile } from '../../log/unsent-file.js';
import { countWords } from '../phone/phone-notices.js';
import { outcomeOf, outcomePanel } from '../phone/taken-in.js';
import { size } from '../frame/when.js';

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
    <h2>No network in sight?</h2>
    <p>
      Make a file of what waits and carry it to another phone that is paired, or to the server. Everything stays
      here as well until the server has it.
    </p>
    ${made ? ready(made) : nothing}
    <button class="small-button" type="button" ?disabled=${making} @click=${make}>
      ${icon('out')} ${making ? 'One moment' : made ? 'Make it afresh' : 'Make a file of what waits'}
    </button>
  </section>`;
}

/** @param {{file: File, events: number, photos: number}} made */
function ready({ file, events, photos }) {
  return html`<div class="card">
    <p>${countWords(events, photos)}, ${size(file.size)}:</p>
    <p class="device-id">${file.name}</p>
    <div class="card-actions">
      ${canShare(file)
        ? html`<button class="small-button" type="button" @click=${() => shareFile(file)}>Share the file</button>`
        : nothing}
      <button class="small-button" type="button" @click=${() => saveFile(file)}>Save the file</button>
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
    <h2>A file from another phone</h2>
    <p>What another phone could not send is on record here at once, and goes to the server with yours.</p>
    ${outcomePanel(outcome)}
    <label class="small-button file-button">
      ${icon('in')} ${taking ? 'Reading the file' : 'Take in a file'}
      <input class="aloud" type="file" accept=".txt,.json,text/plain,application/json" ?disabled=${taking} @change=${picked} />
    </label>
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {File} file
 */
function take({ services }, file) {
  const { store, log, sync } = services;
  return outcomeOf(async () => {
    const taken = await takeIn(store, file);
    await log.catchUp();
    sync.now();
    return taken;
  });
}
