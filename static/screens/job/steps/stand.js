// @ts-check
/**
 * Where the pole stands at each position, drawn to scale from above, and what a display showed beside a tape.
 * Read when somebody opens it: walk.js.
 */

import { html, nothing, svg } from 'lit-html';

import { say } from '../../../words/words.js';
import { ask } from '../../frame/ask.js';
import { sentence } from '../../frame/sentence.js';
import { sentenceCase } from '../../frame/sentence-case.js';

/** @typedef {import('../../../core/views.js').WalkStep} WalkStep */
/** @typedef {import('../../../core/views.js').StandingView} StandingView */
/** @typedef {import('./step-context.js').StepContext<WalkStep>} StepContext */

/** Of the drawing, in cm: what is left beside the bumper, its depth, and how far the area goes. */
const [BESIDE, DEPTH, AREA, CELL, POLE] = [45, 18, 100, 10, 7.5];
const FAR = 60;
/** A number's line below what it is of, and how near two of two digits may stand on one line, in cm. */
const [NUMBER_LINE, NUMBER_APART] = [18, 22];

/**
 * What the core says of what was typed; null until it has answered. The form keeps `stand`: "width", "celsius",
 * and `at`, position -> {left, tape, shown}, as typed.
 * @param {StepContext} ctx
 * @returns {StandingView | null}
 */
export function standing(ctx) {
  const { width = '', celsius = '', at = {} } = ctx.form.stand ?? {};
  return ask(ctx, 'standing', { job: ctx.job, typed: { width, celsius, at } })?.value ?? null;
}

/** @param {StepContext} ctx */
export function standPart(ctx) {
  const { form, step, redraw } = ctx;
  const told = standing(ctx);
  const put = (/** @type {Record<string, string>} */ kept, /** @type {string} */ name) => (/** @type {{target: HTMLInputElement}} */ { target }) => {
    kept[name] = target.value;
    redraw();
  };
  const whole = () => (form.stand ??= { at: {} });
  const problem = told?.problem ? html`<p class="field-fault" role="alert">${sentence(told.problem)}</p>` : nothing;
  // It can only be of the two fields above the rows then: below them, nobody would see it.
  const rowTyped = Object.values(form.stand?.at ?? {}).some((row) => Object.values(row).some(Boolean));
  return html`<p>${say('steps-stand-alone')}</p>
    ${(told?.edges ?? []).map(drawing)}
    <p class="field-note">${say('steps-stand-pole', { far: String(FAR) })}</p>
    <p class="field-note">${say('steps-stand-memory', { far: String(FAR) })}</p>
    <div class="code-entry">
      ${field(say('steps-stand-width'), form.stand?.width, (event) => put(whole(), 'width')(event))}
      ${field(say('steps-stand-celsius'), form.stand?.celsius, (event) => put(whole(), 'celsius')(event))}
    </div>
    ${rowTyped ? nothing : problem}
    <p class="field-note" role="status">${sentence(told?.sound ?? '')}</p>
    ${step.expects.positions.map(({ id, name }) => {
      const typed = form.stand?.at[id] ?? {};
      const row = () => (whole().at[id] ??= {});
      const judged = told?.judged.find(({ position }) => position === id);
      return html`<fieldset class="code-entry" data-stand=${id}>
        <legend class="field-name">${sentenceCase(name)}</legend>
        ${field(say('steps-stand-tape'), typed.tape, (event) => put(row(), 'tape')(event))}
        ${field(say('steps-stand-shown'), typed.shown, (event) => put(row(), 'shown')(event))}
        ${field(say('steps-stand-left'), typed.left, (event) => put(row(), 'left')(event))}
        ${judged ? html`<p class=${judged.fits ? 'field-note' : 'field-fault'} role="status">${sentence(judged.words)}</p>` : nothing}
      </fieldset>`;
    })}
    ${rowTyped ? problem : nothing}`;
}

/**
 * @param {string} words
 * @param {string | undefined} typed
 * @param {(event: any) => void} input
 */
function field(words, typed, input) {
  return html`<label class="field">
    <span class="field-note">${words}</span>
    <input type="text" inputmode="text" maxlength="8" autocomplete="off" .value=${typed ?? ''} @input=${input} />
  </label>`;
}

/** One bumper from above, the pole at each of its positions. @param {StandingView['edges'][number]} edge */
function drawing({ width, measured, positions }) {
  const wide = width + 2 * BESIDE;
  const lines = [];
  for (let far = CELL; far <= AREA; far += CELL) lines.push(`M${BESIDE} ${DEPTH + far}h${width}`);
  for (let x = 0; x <= width; x += CELL) lines.push(`M${BESIDE + x} ${DEPTH}v${AREA}`);
  // On a narrow bumper every second number stands a line lower: side by side they read as one.
  const near = positions.some(({ pole_x: x }, n) => n > 0 && x - positions[n - 1].pole_x < NUMBER_APART);
  const lower = (/** @type {number} */ n) => (near && n % 2 ? NUMBER_LINE : 0);
  return html`<figure class="stand">
    <svg viewBox="0 0 ${wide} ${DEPTH + AREA + 4}" role="img" aria-label=${say('steps-stand-drawing')}>
      <path class="stand-grid" d=${lines.join('')} />
      <rect class="stand-bumper" x=${BESIDE} y="1" width=${width} height=${DEPTH - 1} rx="6" />
      ${positions.map(
        ({ x, pole_x: poleX, pole_y: poleY }, n) => svg`<path class="stand-way" d=${`M${BESIDE + x} ${DEPTH}L${BESIDE + poleX} ${DEPTH + poleY}`} />
          <circle class="stand-pole" cx=${BESIDE + poleX} cy=${DEPTH + poleY} r=${POLE / 2} />
          <text class="stand-number" x=${BESIDE + poleX} y=${DEPTH + poleY + NUMBER_LINE + lower(n)}>${n + 1}</text>`,
      )}
    </svg>
    <figcaption>
      <ul>
        ${positions.map(({ name }, n) => html`<li><strong>${n + 1}</strong> ${sentenceCase(name)}</li>`)}
      </ul>
      ${measured ? nothing : html`<p class="field-note">${say('steps-stand-even')}</p>`}
    </figcaption>
  </figure>`;
}
