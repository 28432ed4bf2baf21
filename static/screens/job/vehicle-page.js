// @ts-check
/**
 * A vehicle: its board, what sits where since when and what was found there, its jobs, and the warranty.
 */

import { html, nothing } from 'lit-html';

import { board } from '../../shapes/board.js';
import { code } from '../../shapes/code.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { correctLink } from '../frame/correct-link.js';
import { textField } from '../frame/field.js';
import { part, rows } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { sentenceCase } from '../frame/sentence-case.js';
import { sentence } from '../frame/sentence.js';
import { dayOnPaper } from '../frame/when.js';

/** @typedef {import('../../core/views.js').VehicleFound} VehicleFound */
/** @typedef {import('../../core/views.js').VehicleJob} VehicleJob */
/** @typedef {import('../../core/views.js').VehiclePosition} VehiclePosition */

const SETTING = 'warranty_days'; // of this phone, where the yard has none
const MOST_DAYS = 3650;

export const vehiclePage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  async load({ core, device }, { vehicle }) {
    const yard = (await device.setting('yard_warranty_days')) ?? 0;
    const days = yard || ((await device.setting(SETTING)) ?? 0);
    return { yard, days, told: await core.call('vehicle', { vehicle, now: Date.now(), warranty_days: days }) };
  },

  /** @param {Record<string, string>} params */
  formKey: ({ vehicle }) => `vehicle/${vehicle}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { told } = ctx.data;
    return {
      title: told.name,
      titled: true,
      back: to.jobs(),
      body: html`
        ${told.vin ? html`<p class="soft">${say('job-vehicle-vin')} ${told.vin}</p>` : nothing}
        ${part(() => board(told.board, { quiet: true }))}
        <section>
          <h2>${say('job-vehicle-now')}</h2>
          <ul class="list vehicle-now">
            ${rows(told.positions, positionRow)}
          </ul>
        </section>
        ${told.elsewhere.length
          ? html`<section>
              <h2>${say('job-vehicle-elsewhere')}</h2>
              ${told.elsewhere.map(foundLine)}
            </section>`
          : nothing}
        <section>
          <h2>${say('job-vehicle-jobs')}</h2>
          <ul class="list vehicle-jobs">
            ${rows(told.jobs, jobRow, ({ id }) => to.job(id))}
          </ul>
        </section>
        ${told.jobs.length ? correctLink(to.correct(told.jobs[0].id, `vehicle:${told.id}`)) : nothing} ${warranty(ctx)}
      `,
    };
  },
};

/** @param {VehiclePosition} position */
function positionRow({ name, unit, shown, words, since, found }) {
  const told = html`<span class="list-main">
    <span class="list-title">${sentenceCase(name)}</span>
    <span class="list-note">
      ${shown ? code(shown, { size: 'plain' }) : words}${unit
        ? html`, ${since ? say('job-vehicle-since', { day: dayOnPaper(since) }) : say('job-vehicle-first')}`
        : nothing}
    </span>
    ${found.map(({ at, sentence: said }) => html`<span class="list-note">${onDay(at, said)}</span>`)}
  </span>`;
  if (!unit) return html`<li class="list-row">${told}</li>`;
  return html`<li>
    <a class="list-row" href=${linkTo(to.unit(unit))}>${told}<span class="list-end">${icon('forward')}</span></a>
  </li>`;
}

/** @param {VehicleFound} found */
function foundLine({ at, sentence: said }) {
  return html`<p>${onDay(at, said)}</p>`;
}

/** @param {number} at @param {string} said */
function onDay(at, said) {
  return sentence(say('job-vehicle-on', { day: dayOnPaper(at), said }));
}

/** @param {VehicleJob} job */
function jobRow({ id, at, complaint, sentence: said, warranty: covered }) {
  return html`<li>
    <a class="list-row" href=${linkTo(to.job(id))}>
      <span class="list-main">
        <span class="list-title">${dayOnPaper(at)}</span>
        ${complaint ? html`<span class="list-note">${sentenceCase(complaint)}</span>` : nothing}
        <span class="list-note">${sentence(said)}</span>
        ${covered ? html`<span class="list-note">${sentence(covered)}</span>` : nothing}
      </span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}

/** How long the yard answers for its work. @param {import('../frame/context.js').Context} ctx */
function warranty(ctx) {
  const { form, data, services } = ctx;
  if (data.yard) return html`<p>${say('job-vehicle-warranty-yard', { days: data.yard })}</p>`;
  const typed = (form.days ?? String(data.days || '')).trim();
  const wrong = !/^\d{0,4}$/.test(typed) || Number(typed) > MOST_DAYS;
  const save = async () => {
    await services.device.saveSetting(SETTING, Number(typed));
    ctx.forget();
    ctx.reload();
  };
  return html`<section class="screen-stack">
    ${textField(ctx, 'days', say('job-vehicle-warranty-days'), {
      digits: true,
      most: 4,
      initial: String(data.days || ''),
      fault: wrong ? say('job-vehicle-warranty-fault') : '',
    })}
    <div class="card-actions">
      <button class="small-button" type="button" ?disabled=${wrong || Number(typed) === data.days} @click=${save}>
        ${say('job-vehicle-warranty-save')}
      </button>
    </div>
  </section>`;
}
