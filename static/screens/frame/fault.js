// @ts-check
/**
 * The screens for an address that leads nowhere, and for a screen that could not be read.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { to } from './router.js';
import { say } from '../../words/words.js';

export const nowherePage = {
  load: () => null,
  /** @param {import('./context.js').Context} ctx */
  draw: (ctx) => ({
    title: say('frame-nowhere'),
    back: to.jobs(),
    body: html`<section class="nothing">${icon('ask', { size: 'large' })}
      <h1>${say('frame-nowhere-heading')}</h1>
      <p>${say('frame-nowhere-do')}</p></section>`,
    main: { words: say('frame-show-jobs'), run: () => ctx.go(to.jobs()) },
  }),
};

export const faultPage = {
  load: () => null,
  /** @param {import('./context.js').Context} ctx  its data is the error */
  draw: (ctx) => ({
    title: say('frame-not-found'),
    titled: true,
    back: to.jobs(),
    body: html`<section class="panel panel-ask" role="alert">
      <p class="panel-kicker">${icon('ask')} ${say('frame-not-shown')}</p>
      <p>${ctx.data?.message ?? String(ctx.data)}</p>
      <p>${say('frame-nothing-lost')}</p>
    </section>`,
    main: { words: say('frame-try-again'), run: () => ctx.reload() },
    second: { words: say('frame-the-jobs'), run: () => ctx.go(to.jobs()) },
  }),
};
