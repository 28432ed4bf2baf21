// @ts-check
/**
 * One picture of a position before a hand touches it.
 */

import { html } from 'lit-html';

import { board } from '../../../shapes/board.js';
import { capture, photoTaken } from '../../scan/capture.js';

/** @typedef {import('../../../core/views.js').PhotoStep} PhotoStep */

/** Opened once by a tap, the camera opens by itself for the pictures that follow. */
let openedByHand = false;

/** @param {import('./step-context.js').StepContext<PhotoStep>} ctx @returns {import('../job.js').StepParts} */
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
    body: html`${taking.body} ${board(ctx.view.board, { chosen: step.expects.position })}`,
    main: {
      words: 'Open the camera',
      run: () => {
        openedByHand = true;
        return taking.open();
      },
    },
  };
}
