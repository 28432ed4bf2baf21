// @ts-check
/**
 * The end of a job: what still stands against closing it, or what it comes to.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../../shapes/icons.js';
import { say } from '../../../words/words.js';
import { textField } from '../../frame/field.js';
import { linkTo, to } from '../../frame/router.js';
import { sentence } from '../../frame/sentence.js';
import { draftsWith } from '../../frame/drafts-with.js';
import { summary } from './summary.js';

/** @typedef {import('../../../core/views.js').CloseStep} CloseStep */

/** @param {import('./step-context.js').StepContext<CloseStep>} ctx */
export function closeStep(ctx) {
  const { view, step, form } = ctx;
  const { blockers } = view.close;
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
  const note = (form.note ?? '').trim();
  return {
    body: html`
      ${summary(ctx)}
      ${textField(ctx, 'note', say('steps-close-note'), { lines: 2, most: 500 })}
    `,
    main: { words: step.action.words, run: () => ctx.act(draftsWith(step.action.events, note ? { note } : {})) },
    second: null,
  };
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
