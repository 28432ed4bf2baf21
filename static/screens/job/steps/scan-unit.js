// @ts-check
/**
 * A step of the guided exchange that wants a label: take a spare, pull a sensor, fit one.
 *
 * First what to do with the hands; the camera opens on a tap, once the sensor is in the hand.
 */

import { html, nothing } from 'lit-html';

import { board } from '../../../shapes/board.js';
import { code } from '../../../shapes/code.js';
import { say } from '../../../words/words.js';
import { labelReader } from '../../scan/label-reader.js';

/** @typedef {import('../../../core/views.js').ScanStep} ScanStep */

/** @param {import('./step-context.js').StepContext<ScanStep>} ctx */
export function scanUnitStep(ctx) {
  const { step } = ctx;
  const mayWrite = step.expects.may_write === true;
  const { reader, parts } = labelReader(ctx, {
    heading: step.title,
    mayWrite,
    onOurs: async (answer) => {
      // A stop that a rule raises stays on the screen, and so does the way the label was read.
      await ctx.act(answer.events);
    },
  });
  if (parts) return parts;
  const own = step.second;
  const type = { words: say('steps-type'), run: reader.type };
  return {
    body: html`
      ${wanted(ctx)}
      ${board(ctx.view.board, { chosen: step.expects.position })}
      <div class="ways">
        ${own ? html`<button class="link-button" type="button" @click=${reader.type}>${say('steps-type')}</button>` : nothing}
        ${mayWrite
          ? html`<button class="link-button" type="button" @click=${reader.write}>
              ${say('steps-scan-write')}
            </button>`
          : nothing}
      </div>
    `,
    main: { words: step.action?.words ?? say('steps-scan'), run: reader.openCamera },
    second: own ? undefined : type,
  };
}

/**
 * The sensor that the step means, where it carries a label: its code large, and where it is now.
 * @param {import('./step-context.js').StepContext<ScanStep>} ctx
 */
function wanted({ view, step }) {
  if (step.expects.do === 'pull') return nothing;
  const unit = view.out.find((each) => each.id === step.expects.unit);
  if (!unit?.shown) return nothing;
  return html`<div class="wanted">
    ${code(unit.shown, { size: 'large' })}
    ${unit.came_from ? html`<p>${say('steps-scan-from', { from: unit.came_from })}</p>` : nothing}
  </div>`;
}
