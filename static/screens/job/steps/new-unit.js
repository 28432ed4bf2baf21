// @ts-check
/**
 * A new sensor takes a place: its part number is compared with the old one's, it gets a label, and the
 * replacement begins. A spare that is at hand already needs neither.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../../words/words.js';
import { makerReader } from '../../scan/maker-reader.js';
import { to } from '../../frame/router.js';
import { sentence } from '../../frame/sentence.js';
import { labelReader } from '../../scan/label-reader.js';
import { withPicture } from '../../scan/labelled-picture.js';
import { readingsOf } from '../job-data.js';
import { comparison, partsDiffer } from './part-compare.js';

/** @typedef {import('../../../core/views.js').NewUnitStep} NewUnitStep */

/** @param {import('./step-context.js').StepContext<NewUnitStep>} ctx @returns {import('../job.js').StepParts} */
export function newUnitStep(ctx) {
  const { step, form } = ctx;
  const { reader, parts } = labelReader(ctx, {
    heading: say('steps-new-label', { sort: ctx.view.sort }),
    mayWrite: true,
    labels: true,
    carry: ctx.job,
    expects: { do: 'new', position: ctx.step.expects.position },
    onOurs: (answer, how, labelled) => take(ctx, reader, answer, how, labelled),
  });
  if (parts) return parts;
  /** @param {() => unknown} next */
  const whenEntered = (next) => () => {
    form.asked = missing(ctx);
    if (form.asked) ctx.redraw();
    else next();
  };
  return {
    body: html`
      ${spares(ctx)} ${fields(ctx)}
      <details class="more" ?open=${Boolean(form.serial)}>
        <summary>${say('steps-new-ways')}</summary>
        <div class="screen-stack">
          <label class="field">
            <span class="field-name">${say('steps-new-serial')}</span>
            <input
              type="text"
              autocomplete="off"
              spellcheck="false"
              maxlength="80"
              .value=${form.serial ?? ''}
              @input=${(/** @type {{target: HTMLInputElement}} */ { target }) => {
                form.serial = target.value;
                ctx.redraw();
              }}
            />
          </label>
          <div class="ways">
            <button class="link-button" type="button" @click=${reader.type}>${say('steps-type')}</button>
            <button class="link-button" type="button" @click=${whenEntered(reader.write)}>${say('steps-write')}</button>
          </div>
        </div>
      </details>
    `,
    main: form.label
      ? { words: say('steps-new-fit', { code: form.label.shown }), run: whenEntered(() => add(ctx, reader, form.label.code, form.label.how)) }
      : { words: say('steps-new-label', { sort: ctx.view.sort }), run: reader.openCamera },
    // Whoever has no new one waits for it, and need not look for where to say so.
    second: ctx.view.ways?.pause && !step.second && !form.label
      ? { words: say('steps-new-none'), run: () => ctx.go(to.way(ctx.job, 'pause')) }
      : undefined,
  };
}

/** @param {import('./step-context.js').StepContext<NewUnitStep>} ctx */
function spares(ctx) {
  const { choices } = ctx.step;
  if (!choices.length) return nothing;
  return html`<section class="card">
    <h2>${say('steps-new-at-hand')}</h2>
    <div class="spares">
      ${choices.map(
        ({ words, note, events }) =>
          html`<button class="small-button" type="button" @click=${() => ctx.act(events)}><span>${sentence(words)}</span></button>
            <p class="soft">${sentence(note)}</p>`,
      )}
    </div>
  </section>`;
}

/** @param {import('./step-context.js').StepContext<NewUnitStep>} ctx */
function fields(ctx) {
  const { step, form } = ctx;
  const { part = '', asked, reason = '' } = form;
  const old = step.expects.part || form.oldPart || '';
  const set = (/** @type {string} */ field) => (/** @type {{target: HTMLInputElement}} */ { target }) => {
    form[field] = target.value;
    form.asked = '';
    ctx.redraw();
  };
  return html`
    <section class="card card-now compare">
      ${step.expects.part
        ? html`<p class="field-name">${say('steps-new-old-at', { position: step.expects.position_name, sort: ctx.view.sort })}</p>
            <p class="part-number">${old}</p>`
        : oldField(form.oldPart ?? '', ctx.view.sort, set('oldPart'))}
      <label class="field">
        <span class="field-name">${say('steps-new-read', { sort: ctx.view.sort })}</span>
        ${partInput({ value: part, invalid: asked === 'part', onInput: set('part') })}
        ${asked === 'part'
          ? html`<span class="field-fault" role="alert">${say('steps-new-part-fault', { sort: ctx.view.sort })}</span>`
          : nothing}
      </label>
      ${old && !part
        ? html`<button class="small-button" type="button" @click=${() => same(ctx, old)}>${say('steps-new-same', { part: old })}</button>`
        : nothing}
      ${makerReader(ctx)} ${comparison(old, part)}
      ${partsDiffer(old, part)
        ? html`<label class="field">
            <span class="field-name">${say('steps-new-reason')}</span>
            <textarea
              rows="2"
              maxlength="500"
              aria-invalid=${asked === 'reason' ? 'true' : 'false'}
              .value=${reason}
              @input=${set('reason')}
            ></textarea>
            ${asked === 'reason'
              ? html`<span class="field-fault" role="alert">${say('steps-new-reason-fault')}</span>`
              : html`<span class="field-note">${say('steps-new-reason-note')}</span>`}
          </label>`
        : nothing}
    </section>
  `;
}

