// @ts-check
/**
 * The parts of a sensor's page that only tell: tests, custody, labels, returns, pictures, jobs.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../shapes/code.js';
import { icon } from '../../shapes/icons.js';
import { mark } from '../../shapes/marks.js';
import { correctLink, correctMark } from '../frame/correct-link.js';
import { picture, pictureNote } from '../frame/picture.js';
import { rows } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { day, dayAndTime } from '../frame/when.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').Custody} Custody */
/** @typedef {import('../../core/views.js').UnitView} UnitView */

/** Which one it is was not known for a while, or is not known: that stays on its record. @param {UnitView['lost'][number]} entry */
export function lost({ at, words }) {
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('ask')} ${say('unit-lost')}</p>
    <p>${say('unit-lost-when', { moment: dayAndTime(at), what: words })}</p>
  </section>`;
}

/** What it did on other jobs, and what follows from that. @param {UnitView} unit */
export function elsewhereTold({ history: { sentence: told, source, known } }) {
  return html`<section>
    <h2>${say('unit-elsewhere')}</h2>
    <p>${sentence(told)}</p>
    ${known ? html`<p class="soft">${source}</p>` : nothing}
  </section>`;
}

/** @param {UnitView} unit @param {boolean} [corrects]  each line leads to where it is entered anew */
export function tests({ tests: read, tests_words: counted }, corrects = false) {
  return html`<section>
    <h2>${say('unit-tests')}</h2>
    <p>${counted}</p>
    ${read.length
      ? html`<ul class="list">
          ${read.map(
            (test) => {
              const told = html`<span class="list-main">
                  <span class="list-title">${say('unit-test', { number: test.n, position: test.position })}</span>
                  <span class="list-note">${test.vehicle}, ${dayAndTime(test.at)}</span>
                  ${test.why ? html`<span class="list-note">${test.why}</span>` : nothing}
                </span>
                <span class="list-end">${mark(test.mark)} ${corrects ? correctMark() : nothing}</span>`;
              return corrects
                ? html`<li><a class="list-row" href=${linkTo(to.correct(test.job, `test:${test.n}`))}>${told}</a></li>`
                : html`<li class="list-row">${told}</li>`;
            },
          )}
        </ul>`
      : nothing}
  </section>`;
}

/** Who held it, newest first. @param {UnitView} unit @param {boolean} [corrects]  with the way to enter one anew */
export function custody({ id, job: now, jobs: all, custody: entries, custody_words: told }, corrects = false) {
  return html`<section>
    <h2>${say('unit-custody')}</h2>
    <p>${told}</p>
    <ol class="history">
      ${rows(
        [...entries].reverse(),
        (entry) => html`<li class="history-row">
          <span class="history-when">${dayAndTime(entry.at)} · ${entry.actor}</span>
          <p class="history-what">
            ${sentence(entry.sentence)}${entry.how_words ? ` (${entry.how_words})` : ''}
            ${entry.note ? html`<br />${entry.note}` : nothing}
          </p>
        </li>`,
      )}
    </ol>
    ${!corrects
      ? nothing
      : now && all.length === 1
        ? correctLink(to.correct(now, `unit:${id}`))
        : correctLink(to.unitEntries(id))}
  </section>`;
}

/** @param {UnitView} unit */
export function labels({ labels: all }) {
  if (!all.length) return nothing;
  return html`<section>
    <h2>${say('unit-labels')}</h2>
    <ul class="list">
      ${all.map(
        (each) => html`<li class="list-row">
          ${code(each.shown)}
          <span class="list-main">
            <span class="list-title">${each.sentence}</span>
            ${each.at ? html`<span class="list-note">${say('unit-put-on', { moment: dayAndTime(each.at) })}</span>` : nothing}
          </span>
        </li>`,
      )}
    </ul>
  </section>`;
}

/** @param {UnitView} unit */
export function returns({ returns: all }) {
  if (!all.length) return nothing;
  return html`<section>
    <h2>${say('unit-returns')}</h2>
    <ol class="history">
      ${[...all].reverse().map(
        ({ at, actor, received, decision }) => html`<li class="history-row">
          <span class="history-when">${dayAndTime(at)} · ${actor}</span>
          <p class="history-what">${received}</p>
          ${decision
            ? html`<p class="history-what"><strong>${decision.sentence}</strong> ${say('unit-signed', { name: decision.signed, moment: dayAndTime(decision.at) })}</p>`
            : html`<p class="history-what"><strong>${say('unit-undecided')}</strong></p>`}
        </li>`,
      )}
    </ol>
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {UnitView} unit
 * @param {{opens?: boolean}} [options]  opens: a tap shows one large
 */
export function photos({ services }, unit, { opens = false } = {}) {
  if (!unit.photos.length) return nothing;
  return html`<section>
    <h2>${say('unit-pictures')}</h2>
    <ul class="photos photos-wide">
      ${unit.photos.map((photo) => {
        const shown = html`${picture(services, photo.sha256, { alt: photo.words, small: true })}
          <span class="photo-words">${photo.words}<br />${dayAndTime(photo.at)}${pictureNote(services, photo.sha256)}</span>`;
        return opens
          ? html`<li><a class="photo" href=${linkTo(to.photo(photo.job, photo.sha256))}>${shown}</a></li>`
          : html`<li class="photo">${shown}</li>`;
      })}
    </ul>
  </section>`;
}

/** @param {UnitView} unit */
export function jobs({ jobs: all }) {
  if (!all.length) return nothing;
  return html`<section>
    <h2>${say('unit-jobs')}</h2>
    <ul class="list">
      ${rows(
        all,
        ({ id, title, opened_at: opened, sentence: said }) => html`<li>
          <a class="list-row" href=${linkTo(to.job(id))}>
            <span class="list-main">
              <span class="list-title">${title}</span>
              <span class="list-note">${day(opened)}${said ? html`. ${sentence(said)}` : nothing}</span>
            </span>
            <span class="list-end">${icon('forward')}</span>
          </a>
        </li>`,
      )}
    </ul>
  </section>`;
}
