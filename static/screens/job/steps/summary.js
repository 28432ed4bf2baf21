// @ts-check
/**
 * What a job comes to: verdict, what was replaced, proof, where each sensor is. Tests, pictures and history
 * are the links below every job.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../../shapes/code.js';
import { icon } from '../../../shapes/icons.js';
import { say } from '../../../words/words.js';
import { proofCard } from '../proof-card.js';
import { linkTo, to } from '../../frame/router.js';
import { sentence } from '../../frame/sentence.js';
import { verdictCard } from '../verdict-card.js';

/** @typedef {import('../../../core/views.js').CloseStep} CloseStep */
/** @typedef {import('../../../core/views.js').DoneStep} DoneStep */

/** @param {import('./step-context.js').StepContext<DoneStep | CloseStep>} ctx */
export function summary(ctx) {
  const { view } = ctx;
  return html`
    ${verdictCard(view)}
    <details class="more">
    <summary>${say('steps-summary-more')}</summary>
    <div class="screen-stack">
    ${view.replaced.length
      ? html`<section class="card">
          <h2>${say('steps-summary-replaced')}</h2>
          <ul class="sentences">${view.replaced.map((/** @type {string} */ each) => html`<li>${sentence(each)}</li>`)}</ul>
        </section>`
      : nothing}
    ${proofCard(view)} ${whereabouts(view)}
    </div>
    </details>
  `;
}

/** @param {import('../../../core/views.js').JobView} view */
function whereabouts({ units, sort }) {
  if (!units.length) return nothing;
  return html`<section>
    <h2>${say('steps-summary-where', { sort })}</h2>
    <ul class="list">
      ${units.map(
        ({ id, shown, name, where }) =>
          html`<li>
            <a class="list-row" href=${linkTo(to.unit(id))}>
              <span class="list-main">
                <span class="list-title">${shown ? code(shown) : name}</span>
                <span class="list-note">${where}</span>
              </span>
              <span class="list-end">${icon('forward')}</span>
            </a>
          </li>`,
      )}
    </ul>
  </section>`;
}
