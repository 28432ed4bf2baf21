// @ts-check
/**
 * A repair of the wiring, with what was repaired: one of the usual things by a tap, or in one's own words.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../../words/words.js';
import { draftsWith } from '../../frame/drafts-with.js';
import { oneOf } from '../../frame/one-of.js';

/** @typedef {import('../../../core/views.js').Action} Action */

/** What is repaired most often: a tap in place of typing. */
const USUAL = ['steps-repair-pin', 'steps-repair-plug', 'steps-repair-wire'];

/** The steps that end in a repair and ask for nothing else. @param {import('./step-context.js').StepContext} ctx */
export function repairStep(ctx) {
  const { step } = ctx;
  if (!step.action?.events.some(({ kind }) => kind === 'circuit_repaired')) {
    return { body: nothing };
  }
  return { ...repairParts(ctx, step.action), second: undefined };
}

/**
 * The repair as a screen of its own, opened from a check.
 * @param {import('./step-context.js').StepContext} ctx
 * @param {Action} action  records the repair
 * @param {import('../../frame/frame.js').Button} second
 */
export function repairScreen(ctx, action, second) {
  const { body, main } = repairParts(ctx, action);
  const { title } = ctx.step;
  return { bare: true, alone: true, body: html`<p class="kicker">${title}</p>${body}`, main, second };
}

/**
 * @param {import('./step-context.js').StepContext} ctx
 * @param {Action} action
 */
function repairParts(ctx, { words, events }) {
  const { form } = ctx;
  const run = () => {
    const what = (form.what ?? '').trim();
    return ctx.act(what ? draftsWith(events, { what }) : events);
  };
  return {
    body: html`${oneOf({
        name: 'repaired',
        label: say('steps-repair-what'),
        options: USUAL.map((usual) => ({ id: say(usual), words: say(usual) })),
        chosen: form.what,
        pick: (words) => {
          form.what = words;
          ctx.redraw();
        },
      })}
      <label class="field">
      <span class="field-name">${say('steps-repair-what')}</span>
      <textarea
        rows="3"
        maxlength="500"
        .value=${form.what ?? ''}
        @input=${(/** @type {{target: HTMLInputElement}} */ { target }) => {
          form.what = target.value;
          ctx.redraw();
        }}
      ></textarea>
      <span class="field-note">${say('steps-repair-note')}</span>
    </label>`,
    main: { words, run },
  };
}
