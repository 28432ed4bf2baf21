// @ts-check
/**
 * Looking up a label away from any step: scan it or type it, and see which sensor carries it.
 */

import { html } from 'lit-html';

import { code } from '../../shapes/code.js';
import { badMark } from '../frame/bad-mark.js';
import { rows } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { labelReader } from '../scan/label-reader.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../core/views.js').UnitPlaced} UnitPlaced */

export const findPage = {
  /** @param {import('../frame/context.js').Services} services */
  load: ({ core }) => core.call('units'),

  formKey: () => 'find',

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const head = { title: say('unit-find'), back: to.jobs() };
    const { reader, parts } = labelReader(
      { ...ctx, job: null, step: { progress: null } },
      {
        heading: say('unit-find-which'),
        onOurs: (answer, how) => {
          ctx.forget();
          ctx.go(to.code(answer.code, how));
        },
      },
    );
    if (parts) return { ...head, ...parts };
    return {
      ...head,
      body: html`
        <h1>${say('unit-find-which')}</h1>
        <p class="lead">${say('unit-find-lead')}</p>
        <ul class="list">
          ${rows(
            ctx.data,
            (/** @type {UnitPlaced} */ unit) => html`<li>
              <a class="list-row" href=${linkTo(to.unit(unit.id))}>
                ${code(unit.shown)}
                <span class="list-main"><span class="list-note">${unit.where}</span>${badMark(unit.bad)}</span>
              </a>
            </li>`,
          )}
        </ul>
      `,
      main: { words: say('unit-find-scan'), run: reader.openCamera },
      second: { words: say('unit-find-type'), run: reader.type },
    };
  },
};
