// @ts-check
/**
 * Printing labels: how many of them, a look at the result, and a warning where it will be hard to read.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { textField } from '../frame/field.js';
import { to } from '../frame/router.js';
import { forgetPlans, planOf } from './plan.js';
import { press } from './press.js';
import { check, choice, isRoll, optionFields, optionsOf } from './print-options.js';

const ROLL_FULL = '50'; // labels, when nobody says how many

/** What was said against making them. */
let problem = '';
let making = false;

export const printPage = {
  load: forgetPlans,

  formKey: () => 'print-labels',

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { form } = ctx;
    const { plan, fault, mayForce } = planOf(ctx, optionsOf(form)) ?? { plan: null, fault: '', mayForce: form.force };
    const typed = (form.count ?? '').trim();
    const count = Number(typed || (isRoll(form) ? ROLL_FULL : (plan?.a_page ?? 0)));
    const good = Number.isInteger(count) && count >= 1 && count <= (plan?.most ?? 0);
    return {
      title: say('labels-print'),
      titled: true,
      back: to.labels(),
      body: html`
        ${optionFields(ctx)}
        ${textField(ctx, 'count', say('labels-how-many'), {
          note: isRoll(form) ? say('labels-how-many-roll', { count: Number(ROLL_FULL) }) : say('labels-how-many-sheet'),
          most: 4,
          digits: true,
          fault: plan && !good ? say('labels-how-many-fault', { typed, most: plan.most }) : '',
        })}
        ${press.formats.length ? choice(ctx, 'format', say('labels-format'), press.formats, 'pdf') : nothing}
        ${mayForce || form.force ? check(ctx, 'force', say('labels-force')) : nothing} ${outcome(plan, fault, ctx)}
        ${problem ? html`<p class="field-fault" role="alert">${problem}</p>` : nothing}
      `,
      main: {
        words: good && plan ? say('labels-make', { count }) : say('labels-make-none'),
        disabled: making || !plan || !good,
        run: () => make(ctx, count),
      },
    };
  },
};

/**
 * @param {import('./plan.js').Plan | null} plan
 * @param {string} fault
 * @param {import('../frame/context.js').Context} ctx
 */
function outcome(plan, fault, ctx) {
  if (fault) {
    return html`<section class="panel panel-ask" role="alert">
      <p class="panel-kicker">${icon('ask')} ${say('labels-fault')}</p>
      <p>${fault}</p>
      <div class="card-actions">
        <button class="small-button" type="button" @click=${() => ctx.reload()}>${say('labels-ask-again')}</button>
      </div>
    </section>`;
  }
  if (!plan) return html`<p class="soft" role="status">${say('labels-looking')}</p>`;
  const { one, page } = press.preview(optionsOf(ctx.form), plan);
  return html`
    ${plan.warnings.length
      ? html`<section class="panel panel-ask" role="alert">
          <p class="panel-kicker">${icon('ask')} ${say('labels-hard-to-read')}</p>
          ${plan.warnings.map((warning) => html`<p>${warning}</p>`)}
          <p class="soft">${plan.rule}</p>
        </section>`
      : nothing}
    <section class="screen-stack">
      <h2>${say('labels-outcome')}</h2>
      <p>${plan.summary}</p>
      <figure class="label-preview label-preview-one">
        ${one}
        <figcaption>${say('labels-outcome-one')}</figcaption>
      </figure>
      ${plan.a_page > 1
        ? html`<figure class="label-preview">
            ${page}
            <figcaption>${say('labels-outcome-sheet', { count: plan.a_page })}</figcaption>
          </figure>`
        : nothing}
    </section>
  `;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {number} count
 */
async function make(ctx, count) {
  problem = '';
  making = true;
  ctx.redraw();
  try {
    const made = await press.make(ctx, count, optionsOf(ctx.form), ctx.form.format ?? 'pdf');
    problem = made.problem ?? '';
    if (made.batch) ctx.go(to.batch(made.batch));
  } finally {
    making = false;
    ctx.redraw();
  }
}
