// @ts-check
/**
 * The file of a phone without a server: what is in no file yet, the last one, and making one that holds everything.
 */

import { html, nothing } from 'lit-html';

import { canShare } from '../../phone/save-file.js';
import { icon } from '../../shapes/icons.js';
import { countWords } from '../phone/phone-notices.js';
import { linkTo, to } from '../frame/router.js';
import { ago, dayAndTime, size } from '../frame/when.js';
import { download, dropFile, dropOldFile, fileInMaking, makeFile, share, takeBack } from '../phone/making-file.js';

const HOW = {
  shared: 'shared',
  downloaded: 'saved to the downloads',
  'taken in': 'this phone was set up from it',
};

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
      title: 'Your file',
      back: to.jobs(),
      key: making.state,
      body: html`${stateOf(ctx, making)} ${fileStanding(ctx)} ${about()}`,
      ...buttons(ctx, making),
    };
  },
};

/**
 * What is in a file and what is not; also on the screen about this phone.
 * @param {import('../frame/context.js').Context} ctx
 */
export function fileStanding({ services }) {
  const { entries, photos, since, held, last } = /** @type {import('../../alone/saved.js').Saved} */ (services.saved).standing.value;
  const waits = entries + photos > 0;
  return html`<section class="card card-now">
    <h1>${waits ? `${countWords(entries, photos)} in no file yet` : held.entries ? 'All of it is in your last file' : 'Nothing to save yet'}</h1>
    <p class="lead">
      ${held.entries
        ? `This phone holds ${countWords(held.entries, held.photos)}${waits && since !== null ? `, the oldest unsaved ${ago(since)}` : ''}.`
        : 'What you record is saved on this phone at once.'}
    </p>
    ${last
      ? html`<p class="soft">Last file: <span class="device-id">${last.name}</span>, ${HOW[last.how]}, ${dayAndTime(last.at)}.</p>`
      : nothing}
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../phone/making-file.js').Making} making
 */
function stateOf(ctx, making) {
  if (making.state === 'making') return progress(making);
  if (making.state === 'ready') return ready(making);
  if (making.state === 'saved') return handedOn(ctx, making);
  if (making.state === 'failed') {
    return html`<section class="panel panel-stop" role="alert"><h2>No file was made</h2><p>${making.sentence}</p></section>`;
  }
  return nothing;
}

/** @param {{done: number, all: number}} making */
function progress({ done, all }) {
  if (!all) return html`<p class="progress-words" role="status">Making the file</p>`;
  return html`<div class="progress">
    <p class="progress-words">Making the file: ${done} of ${all} pictures</p>
    <progress max=${all} .value=${done} aria-label="How much of the file is made"></progress>
  </div>`;
}

/** @param {{made: import('../../alone/history-file.js').MadeFile, problem: string}} making */
function ready({ made, problem }) {
  const { file, content, damaged } = made;
  return html`<section class="card">
      <p class="panel-kicker">${icon('tick')} The file is ready, not saved yet</p>
      <p class="record-file">${file.name}</p>
      <p class="soft">${countWords(content.entries, content.photos)}, ${size(file.size)}</p>
    </section>
    ${damaged
      ? html`<p class="panel panel-ask">
          ${damaged === 1 ? '1 picture is damaged on this phone and is' : `${damaged} pictures are damaged on this phone and are`} not in it. Everything else is.
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
    <h2>${how === 'shared' ? 'Handed on' : 'The download has begun'}</h2>
    <p>
      ${how === 'shared'
        ? 'The other app has the file. Look there that it arrived: this app cannot see it.'
        : 'Look for it in the downloads of this phone, and keep a copy somewhere else: a lost phone takes its downloads along.'}
    </p>
    <p class="device-id">${name}</p>
    <button class="link-button" type="button" @click=${() => takeBack(ctx)}>It is not there</button>
  </section>`;
}

function about() {
  return html`<section class="screen-stack">
    <h2>What the file is for</h2>
    <p>
      It holds everything on this phone: jobs, sensors, pictures. Another phone is set up from it, and a server takes it
      in. Keep it where a lost phone does not take it along. Anyone who has it can read it.
    </p>
    <a class="link-button" href=${linkTo(to.takeIn())}>Take in a file from another phone</a>
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
        words: 'Show the jobs',
        run: () => {
          dropFile();
          ctx.go(to.jobs());
        },
      },
    };
  }
  if (making.state === 'ready') {
    const toDownloads = { words: canShare(making.made.file) ? 'To the downloads' : 'Save it', run: () => download(ctx) };
    if (!canShare(making.made.file)) return { main: toDownloads };
    return { main: { words: 'Share it', run: () => share(ctx) }, second: toDownloads };
  }
  const busy = making.state === 'making';
  return { main: { words: busy ? 'Making the file' : 'Make the file', disabled: busy || held.entries === 0, run: () => makeFile(ctx) } };
}
