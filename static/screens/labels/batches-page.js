// @ts-check
/**
 * The labels that were printed, batch by batch, and what became of them; the way to print more.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { helpLink } from '../frame/help-link.js';
import { rows } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { day } from '../frame/when.js';
import { press } from './press.js';

/** @typedef {import('../../core/views.js').BatchLine} BatchLine */

export const batchesPage = {
  /** @param {import('../frame/context.js').Services} services */
  load: (services) => press.batches(services),

  /** @param {import('../frame/context.js').Context} ctx */
  draw: (ctx) => ({
    title: say('labels-title'),
    titled: true,
    back: to.you(),
    body: ctx.data.batches.length
      ? html`<p class="lead">${say('labels-lead')}</p>
          <ul class="list">
            ${rows(ctx.data.batches, batchRow, ({ id }) => to.batch(id))}
          </ul>`
      : html`<section class="nothing">
          ${icon('ask', { size: 'large' })}
          <h2>${say('labels-none')}</h2>
          <p>${say('labels-none-lead')}</p>
          <p>${helpLink(to.help('labels'), say('labels-help'))}</p>
        </section>`,
    main: { words: say('labels-print'), run: () => ctx.go(to.printLabels()) },
  }),
};

/** @param {BatchLine} batch */
function batchRow({ id, made_at: made, layout, counts, finished }) {
  return html`<li>
    <a class="list-row" href=${linkTo(to.batch(id))}>
      <span class="list-main">
        <span class="list-title">${say('labels-batch-made', { number: `${id}`, day: day(made) })}</span>
        <span class="list-note">${countWords(counts)}</span>
        <span class="list-note">${layout}</span>
        ${finished ? nothing : html`<span class="list-note">${icon('ask')} ${say('labels-unfinished')}</span>`}
      </span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}

/** "50 on paper · 4 on a sensor · 2 void". @param {Record<string, number>} counts */
export function countWords(counts) {
  return say('labels-counts', { paper: counts['on paper'], sensor: counts['on a sensor'], void: counts.void });
}
