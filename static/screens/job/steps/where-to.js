// @ts-check
/**
 * Where a sensor goes that is still in the hand: first a scan proves which one it is, then its place is
 * said. Without a scan the record says that it was only tapped.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../../shapes/code.js';
import { icon } from '../../../shapes/icons.js';
import { say } from '../../../words/words.js';
import { draftsWith } from '../../frame/drafts-with.js';
import { textField } from '../../frame/field.js';
import { wayToMixing } from '../mixing.js';
import { labelReader } from '../../scan/label-reader.js';
import { sentence } from '../../frame/sentence.js';

/** @typedef {import('../../../core/views.js').WhereToStep} WhereToStep */

/** @param {import('./step-context.js').StepContext<WhereToStep>} ctx */
export function whereToStep(ctx) {
  const { step, form } = ctx;
  const { reader, parts } = labelReader(ctx, {
    heading: step.title,
    onMixed: wayToMixing(ctx, ctx.view),
    onOurs: (answer, how) => {
      form.proven = { shown: answer.shown, how };
      reader.leave();
    },
  });
  if (parts) return parts;
  if (form.proven || form.unproven) return placeParts(ctx);
  const unit = ctx.view.out.find((each) => each.id === step.expects.unit);
  const skip = () => {
    form.unproven = true;
    ctx.redraw();
  };
  return {
    body: html`
      ${unit?.shown ? html`<p class="wanted">${code(unit.shown, { size: 'large' })}</p>` : nothing}
      <div class="ways">
        <button class="link-button" type="button" @click=${skip}>${say('steps-where-skip')}</button>
      </div>
    `,
    main: { words: say('steps-scan'), run: reader.openCamera },
    second: { words: say('steps-type'), run: reader.type },
  };
}

/** @param {import('./step-context.js').StepContext<WhereToStep>} ctx */
function placeParts(ctx) {
  const { step, form } = ctx;
  /** @type {any[]} */
  const choices = step.choices;
  const how = form.proven?.how ?? 'tapped';
  const save = () => {
    const chosen = choices[form.place];
    const note = (form.note ?? '').trim();
    form.whyAsked = chosen?.wants === 'note' && !note;
    if (chosen && !form.whyAsked) return ctx.act(draftsWith(chosen.events, { how, note }));
    form.asked = !chosen;
    return ctx.redraw();
  };
  return {
    body: html`
      ${proof(form, ctx.view.sort)}
      <fieldset class="places">
        <legend class="field-name">${say('steps-where-asked')}</legend>
        <div class="choices">
          ${choices.map(
            ({ words }, n) =>
              html`<label class="choice">
                <input
                  type="radio"
                  name="place"
                  .checked=${form.place === n}
                  @change=${() => {
                    form.place = n;
                    form.asked = false;
                    ctx.redraw();
                  }}
                />
                <span class="choice-word">${words}</span>
              </label>`,
          )}
        </div>
      </fieldset>
      ${form.asked ? html`<p class="field-fault" role="alert">${say('steps-where-first')}</p>` : nothing}
      ${textField(ctx, 'note', form.whyAsked ? say('steps-bad-why') : say('steps-where-note'), {
        fault: form.whyAsked ? say('steps-bad-fault') : '',
      })}
    `,
    main: { words: say('steps-where-save'), run: save },
    second: null,
  };
}

/** @param {any} form @param {string} sort */
function proof({ proven }, sort) {
  if (!proven) {
    return html`<div class="panel panel-ask">
      <p class="panel-kicker">${icon('ask')}<span>${say('steps-where-not-scanned')}</span></p>
      <p>${say('steps-where-unproven', { sort })}</p>
    </div>`;
  }
  return html`<div class="panel panel-good">
    <p class="panel-kicker">${icon('tick')}<span>${sentence(say('steps-where-proven', { code: proven.shown, how: proven.how }))}</span></p>
  </div>`;
}
