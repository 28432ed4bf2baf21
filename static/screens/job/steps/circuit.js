// @ts-check
/**
 * The circuit that a check or a repair of the wiring is about: drawn, with where the fault now is, what each part comes
 * to, and what is known of its wire and pins.
 */

import { html, nothing } from 'lit-html';

import { harness, STATE_MARKS, wireShape } from '../../../shapes/harness.js';
import { markShape } from '../../../shapes/marks.js';
import { say } from '../../../words/words.js';
import { sentenceCase } from '../../frame/sentence-case.js';
import { sentence } from '../../frame/sentence.js';
import { wireEntry } from './wire-entry.js';

/** @typedef {import('../../../core/views.js').HarnessView} HarnessView */
/** @typedef {import('./step-context.js').StepContext} StepContext */

const READS = { good: 'clean', bad: 'fault', unclear: 'aside' };
const STATES = { sound: 'steps-circuit-sound', possible: 'steps-circuit-possible', named: 'steps-circuit-named' };
/** Of second probes that touch no part of the chain. @type {Record<string, string>} */
const ASIDE = { ground: 'steps-circuit-probe-metal', neighbour: 'steps-circuit-probe-neighbour' };

/**
 * The drawing and what it says; the step's own words come before it.
 * @param {HarnessView | null | undefined} view
 */
export function circuit(view) {
  if (!view) return nothing;
  const place = view.next ? placeOf(view, view.next) : '';
  return html`<figure class="circuit">
    ${harness(view, `${view.where} ${place}`)}
    <figcaption>
      ${place ? html`<p class="circuit-place">${sentence(place)}</p>` : nothing}
      ${view.pins ? html`<p class="field-note">${say('job-position-pins', { pins: view.pins })}</p>` : nothing}
      ${view.wire?.colour ? html`<p class="field-note">${say('steps-circuit-coloured', { colour: view.wire.colour })}</p>` : nothing}
      ${view.colours.length ? html`<ul class="wire-colours">${view.colours.map(wireRow)}</ul>` : nothing}
      <p class="circuit-where" role="status">${sentence(view.where)}</p>
    </figcaption>
  </figure>`;
}

/** @param {import('../../../core/views.js').WireColour} wire */
function wireRow({ line, colour }) {
  return html`<li data-line=${line}>${wireShape(line)} <span>${sentenceCase(say(`steps-circuit-${line}`))}: ${colour}</span></li>`;
}

/** Where the probes go, or where to look. @param {HarnessView} view @param {NonNullable<HarnessView['next']>} next */
function placeOf({ segments, colours }, { from, to, line }) {
  const nameOf = (/** @type {string} */ id) => segments.find((each) => each.id === id)?.name ?? '';
  if (!line) return say('steps-circuit-look', { place: nameOf(from) });
  const plain = say(`steps-circuit-${line}`);
  const typed = colours.find((each) => each.line === line);
  const touched = typed ? say('steps-circuit-line-coloured', { line: plain, colour: typed.colour }) : plain;
  if (ASIDE[to]) return say(ASIDE[to], { place: nameOf(from), line: touched });
  if (from === to) return say('steps-circuit-probe-ends', { place: nameOf(from), line: touched });
  return say('steps-circuit-probe-along', { from: nameOf(from), to: nameOf(to), line: touched });
}

/**
 * Behind the step: each part by its number, what was read, the wire.
 * @param {StepContext} ctx
 * @param {HarnessView | null | undefined} view
 */
export function aboutCircuit(ctx, view) {
  if (!view) return nothing;
  return html`<details class="more" data-circuit="parts">
      <summary>${say('steps-circuit-parts')}</summary>
      <div class="screen-stack"><ol class="harness-parts">${view.segments.map((each, n) => partRow(each, n + 1))}</ol>
      ${view.next ? html`<p class="field-note">${sentence(view.next.why)} ${say('steps-circuit-minutes', { minutes: view.next.minutes })}</p>` : nothing}
      ${view.readings.length
        ? html`<h2 class="asked-words">${say('steps-circuit-read')}</h2>
            <ul class="harness-parts">${view.readings.map(readingRow)}</ul>`
        : nothing}</div>
    </details>
    ${wireEntry(ctx, view)}`;
}

/** @param {HarnessView['segments'][number]} segment @param {number} number */
function partRow({ name, state, chance }, number) {
  return html`<li data-state=${state}>
    <strong>${number}</strong>
    ${sign(STATE_MARKS[state])}
    <span>${sentenceCase(name)}</span>
    <span class="list-note">${say(STATES[state])}, ${chance}</span>
  </li>`;
}

/** @param {HarnessView['readings'][number]} reading @param {number} n */
function readingRow({ name, reads, value, words }, n) {
  return html`<li>
    <strong>${n + 1}</strong>
    ${sign(READS[reads])}
    <span>${sentenceCase(name)}</span>
    <span class="list-note">${words}${value ? ` (${value})` : nothing}</span>
  </li>`;
}

/** @param {string} kind */
function sign(kind) {
  return html`<svg class="walk-mark" viewBox="-17 -17 34 34" aria-hidden="true">${markShape(kind, { x: 0, y: 0 })}</svg>`;
}
