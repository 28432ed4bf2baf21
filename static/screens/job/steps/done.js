// @ts-check
/**
 * A closed job at a glance: what it was, what was done about it, and where everything is now.
 */

import { html } from 'lit-html';

import { say } from '../../../words/words.js';
import { to } from '../../frame/router.js';
import { standingAtClose } from '../../phone/standing.js';
import { summary } from './summary.js';

/** @typedef {import('../../../core/views.js').DoneStep} DoneStep */

/** @param {import('./step-context.js').StepContext<DoneStep>} ctx */
export function doneStep(ctx) {
  return {
    body: html`${standingAtClose(ctx)} ${summary(ctx)}`,
    main: { words: say('steps-done-trail'), run: () => ctx.go(to.jobPart(ctx.job, 'trail')) },
    second: { words: say('steps-done-history'), run: () => ctx.go(to.jobPart(ctx.job, 'history')) },
  };
}
