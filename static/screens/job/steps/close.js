// @ts-check
/**
 * The end of a job: what still stands against closing it, or what it comes to.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../../shapes/code.js';
import { icon } from '../../../shapes/icons.js';
import { say } from '../../../words/words.js';
import { placeButtons } from '../../frame/asks-why.js';
import { textField } from '../../frame/field.js';
import { linkTo, to } from '../../frame/router.js';
import { sentence } from '../../frame/sentence.js';
import { summary } from './summary.js';

/** @typedef {import('../../../core/views.js').CloseStep} CloseStep */

/** @param {import('./step-context.js').StepContext<CloseStep>} ctx */
export function closeStep(ctx) {
  const { view, step } = ctx;
  const { blockers } = view.close;
  if (step.choices.length) return lastPlace(ctx);
  if (step.id === 'home') return { body: noteField(ctx), main: closing(ctx, step.action), second: undefined };
  if (blockers.length || !step.action) {
    return {
      bare: true,
      body: html`<h1>${step.title}</h1>
        <section class="panel panel-ask">
          <p class="panel-kicker">${icon('ask')}<span>${say('steps-close-blocked')}</span></p>
          <ul class="blockers">${blockers.map((/** @type {string} */ each) => html`<li>${sentence(each)}</li>`)}</ul>
        </section>
        ${unsettled(ctx)}`,
      main: null,
      second: { words: say('steps-close-history'), run: () => ctx.go(to.jobPart(ctx.job, 'history')) },
    };
  }
  return { body: html`${summary(ctx)} ${noteField(ctx)}`, main: closing(ctx, step.action), second: null };
}

/**
 * One sensor is still in the hand: its place is one tap, and that closes the job.
 * @param {import('./step-context.js').StepContext<CloseStep>} ctx
 */
function lastPlace(ctx) {
  const { view, step } = ctx;
  const unit = view.out.find((each) => each.id === step.expects.unit);
  return {
    body: html`${unit?.shown ? html`<p class="wanted">${code(unit.shown, { size: 'large' })}</p>` : nothing}
      ${placeButtons(ctx, step.choices, (events) => closing(ctx, { words: '', events })?.run())}
      ${noteField(ctx)}`,
    main: null,
    second: undefined,
  };
}

/** @param {import('./step-context.js').StepContext<CloseStep>} ctx */
function noteField(ctx) {
  return html`<details class="more" ?open=${Boolean(ctx.form.note)}>
    <summary>${say('steps-close-add-note')}</summary>
    ${textField(ctx, 'note', say('steps-close-note'), { lines: 2, most: 500 })}
  </details>`;
}

/**
 * The button that closes; the last word goes with the closing.
 * @param {import('./step-context.js').StepContext<CloseStep>} ctx
 * @param {import('../../../core/views.js').Action | null} action
 */
function closing(ctx, action) {
  if (!action) return null;
  const note = (ctx.form.note ?? '').trim();
  const drafts = action.events.map((draft) => (note && draft.kind === 'job_closed' ? { ...draft, data: { ...draft.data, note } } : draft));
  return { words: action.words, run: () => ctx.act(drafts) };
}

/**
 * The sensors the blockers speak of, each a way to where it can be settled.
 * @param {import('./step-context.js').StepContext<CloseStep>} ctx
 */
function unsettled({ view }) {
  const units = [...view.out, ...view.disputes];
  if (!units.length) return nothing;
  return html`<ul class="list">
    ${units.map(
      ({ id, name, where }) =>
        html`<li>
          <a class="list-row" href=${linkTo(to.unit(id))}>
            <span class="list-main">
              <span class="list-title">${sentence(name)}</span>
              <span class="list-note">${where}</span>
            </span>
            <span class="list-end">${icon('forward')}</span>
          </a>
        </li>`,
    )}
  </ul>`;
}
