// @ts-check
/**
 * What stands in place of a screen that this phone was not paired for.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { to } from '../frame/router.js';

/** A phone at the counter does no jobs; it may read them. */
export const atBenchPage = {
  load: () => null,
  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { job } = ctx.params;
    return {
      title: 'Done at the bench',
      back: to.jobs(),
      body: html`<section class="nothing">
        ${icon('counter', { size: 'large' })}
        <h1>This phone is at the parts counter</h1>
        <p>Jobs are done and labels are made on phones at the bench. ${job ? 'What is on record of this one can be read here.' : ''}</p>
      </section>`,
      main: job
        ? { words: 'Read its trail', run: () => ctx.go(to.jobPart(job, 'trail')) }
        : { words: 'To the counter', run: () => ctx.go(to.jobs()) },
      second: job ? { words: 'Its history', run: () => ctx.go(to.jobPart(job, 'history')) } : null,
    };
  },
};

/** A phone at the bench decides no returns. */
export const atCounterPage = {
  load: () => null,
  /** @param {import('../frame/context.js').Context} ctx */
  draw: (ctx) => ({
    title: 'Decided at the counter',
    back: to.jobs(),
    body: html`<section class="nothing">
      ${icon('car', { size: 'large' })}
      <h1>This phone is at the bench</h1>
      <p>Returns are decided on phones that are paired for the parts counter.</p>
    </section>`,
    main: { words: 'Show the jobs', run: () => ctx.go(to.jobs()) },
  }),
};
