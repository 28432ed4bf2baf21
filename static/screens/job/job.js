// @ts-check
/**
 * A job: where it stands on the board, and the one step that comes next.
 */

import { html, nothing } from 'lit-html';

import { board } from '../../shapes/board.js';
import { say } from '../../words/words.js';
import { installLine } from '../phone/install-offer.js';
import { sayStep } from '../frame/aloud.js';
import { handedLine } from './handed-line.js';
import { jobLinks } from './job-links.js';
import { loadQuick, quickQuestion, workOut } from './job-data.js';
import { proofCard } from './proof-card.js';
import { broken, part } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { putDown } from '../scan/open-camera.js';
import { cautionList } from './steps/cautions.js';
import { readStep, stepFor } from './steps/index.js';
import { stepCount } from '../frame/step-count.js';
import { verdictCard } from './verdict-card.js';
import { waysLink } from './ways-link.js';

/** @typedef {import('../../core/views.js').Action} Action */
/** @typedef {import('../../core/views.js').JobView} JobView */
/** @typedef {import('../../core/views.js').Step} Step */

/**
 * @typedef {object} StepParts   what a step module returns
 * @property {unknown} body
 * @property {import('../frame/frame.js').Button | null} [main]
 * @property {import('../frame/frame.js').Button | null} [second]
 * @property {boolean} [bare]    the body brings its own heading
 * @property {boolean} [alone]   nothing else on the screen: a stop, a camera
 * @property {string} [key]      the same over several steps where something lives on, such as a camera
 */

/** Steps that follow from what the tests say. */
const AFTER_VERDICT = new Set(['moves', 'new_unit']);
/** Steps at which labels are read with the camera left open, or at which that begins. */
const LABELLING = new Set(['scan', 'new_unit', 'moves']);
/** The step that stands where a move will. */
const THINKING = 'thinking';
/** So many positions hide the words beside their picture on a small screen. */
const MANY = 8;
/** Steps that the proof is about. */
const PROVING = new Set(['moves', 'test']);

