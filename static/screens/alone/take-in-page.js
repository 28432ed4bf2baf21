// @ts-check
/**
 * Taking in the file of another phone, without a server: how an empty phone is set up, and how two phones of one
 * person come to hold the same.
 */

import { html, nothing } from 'lit-html';

import { takeInHistory } from '../../alone/take-in-history.js';
import { say } from '../../words/words.js';
import { to } from '../frame/router.js';
import { outcomeOf, outcomePanel } from '../phone/taken-in.js';

/** What became of the file that was picked last. @type {import('../phone/taken-in.js').Outcome | null} */
let outcome = null;
/** @type {{done: number, all: number} | null} */
let taking = null;

export const takeInPage = {
  load: () => null,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { held } = /** @type {import('../../alone/saved.js').Saved} */ (ctx.services.saved).standing.value;
    const choose = { words: chooseWords(), disabled: taking !== null, run: pick };
    const jobs = { words: say('alone-show-jobs'), run: () => ctx.go(to.jobs()) };
    return {
      title: say('alone-take-in-title'),
      back: to.jobs(),
      key: outcome?.title ?? '',
      body: html`
        <h1>${say('alone-take-in-heading')}</h1>
        <p class="lead">
          ${held.entries
            ? say('alone-take-in-adds')
            : say('alone-take-in-sets-up')}
        </p>
        ${outcomePanel(outcome)}
        ${taking ? progress(taking) : nothing}
        <p class="soft">
          ${say('alone-take-in-name')}
        </p>
        <input id="history-file" class="aloud" type="file" accept=".txt,.json,text/plain,application/json" tabindex="-1"
          aria-label=${say('alone-take-in-label')} @change=${(/** @type {Event} */ event) => take(ctx, event)} />
      `,
      ...(outcome?.good ? { main: jobs, second: choose } : { main: choose }),
    };
  },
};

function chooseWords() {
  if (taking) return say('alone-take-in-reading');
  return outcome ? say('alone-take-in-another') : say('alone-take-in-choose');
}

function pick() {
  document.getElementById('history-file')?.click();
}

/** @param {{done: number, all: number}} taking */
function progress({ done, all }) {
  if (!all) return html`<p class="progress-words" role="status">${say('alone-take-in-checking')}</p>`;
  return html`<div class="progress">
    <p class="progress-words">${say('alone-take-in-progress', { done, all })}</p>
    <progress max=${all} .value=${done} aria-label=${say('alone-take-in-progress-label')}></progress>
  </div>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {any} event
 */
async function take(ctx, { target }) {
  const [file] = target.files;
  target.value = '';
  if (!file || taking) return;
  const { services } = ctx;
  const show = (/** @type {number} */ done, /** @type {number} */ all) => {
    taking = { done, all };
    ctx.redraw();
  };
  outcome = null;
  show(0, 0);
  try {
    outcome = await outcomeOf(async () => {
      const taken = await takeInHistory({ ...services, saved: /** @type {any} */ (services.saved) }, file, show);
      await services.log.catchUp();
      return taken;
    });
  } finally {
    taking = null;
    ctx.redraw();
  }
}
