// @ts-check
/**
 * Reads the maker's own symbol on a part or its bag, and fills part number and serial of a form with it.
 *
 * The core says what a symbol holds. Nothing is recorded here: the numbers stand in their fields, to be
 * compared with what is printed. It lives in `ctx.form.maker`.
 */

import { html, nothing } from 'lit-html';

import { scanHost } from './scan-host.js';
import { sentence } from '../frame/sentence.js';
import { confirmRead, prepareTones } from '../../phone/tones.js';
import { LABEL_HOST } from '../../phone/label-place.js';
import { say } from '../../words/words.js';

const FORMATS = ['data_matrix', 'code_128', 'qr_code'];
/** A bag carries several symbols, and the camera does not catch all of them in the same picture. */
const GATHER_MS = 700;

/** Forms whose camera was opened by a tap since the page was loaded. @type {WeakSet<object>} */
const tapped = new WeakSet();

/**
 * @typedef {object} Fields  keys of the form that are filled
 * @property {string} part
 * @property {string} [serial]  left out where no serial is asked for
 *
 * @typedef {{words: string, part: string, serial: string}} Choice
 */

/**
 * The button, and what came of it.
 * @param {import('../frame/context.js').Context} ctx
 * @param {Fields} [fields]
 */
export function makerReader(ctx, fields = { part: 'part', serial: 'serial' }) {
  const state = ctx.form.maker ?? { mode: '' };
  if (state.mode === 'camera' && tapped.has(ctx.form)) return camera(ctx, fields);
  return html`<div class="screen-stack maker">
    ${state.mode === 'choices' ? choices(ctx, fields, state) : nothing}
    ${state.mode === 'told' ? told(state) : nothing}
    ${state.mode === 'read' ? html`<p class="field-note" role="status">${state.sentence}</p>` : nothing}
    <button class="small-button" type="button" @click=${() => open(ctx)}>
      ${state.mode === 'told' ? say('scan-maker-again') : say('scan-maker')}
    </button>
  </div>`;
}

/** @param {import('../frame/context.js').Context} ctx */
async function open(ctx) {
  prepareTones();
  tapped.add(ctx.form);
  ctx.form.maker = { mode: 'camera' };
  // A camera is more than some phones have memory for: what was entered is written down first.
  await ctx.keep();
  ctx.redraw();
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Fields} fields
 */
function camera(ctx, fields) {
  /** @type {Set<string>} */
  const gathered = new Set();
  const { form } = ctx;
  const onTexts = (/** @type {string[]} */ texts) => {
    const first = gathered.size === 0;
    for (const text of texts) gathered.add(text);
    if (first) setTimeout(() => take(ctx, form, fields, [...gathered]), GATHER_MS);
  };
  const close = () => show(ctx, form, { mode: '' });
  return html`<section class="screen-stack maker">
    <p class="field-name">${say('scan-maker-where')}</p>
    ${scanHost(ctx, { words: say('scan-maker-aim'), formats: FORMATS, onTexts }, 'maker')}
    <button class="link-button" type="button" @click=${close}>${say('scan-maker-close')}</button>
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Record<string, any>} form
 * @param {Fields} fields
 * @param {string[]} texts
 */
async function take(ctx, form, fields, texts) {
  if (form.maker?.mode !== 'camera') return;
  try {
    const read = await ctx.services.core.call('maker_symbol', { texts, host: LABEL_HOST });
    if (read.outcome === 'numbers') numbers(ctx, form, fields, read);
    else if (read.outcome === 'choices') offer(ctx, form, fields, read);
    else show(ctx, form, { mode: 'told', title: read.title, sentence: read.sentence });
  } catch (error) {
    const sentence = error instanceof Error ? error.message : String(error);
    show(ctx, form, { mode: 'told', title: say('scan-maker-unchecked'), sentence });
  }
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Record<string, any>} form
 * @param {Fields} fields
 * @param {{part: string, serial: string, sentence: string}} read
 */
function numbers(ctx, form, fields, read) {
  confirmRead();
  fill(form, fields, read);
  show(ctx, form, { mode: 'read', sentence: read.sentence });
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Record<string, any>} form
 * @param {Fields} fields
 * @param {{title: string, sentence: string, choices: Choice[]}} read
 */
function offer(ctx, form, fields, read) {
  const open = read.choices.filter(({ part, serial }) => (part && fields.part) || (serial && fields.serial));
  confirmRead();
  show(ctx, form, { mode: 'choices', title: read.title, sentence: read.sentence, choices: open });
}

/**
 * @param {Record<string, any>} form
 * @param {Fields} fields
 * @param {{part: string, serial: string}} numbers
 */
function fill(form, fields, { part, serial }) {
  if (part) form[fields.part] = part;
  if (serial && fields.serial) form[fields.serial] = serial;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Record<string, any>} form
 * @param {Record<string, unknown> & {mode: string}} state
 */
function show(ctx, form, state) {
  form.maker = state;
  ctx.redraw();
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Fields} fields
 * @param {{mode: string, title: string, sentence: string, choices: Choice[]}} state
 */
function choices(ctx, fields, state) {
  const { form } = ctx;
  const choose = (/** @type {Choice} */ chosen) => {
    fill(form, fields, chosen);
    // What is left is the other number, if the symbols hold one.
    const left = state.choices.filter(({ part, serial }) => (chosen.part ? !part && serial !== chosen.part : part && part !== chosen.serial));
    show(ctx, form, left.length ? { ...state, choices: left } : { mode: '' });
  };
  return html`<section class="panel panel-ask" role="alert">
    <h2>${state.title}</h2>
    <p>${state.sentence}</p>
    <div class="answers">
      ${state.choices.map(
        (choice) => html`<button class="answer" type="button" @click=${() => choose(choice)}>
          <span>${choice.words}</span>
        </button>`,
      )}
    </div>
    <button class="link-button" type="button" @click=${() => show(ctx, form, { mode: '' })}>${say('scan-maker-none')}</button>
  </section>`;
}

/** @param {{title: string, sentence: string}} state */
function told({ title, sentence: words }) {
  return html`<section class="panel panel-ask" role="alert">
    <h2>${title}</h2>
    <p>${sentence(words)}</p>
  </section>`;
}
