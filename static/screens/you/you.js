// @ts-check
/**
 * Who is working, what this phone still has to send, and whether it will keep what it holds.
 */

import { html, nothing } from 'lit-html';

import { phoneKey } from '../../log/phone-key.js';
import { fileStanding } from '../alone/file-standing.js';
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
import { voiceChoice } from './voice.js';
import { dayAndTime } from '../frame/when.js';
import { say } from '../../words/words.js';

/** Each with the message that names it. */
const THEMES = /** @type {const} */ ([
  ['phone', 'you-theme-phone'],
  ['light', 'you-theme-light'],
  ['dark', 'you-theme-dark'],
]);

export const youPage = {
  /** @param {import('../frame/context.js').Services} services */
  load: async ({ device, saved, store }) => ({
    storage: await device.storage(),
    actor: device.actor,
    people: await device.people(),
    id: device.id,
    seal: saved && (await phoneKey(store)),
  }),

  formKey: () => 'you',

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { sync, device, saved } = ctx.services;
    return {
      title: say('you-title'),
      back: to.jobs(),
      body: html`${newVersion(ctx)} ${clockNotice(ctx)} ${saved ? fileStanding(ctx) : outbox(ctx)} ${yourName(ctx)} ${saved ? nothing : pairNext(ctx)} ${device.role.value === 'counter' ? nothing : labelsLink()} ${saved ? nothing : html`<a class="small-button" href=${linkTo(to.lessons())}>${say('you-lessons')}</a>`} ${keeping(ctx)} ${ctx.data.seal ? phoneSeal(ctx.data.seal) : nothing} ${languageChoice(ctx)} ${theme(ctx)}
      ${tone(ctx)} ${device.role.value === 'counter' ? nothing : voiceChoice(ctx)} <ul class="list">${helpRow()}</ul> ${thisPhone(ctx)}`,
      main: saved
        ? { words: say('you-file'), run: () => ctx.go(to.file()) }
        : { words: say('you-send-now'), disabled: sync.status.value.state === 'sending', run: () => sync.now() },
    };
  },
};

/** @param {import('../frame/context.js').Context} ctx */
function outbox({ services }) {
  const status = services.sync.status.value;
  const waits = status.unsentEvents + status.unsentPhotos;
  return html`${sendingState(status)}
    <a class="link-button" href=${linkTo(to.outbox())}>${waits ? say('phone-see-what-waits') : say('you-take-in-other')}</a>`;
}

/** @param {import('../frame/context.js').Context} ctx */
function yourName(ctx) {
  const { form, data, services } = ctx;
  const name = (form.actor ?? data.actor).trim();
  const handTo = async (/** @type {string} */ person) => {
    await services.device.handTo(person);
    ctx.forget();
    await ctx.reload();
  };
  const others = data.people.filter((/** @type {string} */ person) => person !== data.actor);
  return html`<section class="screen-stack">
    ${textField(ctx, 'actor', say('you-name'), {
      note: say('you-name-note'),
      initial: data.actor,
      most: 80,
      autocomplete: 'name',
    })}
    ${name && name !== data.actor
      ? html`<button class="small-button" type="button" @click=${() => handTo(name)}>${say('you-use-name')}</button>`
      : nothing}
    ${others.length
      ? html`<div class="card-actions" role="group" aria-label=${say('you-people')}>
            ${others.map((/** @type {string} */ person) => html`<button class="small-button" type="button" @click=${() => handTo(person)}>${person}</button>`)}
          </div>
          <p class="field-note">${say('you-people')}</p>`
      : nothing}
  </section>`;
}

function labelsLink() {
  return html`<section class="screen-stack">
    <h2>${say('you-labels')}</h2>
    <a class="small-button" href=${linkTo(to.labels())}>${say('you-print-labels')}</a>
  </section>`;
}

/** @param {import('../frame/context.js').Context} ctx */
function theme(ctx) {
  return html`<fieldset class="asked">
    <legend class="asked-words">${say('you-theme')}</legend>
    <div class="choices choices-two">
      ${THEMES.map(
        ([id, message]) => html`<label class="choice">
          <input
            type="radio"
            name="theme"
            .checked=${chosenTheme() === id}
            @change=${() => {
              chooseTheme(id);
              ctx.redraw();
            }}
          />
          <span class="choice-word">${say(message)}</span>
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
    <legend class="asked-words">${say('you-tone')}</legend>
    <label class="choice">
      <input type="checkbox" .checked=${toneWanted()} @change=${change} />
      <span class="choice-word">${say('you-tone-sound')}</span>
    </label>
  </fieldset>`;
}

/** @param {import('../frame/context.js').Context} ctx */
function thisPhone({ data, services }) {
  const { lastSyncAt } = services.sync.status.value;
  return html`<details class="more">
    <summary>${say('you-about')}</summary>
    <dl class="facts">
      <dt>${say('you-id')}</dt>
      <dd class="device-id">${data.id}</dd>
      <dt>${say('you-version')}</dt>
      <dd class="device-id">${services.update.build || say('you-version-unknown')}</dd>
      ${services.saved
        ? nothing
        : html`<dt>${say('you-exchange')}</dt>
            <dd>${lastSyncAt ? dayAndTime(lastSyncAt) : say('you-exchange-none')}</dd>`}
    </dl>
  </details>`;
}
