// @ts-check
/**
 * The file of a phone without a server: what is in no file yet, the last one, and making one that holds everything.
 */

import { html, nothing } from 'lit-html';

import { canShare } from '../../phone/save-file.js';
import { say } from '../../words/words.js';
import { countWords } from '../phone/phone-notices.js';
import { fileStanding } from './file-standing.js';
import { linkTo, to } from '../frame/router.js';
import { size } from '../frame/when.js';
import { download, dropFile, dropOldFile, fileInMaking, makeFile, share, takeBack } from '../phone/making-file.js';

export const filePage = {
  /** @param {import('../frame/context.js').Services} services */
  async load({ store }) {
    dropOldFile((await store.getMeta('head')).nextUnsent);
    return null;
  },

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const making = fileInMaking();
    return {
      title: say('alone-file-title'),
      back: to.jobs(),
      key: making.state,
      body: html`${stateOf(ctx, making)} ${making.state === 'ready' ? nothing : fileStanding(ctx)} ${about()}`,
      ...buttons(ctx, making),
    };
  },
};

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../phone/making-file.js').Making} making
 */
function stateOf(ctx, making) {
  if (making.state === 'making') return progress(making);
  if (making.state === 'ready') return ready(making);
  if (making.state === 'saved') return handedOn(ctx, making);
  if (making.state === 'failed') {
    return html`<section class="panel panel-stop" role="alert"><h2>${say('alone-file-failed')}</h2><p>${making.sentence}</p></section>`;
  }
  return nothing;
}

/** @param {{done: number, all: number}} making */
function progress({ done, all }) {
  if (!all) return html`<p class="progress-words" role="status">${say('alone-file-making')}</p>`;
  return html`<div class="progress">
    <p class="progress-words">${say('alone-file-progress', { done, all })}</p>
    <progress max=${all} .value=${done} aria-label=${say('alone-file-progress-label')}></progress>
  </div>`;
}

/** @param {{made: import('../../alone/history-file.js').MadeFile, problem: string}} making */
function ready({ made, problem }) {
  const { file, content, damaged } = made;
  return html`<section class="card card-now">
      <h1>${say('alone-file-ready')}</h1>
      <p class="record-file">${file.name}</p>
      <p class="soft">${say('alone-file-content', { content: countWords(content.entries, content.photos), size: size(file.size) })}</p>
    </section>
    ${damaged
      ? html`<p class="panel panel-ask">
          ${say('alone-file-damaged', { count: damaged })}
        </p>`
      : nothing}
    ${problem ? html`<p class="panel panel-ask" role="alert">${problem}</p>` : nothing}`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {{how: 'shared' | 'downloaded', name: string}} making
 */
function handedOn(ctx, { how, name }) {
  return html`<section class="panel panel-good" role="status">
    <h2>${how === 'shared' ? say('alone-file-handed-on') : say('alone-file-download')}</h2>
    <p>
      ${how === 'shared'
        ? say('alone-file-handed-on-lead')
        : say('alone-file-download-lead')}
    </p>
    <p class="device-id">${name}</p>
    <button class="link-button" type="button" @click=${() => takeBack(ctx)}>${say('alone-file-not-there')}</button>
  </section>`;
}

function about() {
  return html`<section class="screen-stack">
    <h2>${say('alone-file-about')}</h2>
    <p>
      ${say('alone-file-about-lead')}
    </p>
    <a class="link-button" href=${linkTo(to.takeIn())}>${say('alone-file-take-in')}</a>
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../phone/making-file.js').Making} making
 * @returns {{main: import('../frame/frame.js').Button, second?: import('../frame/frame.js').Button}}
 */
function buttons(ctx, making) {
  const { held } = /** @type {import('../../alone/saved.js').Saved} */ (ctx.services.saved).standing.value;
  if (making.state === 'saved') {
    return {
      main: {
        words: say('alone-show-jobs'),
        run: () => {
          dropFile();
          ctx.go(to.jobs());
        },
      },
    };
  }
  if (making.state === 'ready') {
    const words = say(canShare(making.made.file) ? 'alone-file-to-downloads' : 'alone-file-save');
    const toDownloads = { words, run: () => download(ctx) };
    if (!canShare(making.made.file)) return { main: toDownloads };
    return { main: { words: say('alone-file-share'), run: () => share(ctx) }, second: toDownloads };
  }
  const busy = making.state === 'making';
  const words = say(busy ? 'alone-file-making' : 'alone-file-make');
  return { main: { words, disabled: busy || held.entries === 0, run: () => makeFile(ctx) } };
}
