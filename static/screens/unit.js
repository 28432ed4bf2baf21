// @ts-check
/**
 * One sensor: where it is, how it got there and how it was identified each time, and what it read.
 */

import { html, nothing } from 'lit-html';

import { code } from '../shapes/code.js';
import { icon } from '../shapes/icons.js';
import { mark } from '../shapes/marks.js';
import { fileLink } from './file-link.js';
import { partFacts } from './part-facts.js';
import { picture } from './picture.js';
import { to } from './router.js';
import { sentenceCase } from './sentence-case.js';
import { sentence } from './sentence.js';
import { labelTrouble, printedOn } from './unit-care.js';
import { day, dayAndTime } from './when.js';

const WHAT = {
  fitted: 'fitted',
  out: 'taken in hand',
  stock: 'put into stock',
  counter: 'to the parts counter',
  customer: 'to the customer',
  scrapped: 'scrapped',
  labelled: 'labelled',
  'label void': 'label void',
  disputed: 'two places on record',
  mixed: 'got mixed up',
  'told apart': 'told apart',
};

const HOW = { scanned: 'scanned', typed: 'code typed', tapped: 'no scan', written: 'code written by hand' };

const PLACES = [
  { id: 'stock', words: 'Into my stock' },
  { id: 'counter', words: 'To the parts counter' },
  { id: 'customer', words: 'The customer keeps it' },
  { id: 'scrapped', words: 'Scrapped' },
];

export const unitPage = {
  /**
   * @param {import('./app.js').Services} services
   * @param {Record<string, string>} params
   */
  load: ({ core }, { unit }) => core.call('unit', { unit }),

  /** @param {Record<string, string>} params */
  formKey: ({ unit }) => `unit/${unit}`,

  /** @param {import('./app.js').Context} ctx */
  draw: (ctx) => unitParts(ctx, ctx.data, 'tapped'),
};

/**
 * @param {import('./app.js').Context} ctx
 * @param {any} unit
 * @param {string} how   how it was identified when this screen was reached
 * @returns {import('./frame.js').Parts}
 */
export function unitParts(ctx, unit, how) {
  const job = unit.jobs[unit.jobs.length - 1];
  const free = !unit.disputed && unit.place !== 'fitted' && unit.place !== 'mixed';
  return {
    title: unit.shown ? `Sensor ${unit.shown}` : 'A sensor without a label',
    back: job ? to.job(job.id) : to.jobs(),
    body: html`
      <section class="unit-head">
        ${code(unit.shown, { size: 'large', none: 'no label yet' })}
        <p class="lead">It is ${sentence(unit.where)}.</p>
      </section>
      ${partFacts(unit)}
      ${unit.lost.map(lost)} ${unit.disputed ? dispute(ctx, unit, how) : nothing} ${elsewhereTold(unit)} ${free ? elsewhere(ctx, unit, how) : nothing}
      ${printedOn(ctx, unit, { job: jobOf(unit) })} ${labelTrouble(ctx, unit, { job: jobOf(unit) })} ${tests(unit)} ${moves(unit)} ${jobs(unit)} ${photos(ctx, unit)}
      ${fileLink(to.unitFile(unit.id))}
    `,
    main: job
      ? { words: 'Go to the job', run: () => ctx.go(to.job(job.id)) }
      : { words: 'Show the jobs', run: () => ctx.go(to.jobs()) },
  };
}