/**
 * @param {string} value
 * @param {string} sort
 * @param {(event: any) => void} onInput
 */
function oldField(value, sort, onInput) {
  return html`<label class="field">
    <span class="field-name">${say('steps-new-old-read', { sort })}</span>
    ${partInput({ value, onInput })}
    <span class="field-note">${say('steps-new-old-note')}</span>
  </label>`;
}

/** @param {{value: string, invalid?: boolean, onInput: (event: any) => void}} field */
function partInput({ value, invalid = false, onInput }) {
  return html`<input
    class="part-number"
    type="text"
    autocomplete="off"
    autocapitalize="characters"
    autocorrect="off"
    spellcheck="false"
    maxlength="80"
    aria-invalid=${invalid ? 'true' : 'false'}
    .value=${value}
    @input=${onInput}
  />`;
}

/**
 * The new one was read and held against the old number by eye.
 * @param {import('./step-context.js').StepContext<NewUnitStep>} ctx
 * @param {string} part
 */
function same(ctx, part) {
  ctx.form.part = part;
  ctx.form.asked = '';
  ctx.redraw();
}

/**
 * Which field still has to be filled, or ''.
 * @param {import('./step-context.js').StepContext<NewUnitStep>} ctx
 */
function missing({ step, form }) {
  if (!(form.part ?? '').trim()) return 'part';
  const old = step.expects.part || form.oldPart || '';
  return partsDiffer(old, form.part) && !(form.reason ?? '').trim() ? 'reason' : '';
}

/**
 * A label was read: a spare that carries it goes in; a fresh one waits until the numbers are there.
 * @param {import('./step-context.js').StepContext<NewUnitStep>} ctx
 * @param {import('../../scan/label-reader.js').Reader} reader
 * @param {any} answer
 * @param {import('../../scan/label-reader.js').How} how
 * @param {import('../../scan/labelled-picture.js').Labelled | null} labelled
 */
async function take(ctx, reader, answer, how, labelled) {
  const { form } = ctx;
  if (answer.events.length) {
    if (!(await ctx.act(answer.events))) reader.leave();
    return;
  }
  form.label = { code: answer.code, shown: answer.shown, how, labelled };
  form.asked = missing(ctx);
  if (form.asked) reader.leave();
  else await add(ctx, reader, answer.code, how);
}

/**
 * Record the new sensor and begin to replace the old one with it.
 * @param {import('./step-context.js').StepContext<NewUnitStep>} ctx
 * @param {import('../../scan/label-reader.js').Reader} reader
 * @param {string} code
 * @param {import('../../scan/label-reader.js').How} how
 */
async function add(ctx, reader, code, how) {
  const { step, form, services, view } = ctx;
  const { old, position, part: known } = step.expects;
  const labelled = form.label?.labelled;
  const unit = services.device.newId('u');
  const oldPart = (form.oldPart ?? '').trim();
  const same = !partsDiffer(known || oldPart, form.part);
  // Spaces and small letters are no other part number: the old one's spelling stands for both.
  const part = same && (known || oldPart) ? known || oldPart : form.part.trim();
  const reason = same ? '' : form.reason.trim();
  /** @type {import('../../../log/log.js').Draft[]} */
  const drafts = [
    { kind: 'unit_added', data: { unit, part, serial: (form.serial ?? '').trim() || (labelled?.serial ?? ''), code, how, place: 'out' } },
    { kind: 'move_started', data: { move: 'replace', fitted: { [position]: unit }, position, reason } },
  ];
  if (!known && oldPart) {
    drafts.unshift({ kind: 'part_noted', data: { unit: old, part: oldPart, serial: '', over: readingsOf(view, old) } });
  }
  const { drafts: pictured, options } = withPicture(labelled, unit);
  if (!(await ctx.act([...drafts, ...pictured], options))) reader.leave();
}
