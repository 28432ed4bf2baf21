// @ts-check
/**
 * Who is working, what this phone still has to send, and whether it will keep what it holds.
 */

import { html, nothing } from 'lit-html';

import { phoneKey } from '../../record/phone-key.js';
import { fileStanding } from '../alone/file-page.js';
import { phoneSeal } from '../record/phone-seal.js';
import { newVersion } from '../phone/change-over.js';
import { clockNotice } from '../phone/clock-notice.js';
import { textField } from '../frame/field.js';
import { languageChoice } from './language.js';
import { helpRow } from '../frame/help-link.js';
import { keeping } from '../phone/keeping.js';
import { pairNext } from './pair-next.js';
import { linkTo, to } from '../frame/router.js';
import { sendingState } from '../phone/sending-state.js';
import { chooseTheme, chosenTheme } from '../../phone/theme.js';
import { confirmRead, toneWanted, wantTone } from '../../phone/tones.js';
import { dayAndTime } from '../frame/when.js';

const THEMES = /** @type {const} */ ([
  ['phone', 'As the phone has it'],
  ['light', 'Light'],
  ['dark', 'Dark'],
]);

export const youPage = {
  /** @param {import('../frame/context.js').Services} services */
  load: async ({ device, saved, store }) => ({
    storage: await device.storage(),
    actor: device.actor,
    id: device.id,
    seal: saved && (await phoneKey(store)),
  }),

  formKey: () => 'you',

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { sync, device, saved } = ctx.services;
    return {
      title: 'You and this phone',
      back: to.jobs(),
      body: html`${newVersion(ctx)} ${clockNotice(ctx)} ${saved ? fileStanding(ctx) : outbox(ctx)} ${yourName(ctx)} ${saved ? nothing : pairNext(ctx)} ${device.role.value === 'counter' ? nothing : labelsLink()} ${keeping(ctx)} ${ctx.data.seal ? phoneSeal(ctx.data.seal) : nothing} ${languageChoice(ctx)} ${theme(ctx)}
      ${tone(ctx)} <ul class="list">${helpRow()}</ul> ${thisPhone(ctx)}`,
      main: saved
        ? { words: 'Your file', run: () => ctx.go(to.file()) }
        : { words: 'Send now', disabled: sync.status.value.state === 'sending', run: () => sync.now() },
    };
  },
};

/** @param {import('../frame/context.js').Context} ctx */
function outbox({ services }) {
  const status = services.sync.status.value;
  const waits = status.unsentEvents + status.unsentPhotos;
  return html`${sendingState(status)}
    <a class="link-button" href=${linkTo(to.outbox())}>${waits ? 'See what waits' : 'Take in a file from another phone'}</a>`;
}

/** @param {import('../frame/context.js').Context} ctx */
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

function labelsLink() {
  return html`<section class="screen-stack">
    <h2>Labels</h2>
    <a class="small-button" href=${linkTo(to.labels())}>Print labels, see what became of them</a>
  </section>`;
}

/** @param {import('../frame/context.js').Context} ctx */
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

/** @param {import('../frame/context.js').Context} ctx */
function tone(ctx) {
  const change = (/** @type {{target: HTMLInputElement}} */ { target }) => {
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

/** @param {import('../frame/context.js').Context} ctx */
function thisPhone({ data, services }) {
  const { lastSyncAt } = services.sync.status.value;
  return html`<details class="more">
    <summary>About this phone</summary>
    <dl class="facts">
      <dt>Its id</dt>
      <dd class="device-id">${data.id}</dd>
      <dt>Version</dt>
      <dd class="device-id">${services.update.build || 'not known yet'}</dd>
      ${services.saved
        ? nothing
        : html`<dt>Last exchange</dt>
            <dd>${lastSyncAt ? dayAndTime(lastSyncAt) : 'none yet'}</dd>`}
    </dl>
  </details>`;
}
