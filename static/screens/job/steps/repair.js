// @ts-check
/**
 * A repair of the wiring: where on the circuit, what was done (one of the usual things by a tap, or in one's own
 * words), and a picture before and after it.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../../shapes/icons.js';
import { say } from '../../../words/words.js';
import { typedField } from '../../frame/field.js';
import { oneOf } from '../../frame/one-of.js';
import { capture, photoTaken } from '../../scan/capture.js';
import { cautionList } from './cautions.js';

/** @typedef {import('../../../core/views.js').Action} Action */
/** @typedef {import('../../../core/views.js').RepairAction} RepairAction */
/** @typedef {import('../../frame/context.js').Context} Context */
/** @typedef {import('../job.js').StepParts} StepParts */

/** What is repaired most often: a tap in place of typing. */
const USUAL = ['steps-repair-pin', 'steps-repair-lock', 'steps-repair-plug', 'steps-repair-wire'];
const MOMENTS = /** @type {const} */ (['before', 'after']);

/** Whether a tap on this asks for the form of a repair first. @param {Action | null} action @returns {action is RepairAction} */
export const isRepair = (action) => Boolean(action && 'segments' in action);

/** The steps that end in a repair and ask for nothing else. @param {import('./step-context.js').StepContext} ctx */
export function repairStep(ctx) {
  const { step } = ctx;
  if (!isRepair(step.action)) return { body: nothing };
  return repairParts(ctx, step.action, (drafts) => ctx.act(drafts));
}

/**
 * The repair as a screen of its own, opened from a check or a move.
 * @param {import('./step-context.js').StepContext} ctx
 * @param {Action} action  records the repair
 * @param {import('../../frame/frame.js').Button} second
 * @param {{title?: string, cautions?: import('../../../core/views.js').Caution[],
 *   record?: (drafts: import('../../../log/log.js').Draft[]) => unknown}} [move]
 * @returns {StepParts}
 */
export function repairScreen(ctx, action, second, { title = ctx.step.title, cautions = ctx.view.cautions, record = ctx.act } = {}) {
  if (!isRepair(action)) return { body: nothing, second };
  const parts = repairParts(ctx, action, (drafts) => record(drafts));
  if (parts.bare) return parts;
  return { ...parts, bare: true, alone: true, body: html`<p class="kicker">${title}</p>${cautionList(cautions)} ${parts.body}`, second };
}

/**
 * @param {Context} ctx
 * @param {RepairAction} action
 * @param {(drafts: import('../../../log/log.js').Draft[]) => unknown} record
 * @returns {StepParts}
 */
export function repairParts(ctx, { words, events, segments, position }, record) {
  const { form } = ctx;
  const taking = capture(ctx, { words: say('steps-repair-guide'), alt: say('job-photos-work') });
  if (form.moment && taking.state !== 'closed') return pictureParts(ctx, taking, position);
  const set = (/** @type {string} */ name) => (/** @type {string} */ value) => {
    form[name] = value;
    ctx.redraw();
  };
  // One that was tapped for another cause may not be among those of this.
  const tapped = segments.find(({ id }) => id === form.segment)?.id;
  /** What the checks named, until another one is tapped. @type {string | undefined} */
  const segment = tapped ?? events[0]?.data.segment;
  const run = () => {
    if (!segment) return set('asked')('yes');
    const what = (form.what ?? '').trim();
    const typed = { ...(what && { what }), segment };
    return record(events.map((draft) => ({ ...draft, data: { ...draft.data, ...typed } })));
  };
  const places = oneOf({ name: 'segment', label: say('steps-repair-where'), options: segments, chosen: segment, pick: set('segment'), two: true });
  return {
    body: html`${events[0]?.data.segment
        ? html`<details class="more"><summary>${say('steps-repair-where')}</summary>${places}</details>`
        : html`<h2 class="asked-words">${say('steps-repair-where')}</h2>
            ${form.asked && !segment ? html`<p class="field-fault" role="alert">${say('steps-repair-where-wanted')}</p>` : nothing} ${places}`}
      <h2 class="asked-words">${say('steps-repair-what')}</h2>
      ${oneOf({
        name: 'repaired',
        label: say('steps-repair-what'),
        options: USUAL.map((usual) => ({ id: say(usual), words: say(usual) })),
        chosen: form.what,
        pick: set('what'),
      })}
      ${typedField(say('steps-repair-note'), form.what ?? '', set('what'), { lines: 2 })}
      <div class="card-actions">${MOMENTS.map((moment) => pictureButton(ctx, taking, moment))}</div>`,
    main: { words, run },
  };
}

/**
 * @param {Context} ctx
 * @param {import('../../scan/capture.js').Capture} taking
 * @param {'before' | 'after'} moment
 */
function pictureButton({ form }, taking, moment) {
  const open = () => {
    form.moment = moment;
    return taking.open();
  };
  return html`<button class="small-button" type="button" data-picture=${moment} @click=${open}>
    ${icon(form[moment] ? 'tick' : 'camera')} ${say('steps-repair-picture', { when: moment })}
  </button>`;
}

/**
 * @param {Context} ctx
 * @param {import('../../scan/capture.js').Capture} taking
 * @param {string} position
 * @returns {StepParts}
 */
function pictureParts(ctx, { photo, body, shutter, again, close }, position) {
  const { form } = ctx;
  const moment = form.moment;
  const keep = (/** @type {import('../../../log/log.js').Photo} */ taken) =>
    ctx.act([photoTaken(taken, { shows: 'work', position, repair: moment })], {
      photo: taken,
      after: () => {
        Object.assign(form, { photo: undefined, moment: '', [moment]: true });
        ctx.redraw();
      },
    });
  return {
    bare: true,
    alone: true,
    key: `repair ${moment}`,
    body: html`<p class="kicker">${say('steps-repair-picture', { when: moment })}</p>
      ${body}`,
    main: photo ? { words: say('scan-keep'), run: () => keep(photo) } : shutter(say('scan-take')),
    second: photo ? { words: say('scan-take-again'), run: again } : { words: say('scan-go-back'), run: close },
  };
}
