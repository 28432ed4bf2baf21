// @ts-check
/**
 * What can be done at any step instead of it: a repair recorded, a pause, a handover, an end without a repair. Each is
 * asked for here, one tap away from the step, so that none of them is a slip.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { placeButtons } from '../frame/asks-why.js';
import { textField } from '../frame/field.js';
import { oneOf } from '../frame/one-of.js';
import { goBack, linkTo, to } from '../frame/router.js';
import { sentenceCase } from '../frame/sentence-case.js';
import { sentence } from '../frame/sentence.js';
import { handedOver, handing } from './handing-over.js';
import { jobQuestion, loadJob } from './job-data.js';
import { repairParts } from './steps/repair.js';

/** @typedef {import('../../core/views.js').Draft} Draft */
/** @typedef {import('../../core/views.js').JobView} JobView */
/** @typedef {import('../../core/views.js').WayChoice} WayChoice */
/** @typedef {import('../../core/views.js').WaysView} WaysView */
/** @typedef {import('../frame/context.js').Context} Context */

export const waysPage = {
  load: loadJob,
  asks: jobQuestion,

  /** @param {Record<string, string>} params */
  formKey: ({ job, way = '' }) => `ways/${job}/${way}`,

  /** @param {Context} ctx */
  draw(ctx) {
    /** @type {JobView} */
    const view = ctx.data;
    const { way } = ctx.params;
    const up = way ? to.jobPart(view.id, 'ways') : to.job(view.id);
    const head = { title: say('ways-title', { job: view.title }), titled: true, back: up };
    const leave = { words: view.closed ? say('job-back') : say('job-go-on'), run: () => ctx.go(to.job(view.id)) };
    if (!view.ways) return { ...head, body: nothing, main: leave };
    const { pause, repair, close } = view.ways;
    if (way === 'pause' && pause) return { ...head, key: 'pause', ...pausing(ctx, pause) };
    if (way === 'repair') return { ...head, key: 'repair', ...repairing(ctx, repair) };
    if (way === 'hand') return { ...head, key: 'hand', ...handing(ctx, view.ways.hand, back(ctx)) };
    if (way === 'handed' && view.handed) return { ...head, key: 'handed', ...handedOver(ctx, view) };
    if (way === 'close') return { ...head, key: 'close', ...closing(ctx, close) };
    return {
      ...head,
      body: html`<h1>${say('ways-heading')}</h1>
        <ul class="list">
          ${view.listen
            ? html`<li>
                <a class="list-row" href=${linkTo(to.jobPart(view.id, 'listen'))}>
                  ${icon('sound')} <span class="list-main"><span class="list-title">${say('ways-listen')}</span></span>
                  <span class="list-end">${icon('forward')}</span>
                </a>
              </li>`
            : nothing}
          ${row(ctx, 'repair', 'tick', say('ways-repair'))}
          ${pause ? row(ctx, 'pause', 'clock', say('ways-pause')) : nothing}
          ${row(ctx, 'hand', 'person', say('ways-hand'))}
          ${row(ctx, 'close', 'stop', say('ways-close'))}
        </ul>`,
      main: leave,
    };
  },
};

/** @param {Context} ctx @param {'repair' | 'pause' | 'hand' | 'close'} way @param {string} sign @param {string} words */
function row(ctx, way, sign, words) {
  return html`<li>
    <a class="list-row" data-way=${way} href=${linkTo(to.way(ctx.data.id, way))}>
      ${icon(sign)} <span class="list-main"><span class="list-title">${words}</span></span>
      <span class="list-end">${icon('forward')}</span>
    </a>
  </li>`;
}

/** To all of the ways, as the phone's own Back leads. @param {Context} ctx */
function back(ctx) {
  return { words: say('ways-link'), run: () => goBack(to.jobPart(ctx.data.id, 'ways')) };
}

/** @param {Context} ctx @param {NonNullable<WaysView['pause']>} pause */
function pausing(ctx, pause) {
  // Asked for at Replace, it is for the new part.
  if (ctx.data.step.form === 'new_unit') ctx.form.chosen ??= 'part';
  const wants = chosenOf(ctx, pause.choices)?.wants;
  return {
    body: html`<h1>${say('ways-pause')}</h1>
      <p class="lead">${sentence(pause.text)}</p>
      ${choices(ctx, pause.choices, say('ways-pause'))}
      ${wants === 'part' ? textField(ctx, 'part', say('ways-part'), { initial: pause.part, most: 80 }) : nothing}
      ${wants === undefined ? nothing : noteField(ctx, wants === 'note')}`,
    ...buttons(ctx, pause.choices, say('ways-pause-save'), () => ({
      part: wants === 'part' ? (ctx.form.part ?? pause.part).trim() : '',
      note: noteOf(ctx),
    })),
  };
}

