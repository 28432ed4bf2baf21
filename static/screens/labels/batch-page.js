// @ts-check
/**
 * One batch of labels: which are still on paper, which are on a sensor, which are void. What is on paper
 * can be printed once more, or taken out of use.
 */

import { html, nothing } from 'lit-html';

import { HAS_SERVER } from '../../place.js';
import { code } from '../../shapes/code.js';
import { say } from '../../words/words.js';
import { textField } from '../frame/field.js';
import { part, rows } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { countWords } from './batches-page.js';
import { press } from './press.js';

/** @typedef {import('../../core/views.js').BatchLabel} BatchLabel */
/** @typedef {import('../../core/views.js').BatchView} BatchView */

const STATES = /** @type {const} */ (['on paper', 'on a sensor', 'void']);

/** What was said against the last wish. */
let problem = '';

export const batchPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  load: (services, { batch }) => press.batch(services, Number(batch)),

  /** @param {Record<string, string>} params */
  formKey: ({ batch }) => `batch/${batch}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    /** @type {BatchView} */
    const { id, layout, labels } = ctx.data;
    /** @type {Record<string, BatchLabel[]>} */
    const by = Object.fromEntries(STATES.map((state) => [state, labels.filter((each) => each.state === state)]));
    const counts = Object.fromEntries(STATES.map((state) => [state, by[state].length]));
    const { told, main } = press.made(ctx, id);
    return {
      title: say('labels-batch-title', { number: `${id}` }),
      back: to.labels(),
      body: html`
        <h1>${countWords(counts)}</h1>
        <p class="lead">${layout}</p>
        ${problem ? html`<p class="field-fault" role="alert">${problem}</p>` : nothing} ${told}
        ${by['on paper'].length
          ? html`${part(() => printAgain(ctx, by['on paper']))} ${part(() => takeOut(ctx, by['on paper']))}`
          : nothing}
        ${by['on a sensor'].length ? part(() => onSensors(by['on a sensor'])) : nothing}
        ${by.void.length ? part(() => outOfUse(by.void)) : nothing}
      `,
      main: main ?? { words: say('labels-batch-new'), run: () => ctx.go(to.printLabels()) },
      second: { words: say('labels-batch-all'), run: () => ctx.go(to.labels()) },
    };
  },
};

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Promise<{problem?: string}> | undefined} wish
 */
async function done(ctx, wish) {
  problem = (await wish)?.problem ?? '';
  if (!problem) ctx.forget();
  await ctx.reload();
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {BatchLabel[]} free
 */
function printAgain(ctx, free) {
  return html`<details class="more">
    <summary>${say('labels-again')}</summary>
    <div class="screen-stack">
      <p>
        ${say('labels-again-lead', { count: free.length })} ${HAS_SERVER ? say('labels-again-unsent') : nothing}
      </p>
      <button class="small-button" type="button" @click=${() => done(ctx, press.again(ctx))}>
        ${say('labels-again-button', { count: free.length })}
      </button>
    </div>
  </details>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {BatchLabel[]} free
 */
function takeOut(ctx, free) {
  const { form } = ctx;
  /** @type {string[]} */
  const chosen = (form.chosen ?? []).filter((/** @type {string} */ each) => free.some((label) => label.code === each));
  const reason = (form.reason ?? '').trim();
  const count = chosen.length || free.length;
  const take = () => {
    form.reasonAsked = !reason;
    if (!reason) return ctx.redraw();
    return done(ctx, press.takeOut(ctx, chosen, reason));
  };
  return html`<details class="more" ?open=${form.reason !== undefined || chosen.length > 0}>
    <summary>${say('labels-gone')}</summary>
    <div class="screen-stack">
      <p>${say('labels-gone-lead', { count: free.length })}</p>
      <div class="label-choices" role="group" aria-label=${say('labels-gone-group')}>
        ${free.map(
          ({ code: each, shown }) => html`<label class="choice">
            <input
              type="checkbox"
              .checked=${chosen.includes(each)}
              @change=${() => {
                form.chosen = chosen.includes(each) ? chosen.filter((other) => other !== each) : [...chosen, each];
                ctx.redraw();
              }}
            />
            <span class="choice-word">${code(shown, { size: 'plain' })}</span>
          </label>`,
        )}
      </div>
      ${textField(ctx, 'reason', say('labels-gone-reason'), {
        most: 200,
        fault: form.reasonAsked ? say('labels-gone-reason-fault') : '',
      })}
      <button class="small-button" type="button" @click=${take}>
        ${say('labels-gone-button', { count })}
      </button>
    </div>
  </details>`;
}

/** @param {BatchLabel[]} labels */
function onSensors(labels) {
  return html`<section>
    <h2>${say('labels-on-sensor')}</h2>
    <ul class="list">
      ${rows(
        labels,
        ({ shown, unit }) => html`<li><a class="list-row" href=${linkTo(to.unit(unit ?? ''))}>${code(shown)}</a></li>`,
      )}
    </ul>
  </section>`;
}

/** @param {BatchLabel[]} labels */
function outOfUse(labels) {
  return html`<section>
    <h2>${say('labels-void')}</h2>
    <ul class="list">
      ${rows(
        labels,
        ({ shown, unit, reason }) => html`<li>
          ${unit
            ? html`<a class="list-row" href=${linkTo(to.unit(unit ?? ''))}
                >${code(shown)}<span class="list-main"><span class="list-note">${say('labels-void-was-on')}</span></span></a
              >`
            : html`<span class="list-row"
                >${code(shown)}<span class="list-main"><span class="list-note">${reason}</span></span></span
              >`}
        </li>`,
      )}
    </ul>
  </section>`;
}
