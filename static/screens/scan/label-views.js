// @ts-check
/**
 * What the label reader draws: the camera, the field for a typed code, the code to write by hand, and the
 * question which of several labels is meant.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../shapes/code.js';
import { changeWanted, isWanted } from './labelled-picture.js';
import { nearLabels } from './near-labels.js';
import { scanHost } from './scan-host.js';
import { sentence } from '../frame/sentence.js';
import { stepCount } from '../frame/step-count.js';
import { say } from '../../words/words.js';

/** @typedef {import('./label-reader.js').Reader} Reader */

/** @param {Reader} reader */
function heading({ ctx, options }) {
  return html`<header>
    ${stepCount(ctx.step.progress)}
    <h1 class="reader-heading">${sentence(options.heading)}</h1>
    ${options.instruction ? html`<p class="instruction">${sentence(options.instruction)}</p>` : nothing}
  </header>`;
}

/** @param {Reader} reader */
const cautions = ({ options }) => options.cautions ?? nothing;

/** The cautions stand below the camera: above it they would push it off a short screen. @param {Reader} reader */
export function cameraView(reader) {
  const { type, write } = reader.ways();
  const beside = reader.options.writes ? type : write;
  return html`
    ${heading(reader)}
    ${scanHost(reader.ctx, { words: say(reader.options.labels ? 'scan-hold-marks' : 'scan-hold'), onTexts: reader.see })}
    ${cautions(reader)} ${reader.options.below ?? nothing}
    <div class="ways-row">
      ${reader.options.labels
        ? html`<button class="link-button" type="button" @click=${() => changeWanted(reader.ctx)}>
            ${say('scan-pictured', { wanted: isWanted(reader.ctx) ? 'yes' : 'no' })}
          </button>`
        : nothing}
      ${reader.options.mayWrite
        ? html`<button class="link-button" type="button" @click=${beside.run}>${beside.words}</button>`
        : nothing}
      <button class="link-button" type="button" @click=${reader.leave}>${say('scan-close')}</button>
    </div>
  `;
}

/** @param {Reader} reader */
export function typeView(reader) {
  const { typed = '', title, sentence: wrong } = reader.state;
  const onInput = (/** @type {InputEvent} */ event) => {
    const field = /** @type {HTMLInputElement} */ (event.target);
    reader.show({ mode: 'type', typed: field.value });
  };
  const onKey = (/** @type {KeyboardEvent} */ event) => {
    if (event.key === 'Enter') reader.parts()?.main.run();
  };
  return html`
    ${heading(reader)} ${cautions(reader)}
    <label class="field">
      <span class="field-name">${say('scan-code')}</span>
      <input
        class="field-code"
        type="text"
        autocomplete="off"
        autocapitalize="characters"
        autocorrect="off"
        spellcheck="false"
        enterkeyhint="done"
        maxlength="200"
        aria-invalid=${title ? 'true' : 'false'}
        aria-describedby="code-note"
        .value=${typed}
        @input=${onInput}
        @keydown=${onKey}
      />
      <span class="field-note" id="code-note">${say('scan-code-note')}</span>
    </label>
    ${nearLabels(reader.ctx, typed, (text) => reader.take(text, 'typed'), reader.ctx.job)}
    ${title
      ? html`<div class="panel panel-ask" role="alert">
          <p class="field-fault">${title}</p>
          <p>${sentence(wrong ?? '')}</p>
        </div>`
      : nothing}
    ${reader.options.mayWrite
      ? html`<button class="link-button" type="button" @click=${reader.write}>
          ${say('scan-no-label')}
        </button>`
      : nothing}
  `;
}

/** @param {Reader} reader */
export function writeView(reader) {
  const { shown = '' } = reader.state.offer ?? {};
  return html`
    ${heading(reader)} ${cautions(reader)}
    <p class="lead">${say('scan-write-lead')}</p>
    <p class="written-code">${code(shown, { size: 'large' })}</p>
    <p class="soft">${say('scan-write-note')}</p>
  `;
}

/** @param {Reader} reader */
export function whichView(reader) {
  const { which = [] } = reader.state;
  return html`
    <section class="panel panel-ask" role="alert">
      <h2>${say('scan-which', { count: which.length })}</h2>
      <p>${say('scan-which-ask')}</p>
    </section>
    <ul class="which">
      ${which.map(
        ({ text, shown }) =>
          html`<li>
            <button class="which-button" type="button" @click=${() => reader.take(text, 'scanned')}>
              ${code(shown, { size: 'large' })}
            </button>
          </li>`,
      )}
    </ul>
  `;
}
