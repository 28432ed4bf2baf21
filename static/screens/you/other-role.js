// @ts-check
/**
 * What stands in place of a screen that this phone was not paired for.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { to } from '../frame/router.js';
import { say } from '../../words/words.js';

/** A phone at the counter does no jobs; it may read them. */
export const atBenchPage = {
  load: () => null,
  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { job } = ctx.params;
    return {
      title: say('you-at-bench'),
      back: to.jobs(),
      body: html`<section class="nothing">
        ${icon('counter', { size: 'large' })}
        <h1>${say('you-is-at-counter')}</h1>
        <p>${say('you-at-bench-note')} ${job ? say('you-at-bench-read') : ''}</p>
      </section>`,
      main: job
        ? { words: say('you-read-trail'), run: () => ctx.go(to.jobPart(job, 'trail')) }
        : { words: say('you-to-counter'), run: () => ctx.go(to.jobs()) },
      second: job ? { words: say('you-its-history'), run: () => ctx.go(to.jobPart(job, 'history')) } : null,
    };
  },
};

/** A phone at the bench decides no returns. */
export const atCounterPage = {
  load: () => null,
  /** @param {import('../frame/context.js').Context} ctx */
  draw: (ctx) => ({
    title: say('you-at-counter'),
    back: to.jobs(),
    body: html`<section class="nothing">
      ${icon('car', { size: 'large' })}
      <h1>${say('you-is-at-bench')}</h1>
      <p>${say('you-at-counter-note')}</p>
    </section>`,
    main: { words: say('frame-show-jobs'), run: () => ctx.go(to.jobs()) },
  }),
};
