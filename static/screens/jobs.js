// @ts-check
/**
 * The list of jobs, open ones first.
 */

import { html } from 'lit-html';

import { to } from './router.js';

export const jobsPage = {
  /** @param {import('./app.js').Services} services */
  load: ({ core }) => core.call('jobs'),
  /** @param {import('./app.js').Context} ctx */
  draw: (ctx) => ({
    title: 'Swaptrail',
    body: html`<div class="list">
      ${ctx.data.map(
        (/** @type {any} */ job) => html`<a class="list-row" href=${`/${to.job(job.id)}`}>
          <span class="list-main"><span class="list-title">${job.title}</span></span>
        </a>`,
      )}
    </div>`,
    main: { words: 'Open a job', run: () => ctx.go(to.newJob()) },
  }),
};
