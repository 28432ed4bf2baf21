// @ts-check
/**
 * The labels that were printed, batch by batch, and what became of them; the way to print more.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { helpLink } from '../frame/help-link.js';
import { linkTo, to } from '../frame/router.js';
import { day } from '../frame/when.js';
import { press } from './press.js';

/** @typedef {import('../../core/views.js').BatchLine} BatchLine */

export const batchesPage = {
  /** @param {import('../frame/context.js').Services} services */
  load: (services) => press.batches(services),

  /** @param {import('../frame/context.js').Context} ctx */
  draw: (ctx) => ({
    title: 'Labels',
    titled: true,
    back: to.you(),
    body: ctx.data.batches.length
      ? html`<p class="lead">Each printing is a batch. No code is ever printed for a second sensor.</p>
          <ul class="list">
            ${ctx.data.batches.map(batchRow)}
          </ul>`
      : html`<section class="nothing">
          ${icon('ask', { size: 'large' })}
          <h2>No labels were printed yet</h2>
          <p>Print a sheet or a roll, and keep some in the tool bag.</p>
          <p>${helpLink(to.help('labels'), 'Which labels hold')}</p>
        </section>`,
    main: { words: 'Print labels', run: () => ctx.go(to.printLabels()) },
  }),
};

/** @param {BatchLine} batch */
function batchRow({ id, made_at: made, layout, counts, finished }) {
  return html`<li>
    <a class="list-row" href=${linkTo(to.batch(id))}>
      <span class="list-main">
        <span class="list-title">Batch ${id} · ${day(made)}</span>
        <span class="list-note">${countWords(counts)}</span>
        <span class="list-note">${layout}</span>
        ${finished ? nothing : html`<span class="list-note">${icon('ask')} Its file was never finished.</span>`}
      </span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}

/** "50 on paper · 4 on a sensor · 2 void". @param {Record<string, number>} counts */
export function countWords(counts) {
  return ['on paper', 'on a sensor', 'void'].map((state) => `${counts[state]} ${state}`).join(' · ');
}
