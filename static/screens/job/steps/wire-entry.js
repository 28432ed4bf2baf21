// @ts-check
/**
 * What is known of the wire and the pins of a position: typed once, and the limits of its checks follow from it.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../../words/words.js';
import { ask } from '../../frame/ask.js';
import { sentence } from '../../frame/sentence.js';

/** @typedef {import('../../../core/views.js').HarnessView} HarnessView */
/** @typedef {'signal_colour' | 'supply_colour' | 'ground_colour'} ColourName */
/** @typedef {{size: string, length: string, celsius: string, pins: string} & Record<ColourName, string>} Typed */

/** A workshop, in °C. */
const INDOORS = 20;
/** Fields: the phone's keys, and how many characters it takes. */
const FIELDS = /** @type {const} */ ([
  ['length', 'numeric', 8],
  ['celsius', 'text', 8],
  ['signal_colour', 'text', 60],
  ['supply_colour', 'text', 60],
  ['ground_colour', 'text', 60],
  ['pins', 'text', 120],
]);
const WHOLE = /^-?\d+$/;

/**
 * @param {import('./step-context.js').StepContext} ctx
 * @param {HarnessView} view
 */
export function wireEntry(ctx, view) {
  const { form, redraw, busy } = ctx;
  const { wire } = view;
  /** @type {Typed} */
  const typed = form.wire ?? known(view);
  const put = (/** @type {keyof Typed} */ name) => (/** @type {{target: {value: string}}} */ { target }) => {
    form.wire = { ...typed, [name]: target.value };
    redraw();
  };
  const marked = isMarked(view, typed);
  const { size, length, celsius, pins } = typed;
  const marks = { position: view.position, pins: pins.trim(), ...coloursOf(typed) };
  // What an earlier version noted as the one colour stays as it was said.
  const measured = { size, centimetres: asTyped(length), celsius: asTyped(celsius), colour: wire?.colour ?? '' };
  const draft = marked ? { kind: 'wires_marked', data: marks } : { kind: 'wire_noted', data: { ...marks, ...measured } };
  // The core says what is wrong while it is typed; what has no length yet is not told to be wrong.
  const fault = form.wire && length.trim() ? ask(ctx, 'check', { events: [{ job: ctx.job, ...draft }] })?.value?.refusal?.fault : null;
  const kept = () => {
    delete form.wire;
    redraw();
  };
  // What was typed stays until it is on record.
  const record = () => ctx.act([draft], { after: kept });
  return html`<details class="more" data-circuit="wire" ?open=${Boolean(form.wire)}>
    <summary>${say('steps-circuit-wire')}</summary>
    <div class="screen-stack">
      <p class=${wire ? '' : 'field-note'}>${wire ? sentence(wire.words) : say('steps-circuit-wire-why')}</p>
      <div class="code-entry">
        <label class="field">
          <span class="field-note">${say('steps-circuit-size')}</span>
          <select @change=${put('size')}>
            ${view.sizes.map(({ id, words }) => html`<option value=${id} .selected=${id === typed.size}>${words}</option>`)}
          </select>
        </label>
        ${FIELDS.map(
          ([name, mode, most]) => html`<label class="field" data-wire=${name}>
            <span class="field-note">${nameOf(name)}</span>
            <input type="text" inputmode=${mode} maxlength=${most} autocomplete="off" .value=${typed[name]} @input=${put(name)} />
          </label>`,
        )}
        ${fault ? html`<p class="field-fault" role="alert">${sentence(fault.message)}</p>` : nothing}
      </div>
      <button class="small-button" type="button" ?disabled=${busy || !form.wire || Boolean(fault) || !(marked || length.trim())} @click=${record}>
        ${say('steps-circuit-keep')}
      </button>
    </div>
  </details>`;
}

/** @param {HarnessView} view @returns {Typed} */
function known({ wire, pins, colours, sizes }) {
  const { size = sizes[0].id, centimetres = '', celsius = INDOORS } = wire ?? {};
  const of = (/** @type {string} */ line) => colours.find((each) => each.line === line)?.colour ?? '';
  const each = { signal_colour: of('signal'), supply_colour: of('supply'), ground_colour: of('ground') };
  return { size, length: String(centimetres), celsius: String(celsius), pins, ...each };
}

/** @param {(typeof FIELDS)[number][0]} name */
function nameOf(name) {
  const [line, colour] = name.split('_');
  return colour ? say('steps-circuit-colour', { line: say(`steps-circuit-${line}`) }) : say(`steps-circuit-${name}`);
}

/** @param {Typed} typed */
function coloursOf({ signal_colour, supply_colour, ground_colour }) {
  return { signal_colour: signal_colour.trim(), supply_colour: supply_colour.trim(), ground_colour: ground_colour.trim() };
}

/**
 * Whether only what the wires look like was typed, or taken away: nobody has to measure them for that.
 * @param {HarnessView} view
 * @param {Typed} typed
 */
function isMarked({ colours }, typed) {
  return !typed.length.trim() && (colours.length > 0 || [typed.pins, ...Object.values(coloursOf(typed))].some((each) => each.trim()));
}

/** A whole number, else the text, which the core refuses by the name of its field. @param {string} typed */
function asTyped(typed) {
  const text = typed.trim().replace('\u2212', '-');
  return WHOLE.test(text) ? Number(text) : text;
}
