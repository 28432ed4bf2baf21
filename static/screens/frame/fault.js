// @ts-check
/**
 * The screens for an address that leads nowhere or names what is not there, and for one that could not be read.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { plainLink } from './part.js';
import { to } from './router.js';
import { say } from '../../words/words.js';

export const nowherePage = {
  load: () => null,
  /** @param {import('./context.js').Context} ctx */
  draw: (ctx) => ({
    title: say('frame-nowhere'),
    back: to.jobs(),
    body: html`<section class="nothing">${icon('ask', { size: 'large' })}
      <h1>${say('frame-nowhere-heading')}</h1>
      <p>${say('frame-nowhere-do')}</p></section>`,
    main: { words: say('frame-show-jobs'), run: () => ctx.go(to.jobs()) },
  }),
};

/** What an address names that is not on this phone, by the field that the core or the server finds wrong. */
const NAMED = new Set(['job', 'unit', 'position', 'batch']);

/** Thrown by a screen whose address names what is not there. */
export class NotThere extends Error {
  /** @param {'job' | 'unit' | 'position' | 'batch'} what */
  constructor(what) {
    super(what);
    this.field = what;
  }
}

export const faultPage = {
  load: () => null,
  /** @param {import('./context.js').Context} ctx  its data is the error */
  // A core that failed names what was asked for, too, which is there all the same.
  draw: (ctx) => (NAMED.has(ctx.data?.field) && !ctx.data.broken ? notThere(ctx) : notShown(ctx)),
};

/** It may still come from another phone, so there is a way to look again. @param {import('./context.js').Context} ctx */
function notThere(ctx) {
  const what = ctx.data.field;
  const { saved, sync } = ctx.services;
  const again = async () => {
    if (!saved) await sync.now();
    await ctx.reload();
  };
  return {
    title: say('frame-not-found'),
    back: to.jobs(),
    body: html`<section class="nothing" data-missing=${what}>${icon('ask', { size: 'large' })}
      <h1>${say('frame-missing', { what })}</h1>
      <p>${say('frame-missing-do', { what, alone: saved ? 'yes' : 'no' })}</p></section>`,
    main: { words: say('frame-show-jobs'), run: () => ctx.go(to.jobs()) },
    second: { words: say('frame-look-again'), run: again },
  };
}

/** @param {import('./context.js').Context} ctx */
function notShown(ctx) {
  return {
    title: say('frame-not-found'),
    titled: true,
    back: to.jobs(),
    body: html`<section class="panel panel-ask" role="alert">
      <p class="panel-kicker">${icon('ask')} ${say('frame-not-shown')}</p>
      <p>${ctx.data?.message ?? String(ctx.data)}</p>
      <p>${say('frame-nothing-lost')}</p>
      <p>${plainLink()}</p>
    </section>`,
    main: { words: say('frame-try-again'), run: () => ctx.reload() },
    second: { words: say('frame-the-jobs'), run: () => ctx.go(to.jobs()) },
  };
}
