// @ts-check
/**
 * The screens for an address that leads nowhere, and for a screen that could not be read.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { to } from './router.js';

export const nowherePage = {
  load: () => null,
  /** @param {import('./context.js').Context} ctx */
  draw: (ctx) => ({
    title: 'No such screen',
    back: to.jobs(),
    body: html`<section class="nothing">${icon('ask', { size: 'large' })}
      <h1>This address leads nowhere</h1>
      <p>Go back to the list of jobs.</p></section>`,
    main: { words: 'Show the jobs', run: () => ctx.go(to.jobs()) },
  }),
};

export const faultPage = {
  load: () => null,
  /** @param {import('./context.js').Context} ctx  its data is the error */
  draw: (ctx) => ({
    title: 'Not found',
    titled: true,
    back: to.jobs(),
    body: html`<section class="panel panel-ask" role="alert">
      <p class="panel-kicker">${icon('ask')} This could not be shown</p>
      <p>${ctx.data?.message ?? String(ctx.data)}</p>
      <p>Nothing that was recorded is lost.</p>
    </section>`,
    main: { words: 'Try again', run: () => ctx.reload() },
    second: { words: 'The jobs', run: () => ctx.go(to.jobs()) },
  }),
};
