// @ts-check
/**
 * Saying where a sensor is: it goes somewhere else, or two places are on record and one is true.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { placeButtons } from '../frame/asks-why.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { settleAnswers, storyCard } from '../frame/stories.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').UnitClaim} UnitClaim */
/** @typedef {import('../../core/views.js').UnitView} UnitView */

/**
 * Handing a sensor that is fitted nowhere to another place.
 * @param {import('../frame/context.js').Context} ctx
 * @param {UnitView} unit
 */
export function otherPlaces(ctx, unit) {
  const { places } = unit.next;
  if (!places.length) return nothing;
  return html`<details class="more">
    <summary>${say('unit-elsewhere-goes')}</summary>
    ${placeButtons(ctx, places, (events) => ctx.act(events, { job: jobOf(unit) }))}
  </details>`;
}

/**
 * Two places are on record. Whoever has the sensor before him says which is true; only a scan shows that
 * it is this one.
 * @param {import('../frame/context.js').Context} ctx
 * @param {UnitView} unit
 * @param {string} how
 */
export function dispute(ctx, unit, how) {
  const { settle } = unit;
  if (settle) {
    const shown = html`<h2>${sentence(settle.title)}</h2>
      ${storyCard(settle.stories, settle.waits)}`;
    if (how === 'tapped' && unit.code) return html`<section>${shown}</section>`;
    return html`<section>
      ${shown}
      <p>${say('unit-two-places-where')}</p>
      ${settleAnswers(settle.choices, settle.others, ctx)}
    </section>`;
  }
  return html`<section class="panel panel-stop">
    <p class="panel-kicker">${icon('stop')} ${say('unit-two-places')}</p>
    ${how === 'tapped'
      ? html`<p>${say('unit-two-places-scan')}</p>
          <div class="card-actions"><a class="small-button" href=${linkTo(to.find())}>${say('unit-scan-now')}</a></div>`
      : html`<p>${say('unit-two-places-where')}</p>
          ${placeAnswers(ctx, unit, how, unit.claims)}
          <details class="more">
            <summary>${say('unit-somewhere-else')}</summary>
            ${placeAnswers(ctx, unit, how, unit.elsewhere)}
          </details>`}
  </section>`;
}

/**
 * What phones said apart of it outside its places: a tap says what is right.
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../core/views.js').ApartCard} told
 */
export function apart(ctx, { title, text, stories, choices }) {
  return html`<section>
    <h2>${sentence(title)}</h2>
    ${storyCard(stories, '')}
    <p>${sentence(text)}</p>
    ${settleAnswers(choices, [], ctx)}
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {UnitView} unit
 * @param {string} how
 * @param {UnitClaim[]} claims
 */
function placeAnswers(ctx, unit, how, claims) {
  return html`<div class="answers">
    ${claims.map(
      (claim) => html`<button
        class="answer"
        type="button"
        ?disabled=${ctx.busy}
        @click=${() => ctx.act([seen(unit, claim, how)], { job: claim.job ?? unit.job })}
      >
        ${say('unit-claim', { where: claim.words })}
      </button>`,
    )}
  </div>`;
}

/**
 * @param {UnitView} unit
 * @param {{place: string, position: string}} claim
 * @param {string} how
 */
function seen({ id }, { place, position }, how) {
  return { kind: 'unit_seen', data: { unit: id, place, position, how } };
}

/** What is in hand on a job leaves it as part of that job. @param {UnitView} unit */
export function jobOf({ place, job }) {
  return place === 'out' && job ? job : null;
}