/** Which one it is was not known for a while, or is not known: that stays on its record. @param {any} entry */
export function lost({ at, words }) {
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('ask')} Identity lost</p>
    <p>On ${dayAndTime(at)}, ${words}.</p>
  </section>`;
}

/** What it did on other jobs, and what follows from that. @param {any} unit */
export function elsewhereTold({ history: { sentence: told, source, known } }) {
  return html`<section>
    <h2>What it did elsewhere</h2>
    <p>${sentence(told)}</p>
    ${known ? html`<p class="soft">${source}</p>` : nothing}
  </section>`;
}

/**
 * The jobs, each with the day on which this sensor came into it.
 * @param {any} unit
 */
function jobs({ jobs: all, tests: read, moves: made }) {
  if (!all.length) return nothing;
  return html`<section>
    <h2>Jobs</h2>
    <ul class="list">
      ${all.map((/** @type {{id: string, title: string}} */ { id, title }) => {
        const days = [...read, ...made].filter((each) => each.job === id).map(({ at }) => at);
        return html`<li>
          <a class="list-row" href=${`/${to.job(id)}`}>
            <span class="list-main">
              <span class="list-title">${title}</span>
              ${days.length ? html`<span class="list-note">since ${day(Math.min(...days))}</span>` : nothing}
            </span>
            <span class="list-end">${icon('forward')}</span>
          </a>
        </li>`;
      })}
    </ul>
  </section>`;
}

/** @param {any} unit */
export function tests({ tests: read }) {
  if (!read.length) return nothing;
  return html`<section>
    <h2>Tests</h2>
    <ul class="list">
      ${read.map(
        (/** @type {any} */ test) => html`<li class="list-row">
          <span class="list-main">
            <span class="list-title">Test ${test.n} at ${test.position}</span>
            <span class="list-note">${dayAndTime(test.at)}</span>
          </span>
          <span class="list-end">${mark(test.mark)}</span>
        </li>`,
      )}
    </ul>
  </section>`;
}

/** @param {any} unit */
export function moves({ moves: made }) {
  if (!made.length) return nothing;
  return html`<section>
    <h2>Where it was</h2>
    <ol class="history">
      ${[...made].reverse().map((/** @type {any} */ move) => {
        const what = WHAT[/** @type {keyof typeof WHAT} */ (move.what)] ?? move.what;
        const how = HOW[/** @type {keyof typeof HOW} */ (move.how)] ?? move.how;
        return html`<li class="history-row">
          <span class="history-when">${dayAndTime(move.at)} · ${move.actor || 'no name'}</span>
          <p class="history-what">
            ${sentenceCase(what)}${move.position ? placeWords(move) : ''} (${how})
            ${move.override ? html`<br />Another part number, because: ${move.override}` : nothing}
          </p>
        </li>`;
      })}
    </ol>
  </section>`;
}

/** @param {{what: string, position: string}} move */
function placeWords({ what, position }) {
  return what === 'out' ? ` from ${position}` : ` at ${position}`;
}

/** @param {import('./app.js').Context} ctx @param {any} unit */
export function photos({ services }, unit) {
  if (!unit.photos.length) return nothing;
  return html`<section>
    <h2>Pictures</h2>
    <ul class="photos photos-wide">
      ${unit.photos.map(
        (/** @type {any} */ photo) => html`<li class="photo">
          ${picture(services, photo.sha256, { alt: `Sensor ${unit.shown}` })}
          <span class="photo-words">${dayAndTime(photo.at)}</span>
        </li>`,
      )}
    </ul>
  </section>`;
}

/**
 * Handing a sensor that is fitted nowhere to another place.
 * @param {import('./app.js').Context} ctx
 * @param {any} unit
 * @param {string} how
 */
function elsewhere(ctx, unit, how) {
  return html`<details class="more">
    <summary>It goes somewhere else</summary>
    <div class="answers">
      ${PLACES.filter(({ id }) => id !== unit.place).map(
        ({ id: place, words }) => html`<button
          class="answer"
          type="button"
          ?disabled=${ctx.busy}
          @click=${() =>
            ctx.act([{ kind: 'unit_moved', data: { unit: unit.id, place, how, note: '' } }], { job: jobOf(unit) })}
        >
          ${words}
        </button>`,
      )}
    </div>
  </details>`;
}

/**
 * Two places are on record. Whoever has the sensor before him says which is true; only a scan shows that
 * it is this one.
 * @param {import('./app.js').Context} ctx
 * @param {any} unit
 * @param {string} how
 */
function dispute(ctx, unit, how) {
  return html`<section class="panel panel-stop">
    <p class="panel-kicker">${icon('stop')} Two places are on record</p>
    <p>Until it is settled, its tests count for neither.</p>
    ${how === 'tapped'
      ? html`<p>Scan its label where it really is.</p>
          <div class="card-actions"><a class="small-button" href=${`/${to.find()}`}>Scan it now</a></div>`
      : html`<p>Where is it, now that you have it before you?</p>
          ${placeAnswers(ctx, unit, how, unit.claims)}
          <details class="more">
            <summary>Somewhere else</summary>
            ${placeAnswers(ctx, unit, how, unit.elsewhere)}
          </details>`}
  </section>`;
}

/**
 * @param {import('./app.js').Context} ctx
 * @param {any} unit
 * @param {string} how
 * @param {any[]} claims
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
        ${sentenceCase(claim.words)}
      </button>`,
    )}
  </div>`;
}

/**
 * @param {any} unit
 * @param {{place: string, position: string}} claim
 * @param {string} how
 */
function seen({ id }, { place, position }, how) {
  return { kind: 'unit_seen', data: { unit: id, place, position, how } };
}

/** What is in hand on a job leaves it as part of that job. @param {any} unit */
function jobOf({ place, job }) {
  return place === 'out' && job ? job : null;
}