/** What was it, then where on it and how. @param {Context} ctx @param {WaysView['repair']} repair */
function repairing(ctx, repair) {
  const choice = repair.choices.find(({ id }) => id === ctx.form.chosen);
  const asked = choice && repairParts(ctx, { ...choice, words: say('ways-repair-save') }, (drafts) => record(ctx, drafts));
  if (asked?.bare) return asked;
  return {
    body: html`<h1>${say('ways-repair')}</h1>
      <p class="lead">${sentence(repair.text)}</p>
      ${choices(ctx, repair.choices.map((each) => ({ ...each, words: sentenceCase(each.words) })), say('ways-repair'))} ${asked?.body ?? nothing}`,
    main: asked?.main ?? null,
    second: back(ctx),
  };
}

/** @param {Context} ctx @param {WaysView['close']} close */
function closing(ctx, close) {
  const heading = html`<h1>${say('ways-close')}</h1>`;
  if (close.blockers.length) return { body: html`${heading} ${blocked(ctx, close)}`, main: null, second: back(ctx) };
  const wants = chosenOf(ctx, close.choices)?.wants;
  return {
    body: html`${heading}
      <p class="lead">${sentence(close.text)}</p>
      ${choices(ctx, close.choices, say('ways-close'))} ${wants === undefined ? nothing : noteField(ctx, wants === 'note')}`,
    ...buttons(ctx, close.choices, say('ways-close-save'), () => ({ note: noteOf(ctx) })),
  };
}

/** What has to be settled before the end: nothing may be out. @param {Context} ctx @param {WaysView['close']} close */
function blocked(ctx, { blockers, stop, settle }) {
  // What is in the hand is put back step by step; else the end is asked for here as soon as nothing stands against it.
  const first = (/** @type {Draft[]} */ drafts) => (ctx.data.out.length ? record(ctx, drafts) : ctx.act(drafts));
  return html`<section class="panel panel-ask">
      <p class="panel-kicker">${icon('ask')}<span>${say('ways-close-first')}</span></p>
      <ul class="blockers">
        ${blockers.map((each) => html`<li>${sentence(each)}</li>`)}
      </ul>
    </section>
    ${stop
      ? html`<div class="ways">
          <button class="small-button" type="button" @click=${() => first(stop.events)}>${stop.words}</button>
        </div>`
      : nothing}
    ${settle.map(
      ({ unit, title, choices: places }) => html`<section class="card">
        <h2>${sentence(title)}</h2>
        ${placeButtons(ctx, places, (events) => ctx.act(events))}
        <a class="link-button" href=${linkTo(to.unit(unit))}>${say('job-position-all', { sort: ctx.data.sort })}</a>
      </section>`,
    )}`;
}

/** @param {Context} ctx @param {WayChoice[]} offered @param {string} group */
function choices(ctx, offered, group) {
  const pick = (/** @type {string} */ id) => {
    ctx.form.chosen = id;
    ctx.form.asked = false;
    ctx.redraw();
  };
  return oneOf({ name: 'way', label: group, options: offered, chosen: ctx.form.chosen, pick });
}

/** @param {Context} ctx @param {boolean} wanted */
function noteField(ctx, wanted) {
  const fault = wanted && ctx.form.asked && !noteOf(ctx) ? say('ways-note-wanted') : '';
  return textField(ctx, 'note', say('ways-note'), { lines: 2, most: 500, fault });
}

/** @param {Context} ctx */
function noteOf({ form }) {
  return (form.note ?? '').trim();
}

/** @param {Context} ctx @param {WayChoice[]} offered */
function chosenOf({ form }, offered) {
  return offered.find(({ id }) => id === form.chosen);
}

/**
 * The facts of the choice, with what was typed put into the last one.
 * @param {Context} ctx
 * @param {WayChoice[]} offered
 * @param {string} words
 * @param {() => Record<string, string>} typed
 */
function buttons(ctx, offered, words, typed) {
  const save = () => {
    const choice = chosenOf(ctx, offered);
    if (!choice || (choice.wants === 'note' && !noteOf(ctx))) {
      ctx.form.asked = true;
      return ctx.redraw();
    }
    const before = choice.events.slice(0, -1);
    const last = choice.events[choice.events.length - 1];
    return record(ctx, [...before, { ...last, data: { ...last.data, ...typed() } }]);
  };
  return { main: { words, run: save }, second: back(ctx) };
}

/** Record it and go back to the step that comes then. @param {Context} ctx @param {Draft[]} drafts */
function record(ctx, drafts) {
  return ctx.act(drafts, {
    after: () => {
      ctx.forget();
      goBack(to.job(ctx.data.id));
    },
  });
}
