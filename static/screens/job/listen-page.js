// @ts-check
/**
 * Listening at the positions, by ear or with the phone's help: what each does is one tap; what was heard at
 * several is one entry.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../words/words.js';
import { oneOf } from '../frame/one-of.js';
import { to } from '../frame/router.js';
import { sentenceCase } from '../frame/sentence-case.js';
import { hearPanel } from './hear-panel.js';
import { jobQuestion, loadJob } from './job-data.js';
import { cautionList } from './steps/cautions.js';

/** @typedef {import('../../core/views.js').JobView} JobView */
/** @typedef {import('../../core/views.js').ListenView} ListenView */

export const listenPage = {
  load: loadJob,
  asks: jobQuestion,

  /** @param {Record<string, string>} params */
  formKey: ({ job }) => `listen/${job}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    /** @type {JobView} */
    const view = ctx.data;
    const head = { title: say('ways-listen'), titled: true, back: to.job(view.id) };
    const leave = () => ctx.go(to.job(view.id));
    if (!view.listen) return { ...head, body: nothing, main: { words: say('job-go-on'), run: leave } };
    const { listen } = view;
    /** @type {Record<string, string>} */
    const heard = (ctx.form.heard ??= {});
    const save = async () => {
      const at = (/** @type {string} */ answer) => listen.rows.map(({ position }) => position).filter((id) => heard[id] === answer);
      const data = Object.fromEntries(listen.answers.map(({ id }) => [id, at(id)]));
      await ctx.act([{ kind: listen.event.kind, data }], {
        after: () => {
          ctx.forget();
          leave();
        },
      });
    };
    const answered = Object.keys(heard).length > 0;
    return {
      ...head,
      body: html`<p class="lead">${listen.text}</p>
        ${cautionList(listen.cautions)} ${listen.rows.map((row) => asked(ctx, listen, row, heard))}`,
      main: { words: answered ? say('ways-listen-save') : say('ways-listen-none'), run: save, disabled: !answered },
    };
  },
};

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {ListenView} listen
 * @param {ListenView['rows'][number]} row
 * @param {Record<string, string>} heard
 */
function asked(ctx, { answers }, { position, words, heard: before }, heard) {
  return html`<section class="card">
    <h2>${sentenceCase(words)}</h2>
    ${oneOf({
      name: `heard-${position}`,
      label: words,
      options: answers,
      chosen: heard[position] ?? before,
      pick: (id) => {
        heard[position] = id;
        ctx.redraw();
      },
      two: true,
    })}
    ${hearPanel(ctx, position)}
  </section>`;
}
