// @ts-check
/**
 * A choice that asks why before it is recorded: a sensor that was found bad goes into stock.
 */

import { html } from 'lit-html';

import { say } from '../../words/words.js';
import { draftsWith } from './drafts-with.js';
import { textField } from './field.js';

/** @typedef {import('../../core/views.js').PlaceChoice} PlaceChoice */

/**
 * The buttons of some places; one that asks why has its field and its button once it was tapped.
 * @param {import('./context.js').Context} ctx
 * @param {PlaceChoice[]} choices
 * @param {(events: PlaceChoice['events']) => unknown} record
 */
export function placeButtons(ctx, choices, record) {
  const { form, busy } = ctx;
  const tap = (/** @type {PlaceChoice} */ choice) => {
    if (choice.wants !== 'note') return record(choice.events);
    form.whyOf = nameOf(choice);
    return ctx.redraw();
  };
  return html`<div class="answers">
    ${choices.map((choice) =>
      form.whyOf === nameOf(choice)
        ? why(ctx, choice, record)
        : html`<button class="answer" type="button" ?disabled=${busy} @click=${() => tap(choice)}>${choice.words}</button>`,
    )}
  </div>`;
}

/** One sensor and one place. @param {PlaceChoice} choice */
const nameOf = (choice) => `${choice.events[0].data.unit}/${choice.words}`;

/**
 * @param {import('./context.js').Context} ctx
 * @param {PlaceChoice} choice
 * @param {(events: PlaceChoice['events']) => unknown} record
 */
function why(ctx, choice, record) {
  const { form, busy } = ctx;
  const save = () => {
    const note = (form.why ?? '').trim();
    form.whyAsked = !note;
    if (!note) return ctx.redraw();
    return record(
      choice.events.map((draft) => (draft.kind === 'unit_moved' ? draftsWith([draft], { note })[0] : draft)),
    );
  };
  return html`<section class="panel panel-ask">
    ${textField(ctx, 'why', say('steps-bad-why'), { fault: form.whyAsked ? say('steps-bad-fault') : '' })}
    <button class="answer" type="button" ?disabled=${busy} @click=${save}>${choice.words}</button>
  </section>`;
}
