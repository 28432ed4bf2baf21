// @ts-check
/**
 * What a rule said against recording something: what is wrong, what to do, and the way past it where
 * there is one.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { typedField } from './field.js';
import { sentence } from './sentence.js';
import { say } from '../../words/words.js';

/** What is typed as a reason, as long as this refusal stands. @type {WeakMap<object, string>} */
const reasons = new WeakMap();

/** @param {import('./context.js').Context} ctx */
export function refusalPanel(ctx) {
  const standing = ctx.refusal;
  if (!standing) return nothing;
  const { refusal, close } = standing;
  return html`
    <section class="panel panel-stop refusal" role="alert">
      <p class="panel-kicker">${icon('stop')} ${say('frame-refused')}</p>
      <h2>${refusal.title}</h2>
      <p>${sentence(refusal.sentence)}</p>
      <p>${sentence(refusal.do)}</p>
      ${refusal.override ? overrideForm(ctx, standing) : nothing}
      <div class="card-actions">
        <button class="small-button" type="button" @click=${close}>
          ${refusal.override ? say('frame-refused-leave') : say('frame-refused-understood')}
        </button>
      </div>
    </section>
  `;
}

/**
 * @param {import('./context.js').Context} ctx
 * @param {import('./recorder.js').StandingRefusal} standing
 */
function overrideForm(ctx, standing) {
  const reason = reasons.get(standing) ?? '';
  return html`
    ${typedField(say('frame-refused-reason'), reason, (typed) => {
      reasons.set(standing, typed);
      ctx.redraw();
    })}
    <button
      class="small-button"
      type="button"
      ?disabled=${!reason.trim() || ctx.busy}
      @click=${() => standing.override(reason.trim())}
    >
      ${say('frame-refused-override')}
    </button>
  `;
}