export const jobPage = {
  /** @param {import('../frame/context.js').Services} services @param {Record<string, string>} params */
  async load(services, params) {
    const view = await loadQuick(services, params);
    await readStep(view.step);
    return view;
  },
  asks: quickQuestion,

  /** @param {Record<string, string>} params @param {JobView} view */
  formKey: ({ job }, view) => `job/${job}/${stepKey(view.step)}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const view = ctx.data;
    const { step } = view;
    if (!LABELLING.has(step.form ?? '') && step.id !== THINKING) putDown(view.id);
    if (!view.planned) workOut(ctx);
    if (step.id !== THINKING) sayStep(`${view.id} ${view.trail.tests.length} ${stepKey(step)}`, [step.title, step.text]);
    const parts = stepParts(ctx, view);
    return {
      title: view.title,
      back: to.jobs(),
      stages: view.stages,
      // What was opened on the screen stays open when the move comes that was worked out.
      key: parts.key ?? (isMoving(step) ? 'moving' : `${stepKey(step)} ${parts.bare ? 'bare' : ''}`),
      body: jobBody(ctx, view, parts),
      main: mainButton(ctx, step, parts),
      second: parts.second === undefined ? secondButton(ctx, view) : parts.second,
    };
  },
};

/**
 * Where a step cannot be drawn, what is around it can.
 * @param {import('../frame/context.js').Context} ctx
 * @param {JobView} view
 * @returns {StepParts}
 */
function stepParts(ctx, view) {
  try {
    return stepFor(view.step)({ ...ctx, ...stepContext(view) });
  } catch (error) {
    return { body: broken(error), main: null, second: null };
  }
}

/**
 * What a step module gets besides what every screen gets.
 * @param {JobView} view
 */
export function stepContext(view) {
  return { view, step: view.step, job: view.id };
}

/**
 * Tells one step from the next, so that a form belongs to exactly one of them.
 * @param {Step} step
 */
function stepKey({ id, expects, progress }) {
  return `${id} ${progress?.now ?? ''} ${JSON.stringify(expects)}`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Step} step
 * @param {StepParts} parts
 */
function mainButton(ctx, step, { main }) {
  if (step.id === THINKING) return { words: say('frame-one-moment'), run: () => undefined, disabled: true };
  return main === undefined ? actionButton(ctx, step.action) : main;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Action | null} action
 */
function actionButton(ctx, action) {
  if (!action?.events.length) return null;
  return { words: action.words, run: () => ctx.act(action.events) };
}

/**
 * A second button without facts of its own leads to the other moves.
 * @param {import('../frame/context.js').Context} ctx
 * @param {JobView} view
 */
function secondButton(ctx, { id, step, may_choose: open }) {
  if (!step.second) return null;
  if (step.second.events.length) return actionButton(ctx, step.second);
  return open ? { words: step.second.words, run: () => ctx.go(to.jobPart(id, 'moves')) } : null;
}

/**
 * Whether a move has so many positions around it that what stands so far comes after it: move, picture and button
 * have to be seen at once on a small screen, too.
 * @param {JobView} view
 */
function hasMany({ board: { positions }, reasoning }) {
  return positions.length >= MANY && !reasoning?.verdict && !reasoning?.settled;
}

/** Whether a move is to be chosen here, or will be once it is worked out. @param {Step} step */
function isMoving({ id, form }) {
  return form === 'moves' || id === THINKING;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {JobView} view
 * @param {StepParts} parts
 */
function jobBody(ctx, view, parts) {
  const { step } = view;
  const moving = isMoving(step);
  if (parts.alone) return html`${handedLine(ctx, view)}<section class="screen-stack step" data-step=${step.id}>${parts.body}</section>${waysLink(view)}`;
  const stands = moving || followsVerdict(step) ? part(() => verdictCard(view)) : nothing;
  // A check, or a question, is seen whole on the smallest screen; what led to it may stand below.
  const last = moving ? hasMany(view) : step.form === 'measure' || step.form === 'choices';
  return html`
    ${handedLine(ctx, view)} ${step.form === 'cautions' ? part(() => wasHere(view)) : nothing}
    ${moving ? part(() => jobBoard(ctx, view)) : nothing}
    ${last ? (moving || stands === nothing ? nothing : part(() => foundBefore(view))) : stands}
    <section class="screen-stack step" data-step=${step.id === THINKING ? nothing : step.id}>
      ${parts.bare ? nothing : heading(step)}
      ${parts.bare || step.form === 'cautions' ? nothing : cautionList(view.cautions)} ${parts.body}
    </section>
    ${last ? stands : nothing}
    ${step.form === null && !moving && step.id !== 'lock' ? part(() => jobBoard(ctx, view)) : nothing}
    ${step.form === 'cautions' ? installLine(ctx, view.id) : part(() => wasHere(view))} ${part(() => (proving(view) ? proofCard(view) : nothing))}
    ${waysOut(ctx, step)} ${jobLinks(view)}
  `;
}

/** Why the checks begin, where the verdict itself stands below the first of them. @param {JobView} view */
function foundBefore({ reasoning }) {
  return reasoning?.verdict ? html`<p><strong>${sentence(reasoning.sentence)}</strong></p>` : nothing;
}

/** What can be done instead of the step: small, below everything else. @param {any} ctx @param {Step} step */
function waysOut(ctx, { also }) {
  if (!also.length) return nothing;
  return html`<div class="ways">
    ${also.map(
      (/** @type {Action} */ { words, events }) => html`<button
        class="link-button"
        type="button"
        ?disabled=${ctx.busy}
        @click=${() => ctx.act(events)}
      >
        <span>${sentence(words)}</span>
      </button>`,
    )}
  </div>`;
}

/** A choice of moves is made on the board; at the other steps what to do comes first. */
function jobBoard(/** @type {import('../frame/context.js').Context} */ ctx, /** @type {JobView} */ view) {
  return board(view.board, {
    onPick: (id) => ctx.go(to.position(view.id, id)),
    chosen: 'position' in view.step.expects ? view.step.expects.position : [],
    arrows: view.step.form === 'moves' ? view.moves[0]?.arrows : [],
    quiet: view.step.form === 'moves' ? 'units' : true,
    folded: isMoving(view.step),
  });
}

/** The wiring checks follow from a verdict too; it is told at the first of them. @param {Step} step */
function followsVerdict({ id, form, progress }) {
  return AFTER_VERDICT.has(form ?? '') || (id.startsWith('wiring.') && form !== 'found' && (!progress || progress.now === 1));
}

/** Whether tests are made to prove something now. @param {JobView} view */
function proving({ stage, step, reasoning }) {
  return PROVING.has(step.form ?? '') && (stage === 'prove' || reasoning?.verdict);
}

/** @param {Step} step */
function heading({ title, heading: whole, text, progress }) {
  return html`<header>
    ${stepCount(progress)}
    <h1>${sentence(whole ?? title)}</h1>
    ${whole ? html`<p class="instruction">${sentence(title)}</p>` : nothing}
    ${text ? html`<p class="lead">${sentence(text)}</p>` : nothing}
  </header>`;
}

/** The vehicle was here before: said until the first test, at first above the step, and what that changes. @param {JobView} view */
function wasHere({ back, trail }) {
  if (!back || trail.tests.length) return nothing;
  return html`<section class="panel was-here">
    <p>${sentence(back.sentence)} ${sentence(back.found)}</p>
    ${back.reasons.length
      ? html`<details class="more">
          <summary>${say('job-back-changes')}</summary>
          ${back.reasons.map((reason) => html`<p>${sentence(reason)}</p>`)}
        </details>`
      : nothing}
    <p><a class="link-button" href=${linkTo(to.vehicle(back.vehicle))}>${say('job-back-vehicle')}</a></p>
  </section>`;
}
