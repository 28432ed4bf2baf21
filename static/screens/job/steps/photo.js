// @ts-check
/**
 * One picture of a position before a hand touches it.
 */

import { html } from 'lit-html';

import { board } from '../../../shapes/board.js';
import { say } from '../../../words/words.js';
import { capture, photoTaken } from '../../scan/capture.js';

/** @typedef {import('../../../core/views.js').PhotoStep} PhotoStep */

/** Opened once by a tap, the camera opens by itself for the pictures that follow. */
let openedByHand = false;

/** @param {import('./step-context.js').StepContext<PhotoStep>} ctx @returns {import('../job.js').StepParts} */
export function photoStep(ctx) {
  const { step, act } = ctx;
  const taking = capture(ctx, {
    words: say('steps-photo-guide'),
    alt: step.title,
    open: openedByHand,
  });
  if (taking.photo) {
    const { photo } = taking;
    return {
      body: taking.body,
      main: { words: say('steps-photo-keep'), run: () => act([photoTaken(photo, step.expects)], { photo }) },
      second: { words: say('steps-photo-again'), run: taking.again },
    };
  }
  if (taking.state === 'open') {
    return { body: taking.body, main: { words: step.action.words, run: taking.take } };
  }
  return {
    body: html`${taking.body} ${board(ctx.view.board, { chosen: step.expects.position })}`,
    main: {
      words: say('steps-photo-open'),
      run: () => {
        openedByHand = true;
        return taking.open();
      },
    },
  };
}
