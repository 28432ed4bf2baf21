// @ts-check
/**
 * The sensors that are in hand on a job, and the way to say that some of them got mixed up.
 */

import { html, nothing } from 'lit-html';

import { code } from '../../shapes/code.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { badMark } from '../frame/bad-mark.js';
import { textField } from '../frame/field.js';
import { jobQuestion, loadJob } from './job-data.js';
import { linkTo, to } from '../frame/router.js';
import { sentenceCase } from '../frame/sentence-case.js';
import { sentence } from '../frame/sentence.js';
import { allOf, handForm, mayMix } from './mixing.js';
import { waysLink } from './ways-link.js';

/** @typedef {import('../../core/views.js').JobUnit} JobUnit */
/** @typedef {import('../../core/views.js').JobView} JobView */
/** @typedef {import('../../core/views.js').MixUp} MixUp */

export const handPage = {
  load: loadJob,
  asks: jobQuestion,

  /** @param {Record<string, string>} params */
  formKey: ({ job }) => handForm(job),

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const view = ctx.data;
    const head = { title: say('job-hand-title', { job: view.title }), titled: true, back: to.job(view.id) };
    if (ctx.form.mixing && view.out.length > 1) return { ...head, key: 'mixing', ...mixing(ctx, view) };
    return {
      ...head,
      body: html`
        ${view.mixed.map(mixUp)}
        ${view.out.length
          ? html`<p class="lead">${say('job-hand-lead')}</p>
              <ul class="list">
                ${view.out.map(unitRow)}
              </ul>`
          : html`<div class="nothing"><h2>${say('job-hand-none')}</h2></div>`}
        ${waysLink(view)}
      `,
      main: { words: view.closed ? say('job-back') : say('job-go-on'), run: () => ctx.go(to.job(view.id)) },
      second: mayMix(view) ? { words: say('job-hand-mixed'), run: () => begin(ctx, view) } : null,
    };
  },
};

/** A mix-up that is not settled: what is known, and what would tell them apart. @param {MixUp} each */
function mixUp({ sentence: said, scan_words: scan, test_words: test, who_words: who }) {
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('ask')} ${say('job-hand-mixed-kicker')}</p>
    <p>${sentence(said)}</p>
    ${who ? html`<p>${sentence(who)}</p>` : html`<p>${sentence(scan)} ${sentence(test)}</p>`}
  </section>`;
}

/** @param {JobUnit} unit */
function unitRow({ id, name, shown, came_from: from, bad }) {
  return html`<li>
    <a class="list-row" href=${linkTo(to.unit(id))}>
      <span class="list-main">
        <span class="list-title">${shown ? code(shown) : sentenceCase(name)}</span>
        ${from ? html`<span class="list-note">${say('job-hand-from', { from })}</span>` : nothing} ${badMark(bad)}
      </span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}

/**
 * All of them, until one is taken out again.
 * @param {import('../frame/context.js').Context} ctx
 * @param {JobView} view
 */
function begin(ctx, view) {
  ctx.form.mixing = allOf(view);
  ctx.redraw();
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {JobView} view
 */
function mixing(ctx, view) {
  const { form } = ctx;
  const chosen = view.out.filter(({ id }) => form.mixing.includes(id));
  const record = async () => {
    const data = { units: chosen.map(({ id }) => id), note: (form.note ?? '').trim() };
    await ctx.act([{ kind: 'units_mixed', data }], {
      after: () => {
        ctx.forget();
        ctx.go(to.job(view.id));
      },
    });
  };
  return {
    body: html`
      <h1>${say('job-mixing-heading')}</h1>
      <p class="lead">${say('job-mixing-lead')}</p>
      <div class="choices" role="group" aria-label=${say('job-mixing-group', { sort: view.sort })}>
        ${view.out.map(
          ({ id, name, shown, came_from: from }) => html`<label class="choice">
            <input
              type="checkbox"
              .checked=${form.mixing.includes(id)}
              @change=${() => {
                form.mixing = form.mixing.includes(id)
                  ? form.mixing.filter((/** @type {string} */ each) => each !== id)
                  : [...form.mixing, id];
                ctx.redraw();
              }}
            />
            <span class="choice-word"
              >${shown ? code(shown, { size: 'plain' }) : sentenceCase(name)}${shown && from ? say('job-mixing-from', { from }) : ''}</span
            >
          </label>`,
        )}
      </div>
      ${textField(ctx, 'note', say('job-mixing-note'), { note: say('job-mixing-note-why'), most: 200 })}
    `,
    main: {
      words: chosen.length > 1 ? say('job-mixing-record', { count: chosen.length }) : say('job-mixing-too-few'),
      run: record,
      disabled: chosen.length < 2,
    },
    second: {
      words: say('job-mixing-none'),
      run: () => {
        const { stopped } = form;
        ctx.forget();
        if (stopped) ctx.go(to.job(view.id));
      },
    },
  };
}
