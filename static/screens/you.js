// @ts-check
/**
 * Who is working, what this phone still has to send, and whether it will keep what it holds.
 */

import { html, nothing } from 'lit-html';

import { saveFile } from '../save-file.js';
import { icon } from '../shapes/icons.js';
import { textField } from './field.js';
import { canInstall, install } from './install.js';
import { pairNext } from './pair-next.js';
import { updateReady, countWords } from './phone-notices.js';
import { to } from './router.js';
import { chooseTheme, chosenTheme } from './theme.js';
import { confirmRead, toneWanted, wantTone } from './tones.js';
import { ago, dayAndTime, size } from './when.js';

const THEMES = /** @type {const} */ ([
  ['phone', 'As the phone has it'],
  ['light', 'Light'],
  ['dark', 'Dark'],
]);

export const youPage = {
  /** @param {import('./app.js').Services} services */
  load: async ({ device }) => ({ storage: await device.storage(), actor: device.actor, id: device.id }),

  formKey: () => 'you',

  /** @param {import('./app.js').Context} ctx */
  draw(ctx) {
    const { sync, update } = ctx.services;
    return {
      title: 'You and this phone',
      back: to.jobs(),
      body: html`${updateReady(update)} ${outbox(ctx)} ${yourName(ctx)} ${pairNext(ctx)} ${keeping(ctx)} ${theme(ctx)}
      ${tone(ctx)}       ${thisPhone(ctx)}`,
      main: { words: 'Send now', disabled: sync.status.value.state === 'sending', run: () => sync.now() },
    };
  },
};

/** @param {import('./app.js').Context} ctx */
function outbox({ services }) {
  const status = services.sync.status.value;
  const { unsentEvents, unsentPhotos, unsentBytes, oldestUnsentAt, lastSyncAt, sentence, state } = status;
  const waits = unsentEvents + unsentPhotos;
  return html`<section class="card card-now" role="status">
    <h1>${waits ? `${countWords(unsentEvents, unsentPhotos)} not sent yet` : 'Nothing waits on this phone'}</h1>
    ${waits
      ? html`<p class="lead">
          Saved on this phone${oldestUnsentAt ? `, the oldest ${ago(oldestUnsentAt)}` : ''}${unsentBytes
            ? `; the pictures take ${size(unsentBytes)}`
            : ''}.
        </p>`
      : nothing}
    ${state === 'sending' ? html`<p>Sending.</p>` : sentence ? html`<p>${sentence}</p>` : nothing}
    <p class="soft">${lastSyncAt ? `Last exchange with the server ${ago(lastSyncAt)}.` : 'No exchange with the server since the app was opened.'}</p>
    ${waits
      ? html`<button class="small-button" type="button" @click=${async () => saveFile(await services.log.unsentFile())}>
          Save what waits as a file
        </button>`
      : nothing}
  </section>`;
}

/** @param {import('./app.js').Context} ctx */
function yourName(ctx) {
  const { form, data, services } = ctx;
  const name = (form.actor ?? data.actor).trim();
  const save = async () => {
    await services.device.setActor(name);
    ctx.forget();
    await ctx.reload();
  };
  return html`<section class="screen-stack">
    ${textField(ctx, 'actor', 'Your name', {
      note: 'Stands beside everything you record from now on.',
      initial: data.actor,
      most: 80,
      autocomplete: 'name',
    })}
    ${name && name !== data.actor
      ? html`<button class="small-button" type="button" @click=${save}>Use this name</button>`
      : nothing}
  </section>`;
}

/** @param {import('./app.js').Context} ctx */
function keeping(ctx) {
  const { storage } = ctx.data;
  const { device, update } = ctx.services;
  const ask = async () => {
    await device.askToKeepData();
    await ctx.reload();
  };
  return html`<section class="screen-stack">
    <h2>Does this phone keep it?</h2>
    <ul class="list">
      ${fact(storage.kept, 'The browser has promised to keep the data', 'The browser may remove the data when space is short')}
      ${fact(storage.installed, 'The app is on the home screen', 'The app is not on the home screen')}
      ${fact(update.offlineReady.value, 'It starts without a network', 'It needs a network to start')}
    </ul>
    <p class="soft">${size(storage.usage)} in use. Only what was sent is safe from a lost phone.</p>
    ${storage.kept
      ? nothing
      : html`<button class="small-button" type="button" @click=${ask}>Ask the browser to keep it</button>`}
    ${storage.installed ? nothing : installHint()}
  </section>`;
}

/**
 * @param {boolean} holds
 * @param {string} yes
 * @param {string} no
 */
function fact(holds, yes, no) {
  return html`<li class="list-row">${icon(holds ? 'tick' : 'ask')}<span class="list-main">${holds ? yes : no}</span></li>`;
}

function installHint() {
  if (canInstall()) {
    return html`<button class="small-button" type="button" @click=${install}>Put the app on the home screen</button>`;
  }
  return html`<p>
    Put it on the home screen: open the browser's menu and choose to add or install this page. Some phones remove
    the data of pages that were not opened for a week; an app on the home screen they leave alone.
  </p>`;
}

/** @param {import('./app.js').Context} ctx */
function theme(ctx) {
  return html`<fieldset class="asked">
    <legend class="asked-words">Light or dark</legend>
    <div class="choices choices-two">
      ${THEMES.map(
        ([id, words]) => html`<label class="choice">
          <input
            type="radio"
            name="theme"
            .checked=${chosenTheme() === id}
            @change=${() => {
              chooseTheme(id);
              ctx.redraw();
            }}
          />
          <span class="choice-word">${words}</span>
        </label>`,
      )}
    </div>
  </fieldset>`;
}

/** @param {import('./app.js').Context} ctx */
function tone(ctx) {
  const change = (/** @type {any} */ { target }) => {
    wantTone(target.checked);
    if (target.checked) confirmRead();
    ctx.redraw();
  };
  return html`<fieldset class="asked">
    <legend class="asked-words">When a code was read</legend>
    <label class="choice">
      <input type="checkbox" .checked=${toneWanted()} @change=${change} />
      <span class="choice-word">Sound a short tone</span>
    </label>
  </fieldset>`;
}

/** @param {import('./app.js').Context} ctx */
function thisPhone({ data, services }) {
  const { lastSyncAt } = services.sync.status.value;
  return html`<details class="more">
    <summary>About this phone</summary>
    <dl class="facts">
      <dt>Its id</dt>
      <dd class="device-id">${data.id}</dd>
      <dt>Version</dt>
      <dd class="device-id">${services.update.build || 'not known yet'}</dd>
      <dt>Last exchange</dt>
      <dd>${lastSyncAt ? dayAndTime(lastSyncAt) : 'none yet'}</dd>
    </dl>
  </details>`;
}
