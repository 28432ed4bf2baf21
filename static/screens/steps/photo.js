// @ts-check
/**
 * One picture of a position before a hand touches it.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { capture, photoTaken } from '../capture.js';

/** Opened once by a tap, the camera opens by itself for the pictures that follow. */
let openedByHand = false;

/** @param {any} ctx @returns {import('../job.js').StepParts} */
export function photoStep(ctx) {
  const { step, act } = ctx;
  const taking = capture(ctx, {
    words: 'The sensor and the paint around it',
    alt: step.title,
    open: openedByHand,
  });
  if (taking.photo) {
    const { photo } = taking;
    return {
      body: taking.body,
      main: { words: 'Keep this picture', run: () => act([photoTaken(photo, step.expects)], { photo }) },
      second: { words: 'Take it again', run: taking.again },
    };
  }
  if (taking.state === 'open') {
    return { body: taking.body, main: { words: step.action.words, run: taking.take } };
  }
  return {
    body: html`<button class="photo-add camera-closed" type="button" @click=${open} aria-hidden="true" tabindex="-1">
        ${icon('camera', { size: 'large' })}
      </button>
      ${taking.body ?? nothing}`,
    main: { words: 'Open the camera', run: open },
  };

  function open() {
    openedByHand = true;
    return taking.open();
  }
}
