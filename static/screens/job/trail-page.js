// @ts-check
/**
 * The trail of a job, large, with the sentence it stands for, the key to its shapes, and what carries it.
 */

import { html, nothing } from 'lit-html';

import { markKey } from '../../shapes/marks.js';
import { showNewest, trail } from '../../shapes/trail.js';
import { say } from '../../words/words.js';
import { correctLines } from '../frame/correct-link.js';
import { evidence } from './evidence.js';
import { jobQuestion, loadJob } from './job-data.js';
import { mounted } from '../frame/mount.js';
import { to } from '../frame/router.js';
import { verdictCard } from './verdict-card.js';

/** @typedef {import('../../core/views.js').EvidenceView} EvidenceView */
/** @typedef {import('../../core/views.js').JobView} JobView */

export const trailPage = {
  asks: jobQuestion,

  /**
   * What carries the verdict takes about as long as the reasoning itself, so only this page asks for it.
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  async load(services, params) {
    const view = await loadJob(services, params);
    return { ...view, evidence: await services.core.call('evidence', { job: params.job }) };
  },

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const view = ctx.data;
    return {
      title: say('job-link-trail'),
      titled: true,
      back: to.job(view.id),
      stages: view.stages,
      body: view.trail.tests.length ? told(view) : noneYet(view.sort),
      main: { words: view.closed ? say('job-back') : say('job-go-on'), run: () => ctx.go(to.job(view.id)) },
    };
  },
};

/** @param {JobView & {evidence: EvidenceView}} view */
function told(view) {
  const marks = new Set(view.trail.lines.flatMap((line) =>
    line.points.filter((point) => point.position !== null).map((point) => point.mark)));
  return html`
    ${verdictCard(view, { causes: true })}
    <div class="trail-whole" ${mounted(`trail ${view.trail.tests.length}`, (host) => showNewest(host.parentElement ?? host))}></div>
    ${trail(view.trail)}
    <section class="trail-key" aria-label=${say('job-trail-key')}>
      ${markKey([...marks])}
      <p class="trail-key-line"><span class="key-line key-line-suspect" aria-hidden="true"></span>${say('job-trail-suspect')}</p>
      <p class="trail-key-line"><span class="key-line key-line-moved" aria-hidden="true"></span>${say('job-trail-moved', { sort: view.sort })}</p>
      ${view.trail.joins.length ? html`<p class="trail-key-line"><span class="key-line key-line-maybe" aria-hidden="true"></span>${say('job-trail-maybe')}</p>` : nothing}
      <p class="trail-key-line"><span class="key-band" aria-hidden="true"></span>${say('job-trail-band')}</p>
    </section>
    ${evidence(view.evidence)}
    <details class="more">
      <summary>${say('job-right-here')}</summary>
      ${correctLines(view.id, view.history.filter(({ about }) => /^(test|reading|repair):/.test(about[0])))}
    </details>
  `;
}

/** @param {string} sort */
function noneYet(sort) {
  return html`<div class="nothing">
    <h2>${say('job-trail-none')}</h2>
    <p>${say('job-trail-none-lead', { sort })}</p>
  </div>`;
}
