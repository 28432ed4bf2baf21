// @ts-check
/**
 * What the tests say, in one sentence and how sure that is; then what else it could be and what carries it.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { trailSmall } from '../../shapes/trail.js';
import { say } from '../../words/words.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';

/** @typedef {import('../../core/views.js').JobView} JobView */
/** @typedef {import('../../core/views.js').Reasoning} Reasoning */

/**
 * @param {JobView} view  the job's view
 * @param {{causes?: boolean}} [options]  with every cause and its chance; what carries it then stands elsewhere
 */
export function verdictCard(view, { causes = false } = {}) {
  const { reasoning } = view;
  if (!reasoning?.sentence) return nothing;
  const settled = reasoning.verdict !== null || reasoning.settled;
  if (!settled && !causes) return soFar(reasoning);
  // The figures behind the words, to the last digit, for whoever compares two phones.
  return html`<section
    class="verdict"
    data-settled=${settled ? 'yes' : 'no'}
    data-probability=${reasoning.probability ?? ''}
    data-clear=${reasoning.clear}
  >
    <h2 class="verdict-sentence">${sentence(reasoning.sentence)}</h2>
    ${reasoning.detail ? html`<p class="verdict-detail">${sentence(reasoning.detail)}</p>` : nothing}
    ${view.trail.tests.length > 1 && !causes ? smallTrail(view) : nothing}
    ${view.closed ? nothing : holds(reasoning)} ${causes ? nothing : inShort(reasoning)} ${aside(reasoning.aside)}
    ${causes ? causesList(reasoning.causes) : nothing}
  </section>`;
}

/**
 * While nothing is settled the next move is what matters; the standing is two lines beside it.
 * @param {Reasoning} reasoning
 */
function soFar(reasoning) {
  const { sentence: standing, detail, aside: notes } = reasoning;
  return html`<section class="verdict" data-settled="no">
    <p><strong>${sentence(standing)}</strong> ${sentence(detail)}</p>
    ${holds(reasoning)} ${aside(notes)}
  </section>`;
}

/**
 * The trail small; it opens whole.
 * @param {JobView} view
 */
function smallTrail({ id, trail }) {
  return html`<a class="verdict-trail" href=${linkTo(to.jobPart(id, 'trail'))} aria-label=${say('job-link-trail')}>${trailSmall(trail)}</a>`;
}

/** @param {Reasoning} reasoning */
function holds({ holds_words: words }) {
  return words ? html`<p class="verdict-holds">${sentence(words)}</p>` : nothing;
}

/** @param {Reasoning} reasoning */
function inShort({ else_words: other, past_words: past, carries_words: carries }) {
  if (!other && !carries) return nothing;
  return html`<details class="more"><summary>${say('job-verdict-why')}</summary><dl class="verdict-why">
    ${other ? html`<dt>${say('job-evidence-other')}</dt><dd>${sentence(other)}</dd>` : nothing}
    ${past ? html`<dt>${say('job-verdict-past')}</dt><dd>${sentence(past)}</dd>` : nothing}
    ${carries ? html`<dt>${say('job-verdict-rests')}</dt><dd>${sentence(carries)}</dd>` : nothing}
  </dl></details>`;
}

/** @param {string[]} notes */
function aside(notes) {
  if (!notes.length) return nothing;
  return html`<ul class="panel panel-ask verdict-aside">
    ${notes.map((note) => html`<li>${icon('ask')}<span>${sentence(note)}</span></li>`)}
  </ul>`;
}

/** @param {Array<{cause: string, words: string, probability_words: string}>} causes */
function causesList(causes) {
  if (!causes.length) return nothing;
  return html`<details class="more">
    <summary>${say('job-verdict-causes')}</summary>
    <ul class="causes">
      ${causes.map(
        ({ words, probability_words: chance }) =>
          html`<li class="cause">
            <span class="cause-name">${sentence(words)}</span>
            <span class="cause-chance">${chance}</span>
          </li>`,
      )}
    </ul>
  </details>`;
}
