// @ts-check
/**
 * The pictures of all positions that are due, with the camera left open: one shutter a position, each kept
 * by itself. The one before can be taken again by a tap.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../../shapes/icons.js';
import { say } from '../../../words/words.js';
import { shutter } from '../../scan/shutter.js';
import { photoTaken } from '../../scan/capture.js';

/** @typedef {import('../../../core/views.js').PhotoStep} PhotoStep */

/** @param {import('./step-context.js').StepContext<PhotoStep>} ctx @returns {import('../job.js').StepParts} */
export function photoStep(ctx) {
  const { step, form, job } = ctx;
  const { positions } = step.expects;
  const position = form.again ?? step.expects.position;
  const camera = shutter(ctx, `photo ${job}`, {
    words: say('steps-photo-guide', { sort: ctx.view.sort }),
    of: position,
    keep: (photo) => {
      delete form.again;
      return ctx.act([photoTaken(photo, { shows: 'position', position })], { photo });
    },
  });
  const before = positions.filter(({ done }) => done).at(-1);
  return {
    key: `photos ${camera.open}`,
    body: html`
      ${camera.body}
      <ol class="photo-list">
        ${positions.map(
          ({ id, name, done }) => html`<li class="photo-due" data-state=${id === position ? 'now' : done ? 'done' : 'due'}>
            ${done && id !== position ? icon('tick') : icon('camera')} <span>${name}</span>
          </li>`,
        )}
      </ol>
      ${before && !form.again
        ? html`<div class="ways">
            <button
              class="link-button"
              type="button"
              @click=${() => {
                form.again = before.id;
                ctx.redraw();
              }}
            >
              ${say('steps-photo-retake', { position: before.name })}
            </button>
          </div>`
        : nothing}
    `,
    main: camera.open
      ? camera.shutter(say('steps-photo-shutter', { position: positions.find(({ id }) => id === position)?.name ?? '' }))
      : { words: say('steps-photo-open'), run: camera.start },
  };
}
