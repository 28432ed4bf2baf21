// @ts-check
/**
 * What two phones entered apart: both stories, and the question that settles it. Of a sensor its label is
 * read where it really is, then that place is tapped; all else is one tap.
 */

import { html } from 'lit-html';

import { say } from '../../../words/words.js';
import { sentence } from '../../frame/sentence.js';
import { settleAnswers, storyCard } from '../../frame/stories.js';
import { labelReader } from '../../scan/label-reader.js';

/** @typedef {import('../../../core/views.js').ContradictionStep} ContradictionStep */

/** @param {import('./step-context.js').StepContext<ContradictionStep>} ctx */
export function contradictionStep(ctx) {
  const { step, form } = ctx;
  const { stories, waits } = step.expects;
  if (!step.action) {
    return { body: html`${storyCard(stories, waits)} ${settleAnswers(step.choices, [], ctx)}`, main: null, second: null };
  }
  const { reader, parts } = labelReader(ctx, {
    heading: step.title,
    onOurs: (answer) => {
      form.settle = { choices: answer.choices, others: answer.others, code: answer.shown };
      reader.leave();
    },
  });
  if (parts) return parts;
  if (form.settle) {
    const { choices, others, code } = form.settle;
    return {
      bare: true,
      body: html`<h1>${sentence(say('steps-settle-where', { unit: code }))}</h1>
        ${settleAnswers(choices, others, ctx)}`,
      main: null,
      second: { words: say('scan-again'), run: reader.openCamera },
    };
  }
  return {
    body: storyCard(stories, waits),
    main: { words: step.action.words, run: reader.openCamera },
    second: { words: say('steps-type'), run: reader.type },
  };
}
