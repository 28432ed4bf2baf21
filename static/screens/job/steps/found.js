// @ts-check
/**
 * The part of a circuit that its checks name: drawn, what to do to it, and what was done. Whoever doubts it makes one
 * check more.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../../words/words.js';
import { sentence } from '../../frame/sentence.js';
import { cautionList } from './cautions.js';
import { aboutCircuit, circuit } from './circuit.js';
import { measureStep } from './measure.js';
import { repairParts } from './repair.js';

/** @typedef {import('../../../core/views.js').FoundStep} FoundStep */

/** @param {import('./step-context.js').StepContext<FoundStep>} ctx @returns {import('../job.js').StepParts} */
export function foundStep(ctx) {
  const { step, form } = ctx;
  const doubt = () => {
    form.doubt = {};
    ctx.redraw();
  };
  const leave = () => {
    delete form.doubt;
    ctx.redraw();
  };
  if (form.doubt && step.further) {
    // What is typed there is of that check alone.
    const act = (/** @type {Parameters<typeof ctx.act>} */ ...recorded) => ctx.act(...recorded).then((done) => (done && leave(), done));
    const parts = measureStep({ ...ctx, step: { ...step.further, second: null }, form: form.doubt, act });
    return {
      ...parts,
      bare: true,
      body: html`<header>
          <h1>${sentence(step.further.title)}</h1>
          <p class="lead">${sentence(step.further.text)}</p>
        </header>
        ${cautionList(ctx.view.cautions)} ${parts.body}`,
      second: { words: say('steps-found-back'), run: leave },
    };
  }
  const parts = repairParts(ctx, step.action, (drafts) => ctx.act(drafts));
  if (parts.bare) return parts;
  return {
    body: html`${circuit(step.harness)} ${parts.body}
      ${step.further
        ? html`<div class="ways"><button class="link-button" type="button" @click=${doubt}>${say('steps-found-further')}</button></div>`
        : nothing}
      ${aboutCircuit(ctx, step.harness)}`,
    main: parts.main,
  };
}
