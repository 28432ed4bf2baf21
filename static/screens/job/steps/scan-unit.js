// @ts-check
/**
 * A step of the guided exchange that wants a label: take a spare, pull a sensor, fit one.
 *
 * The camera opens on a tap and then stays open from pull to fit. A label written by hand is not typed
 * again: the codes of those in hand stand there to be tapped, and a wrong one is stopped all the same.
 */

import { html, nothing } from 'lit-html';

import { board } from '../../../shapes/board.js';
import { code } from '../../../shapes/code.js';
import { say } from '../../../words/words.js';
import { textField } from '../../frame/field.js';
import { readingsOf } from '../job-data.js';
import { wayToMixing } from '../mixing.js';
import { cautionList } from './cautions.js';
import { labelReader } from '../../scan/label-reader.js';
import { withPicture } from '../../scan/labelled-picture.js';

/** @typedef {import('../../../core/views.js').ScanStep} ScanStep */

/** @param {import('./step-context.js').StepContext<ScanStep>} ctx */
export function scanUnitStep(ctx) {
  const { step, form } = ctx;
  const mayWrite = step.expects.may_write === true;
  const { do: does, unit, position } = step.expects;
  const { reader, parts } = labelReader(ctx, {
    heading: step.heading ?? step.title,
    instruction: step.heading ? step.title : '',
    cautions: cautionList(ctx.view.cautions),
    mayWrite,
    labels: mayWrite,
    writes: mayWrite && labelled(ctx).length === 0,
    carry: ctx.job,
    // What is read answers what stands on the screen, though another phone may have done it meanwhile.
    expects: { do: does, unit, position },
    below: html`${wanted(ctx)} ${inHand(ctx, (text) => reader.take(text, 'written'))} ${partField(ctx)}`,
    onMixed: wayToMixing(ctx, ctx.view),
    onOurs: async (answer, _how, pictured) => {
      const { drafts, options } = withPicture(pictured, step.expects.unit);
      // A stop that a rule raises stays on the screen, and so does the way the label was read.
      await ctx.act([...answer.events, ...noted(ctx, form.part, pictured), ...drafts], options);
    },
  });
  if (parts) return parts;
  const own = step.second;
  const camera = { words: step.action?.words ?? say('steps-scan'), run: reader.openCamera };
  const type = { words: say('steps-type'), run: reader.type };
  const write = { words: say('scan-write'), run: reader.write };
  // Whoever wrote the labels so far has none to scan.
  const writes = mayWrite && byHand(ctx);
  const taps = written(ctx);
  return {
    body: html`
      ${wanted(ctx)} ${inHand(ctx, (text) => reader.take(text, 'written'))}
      ${board(ctx.view.board, { chosen: step.expects.position, quiet: true })} ${partField(ctx)}
      <div class="ways">
        ${own || writes ? link(type) : nothing} ${taps ? link(camera) : nothing}
        ${mayWrite && !writes ? link({ ...write, words: say('steps-scan-write') }) : nothing}
      </div>
    `,
    main: taps ? null : writes ? write : camera,
    second: own ? undefined : writes ? camera : type,
  };
}

/** A way beside the main one. @param {{words: string, run: () => unknown}} way */
const link = ({ words, run }) => html`<button class="link-button" type="button" @click=${run}>${words}</button>`;

/** The sensors of this job that carry a label. @param {import('./step-context.js').StepContext<ScanStep>} ctx */
const labelled = ({ view }) => [...view.out, ...view.units].filter(({ shown }) => shown);

/**
 * Whether each label of this job so far was written by hand.
 * @param {import('./step-context.js').StepContext<ScanStep>} ctx
 */
function byHand(ctx) {
  const known = labelled(ctx);
  return known.length > 0 && known.every((each) => each.written);
}

/**
 * What the step means, where its label was written by hand: its code is tapped.
 * @param {import('./step-context.js').StepContext<ScanStep>} ctx
 */
function written({ view, step }) {
  const wants = [...view.out, ...view.units].find(({ id }) => id === step.expects.unit);
  return wants?.written ? wants : null;
}

/**
 * The sensor that the step means, where it carries a label: its code large, and where it is now.
 * @param {import('./step-context.js').StepContext<ScanStep>} ctx
 */
function wanted({ view, step }) {
  if (step.expects.do === 'pull') return nothing;
  const unit = view.out.find((each) => each.id === step.expects.unit);
  if (!unit?.shown || unit.written) return nothing;
  return html`<div class="wanted">
    ${code(unit.shown, { size: 'large' })}
    ${unit.came_from ? html`<p>${say('steps-scan-from', { from: unit.came_from })}</p>` : nothing}
  </div>`;
}

/**
 * The codes of those it may be, where the label wanted was written: a camera can't read it. Those in hand, and the
 * one that is about to be pulled.
 * @param {import('./step-context.js').StepContext<ScanStep>} ctx
 * @param {(text: string) => unknown} take
 */
function inHand(ctx, take) {
  const { view, busy } = ctx;
  const wants = written(ctx);
  if (!wants) return nothing;
  const others = view.out.filter(({ id, shown }) => shown && id !== wants.id);
  // By code, so that the place of one in the row does not give away which is wanted.
  const offered = [wants, ...others].sort((one, other) => (one.shown < other.shown ? -1 : 1));
  return html`<section>
    <h2 class="asked-words">${say('steps-scan-tap')}</h2>
    <ul class="which">
      ${offered.map(
        ({ shown }) => html`<li>
          <button class="which-button" type="button" ?disabled=${busy} @click=${() => take(shown)}>${code(shown, { size: 'large' })}</button>
        </li>`,
      )}
    </ul>
  </section>`;
}

/**
 * The part number is read while the sensor is in the hand; it may be left out.
 * @param {import('./step-context.js').StepContext<ScanStep>} ctx
 */
function partField(ctx) {
  if (!ctx.step.expects.asks_part) return nothing;
  return textField(ctx, 'part', say('steps-scan-part'), { most: 80, capitals: true });
}

/**
 * The part number that was typed, else that of the symbol in the picture, and the serial number of that.
 * @param {import('./step-context.js').StepContext<ScanStep>} ctx
 * @param {string} [typed]
 * @param {import('../../scan/labelled-picture.js').Labelled | null} [labelled]
 */
function noted({ step, view }, typed = '', labelled = null) {
  const part = step.expects.asks_part ? typed.trim() || (labelled?.part ?? '') : '';
  const serial = labelled?.serial ?? '';
  const { unit } = step.expects;
  return part || serial ? [{ kind: 'part_noted', data: { unit, part, serial, over: readingsOf(view, unit) } }] : [];
}
