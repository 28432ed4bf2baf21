// @ts-check
/**
 * What was recorded of one sensor outside any job, each entry to be put right in its place or taken back; what was
 * recorded of it on a job stands in the history of that.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../shapes/code.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { linkTo, to } from '../frame/router.js';
import { entriesByDay } from './history.js';
import { would } from './put-right.js';

export const entriesPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  // The forms of an entry ask for `id`, its job: these are of none.
  load: async ({ core }, { unit }) => ({ id: null, ...(await core.call('beside', { unit })) }),

  /** @param {Record<string, string>} params */
  formKey: ({ unit }) => `entries/${unit}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { unit, shown, jobs, history } = ctx.data;
    return {
      title: say('unit-entries'),
      titled: true,
      back: to.unit(unit),
      body: html`
        <section class="unit-head">${code(shown, { size: 'large', none: say('unit-no-label') })}</section>
        <p class="lead">${history.length ? say('job-history-lead') : say('unit-entries-none')}</p>
        ${ctx.form.told ? would(ctx.form.told) : nothing} ${entriesByDay(ctx, history)}
        ${jobs.length
          ? html`<section>
              <h2>${say('unit-entries-jobs')}</h2>
              <ul class="list">
                ${jobs.map(
                  (/** @type {{id: string, title: string}} */ job) => html`<li>
                    <a class="list-row" href=${linkTo(to.correct(job.id, `unit:${unit}`))}>
                      <span class="list-main">${job.title}</span><span class="list-end">${icon('forward')}</span>
                    </a>
                  </li>`,
                )}
              </ul>
            </section>`
          : nothing}
      `,
    };
  },
};
