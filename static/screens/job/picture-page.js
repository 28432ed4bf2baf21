// @ts-check
/**
 * One picture of a job, as large as the screen: looked at closer by two fingers, buttons or keys; the next one by a
 * swipe; and at one position the first picture beside a later one, both moved together.
 */

import { html, nothing, render } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { mounted } from '../frame/mount.js';
import { to } from '../frame/router.js';
import { sentenceCase } from '../frame/sentence-case.js';
import { dayAndTime } from '../frame/when.js';
import { zoomable } from '../frame/zoom.js';
import { correctLink } from '../frame/correct-link.js';
import { jobQuestion, loadJob } from './job-data.js';
import { inOrder } from './photos-page.js';

/** @typedef {import('../../core/views.js').JobPicture} JobPicture */
/** @typedef {import('../../core/views.js').JobView} JobView */
/** @typedef {import('../frame/context.js').Context} Context */

/** What looks closer at the pictures that stand there now. @type {import('../frame/zoom.js').Zoom | null} */
let zoom = null;

export const picturePage = {
  load: loadJob,
  asks: jobQuestion,

  /** @param {Record<string, string>} params */
  formKey: ({ job, photo }) => `photo/${job}/${photo}`,

  /** @param {Context} ctx */
  draw(ctx) {
    /** @type {JobView} */
    const view = ctx.data;
    const photos = inOrder(view);
    const at = photos.findIndex(({ sha256 }) => sha256 === ctx.params.photo);
    const all = { words: say('job-picture-all'), run: () => ctx.go(to.jobPart(view.id, 'photos'), { replace: true }) };
    const head = { titled: true, back: to.jobPart(view.id, 'photos') };
    if (at < 0) return { ...head, title: say('job-link-photos'), body: html`<p>${say('troubles-picture-absent')}</p>`, main: all };
    const pair = pairOf(photos, photos[at]);
    const beside = Boolean(pair && ctx.form.beside);
    const turn = (/** @type {number} */ by) => {
      const next = photos[at + by];
      if (next) ctx.go(to.photo(view.id, next.sha256), { replace: true });
    };
    const shown = pair && beside ? pair : [photos[at]];
    return {
      ...head,
      title: photos[at].words,
      key: `${ctx.params.photo} ${beside}`,
      body: viewer(ctx, { at, count: photos.length, shown, turn, right: correctLink(to.correct(view.id, `photo:${ctx.params.photo}`)) }),
      main: all,
      second: pair
        ? {
            words: beside ? say('job-picture-one') : say('job-picture-beside'),
            run: () => {
              ctx.form.beside = !beside;
              ctx.redraw();
            },
          }
        : null,
    };
  },
};

/**
 * The first picture of a position and the one that is looked at, or the latest; null where there is but one.
 * @param {JobPicture[]} photos
 * @param {JobPicture} looked
 */
function pairOf(photos, looked) {
  if (looked.shows !== 'position') return null;
  const here = photos.filter(({ shows, position }) => shows === 'position' && position === looked.position);
  const [first] = here;
  const other = looked === first ? here[here.length - 1] : looked;
  return other === first ? null : [first, other];
}

/**
 * @param {Context} ctx
 * @param {{at: number, count: number, shown: JobPicture[], turn: (by: number) => void, right: unknown}} what
 */
function viewer({ services }, { at, count, shown, turn, right }) {
  const key = shown.map(({ sha256 }) => sha256).join(' ');
  return html`<section class="viewer" data-count=${shown.length}>
    <div
      class="viewer-pictures"
      tabindex="0"
      role="group"
      aria-label=${say('job-picture-keys')}
      ${mounted(key, (host) => begin(services, host, shown, turn))}
    ></div>
    <ol class="viewer-words">
      ${shown.map(
        (photo) => html`<li><span class="viewer-moment">${sentenceCase(photo.moment)}</span> <span class="soft">${dayAndTime(photo.at)}</span></li>`,
      )}
    </ol>
    <div class="viewer-buttons">
      ${step('back', say('job-picture-before'), at > 0, () => turn(-1))}
      ${step('minus', say('job-picture-smaller'), true, () => zoom?.smaller())}
      <p class="viewer-count">${say('job-picture-count', { number: at + 1, count })}</p>
      ${step('plus', say('job-picture-larger'), true, () => zoom?.larger())}
      ${step('forward', say('job-picture-next'), at < count - 1, () => turn(1))}
    </div>
    ${right}
  </section>`;
}

/** @param {string} sign @param {string} words @param {boolean} there @param {() => void} run */
function step(sign, words, there, run) {
  return html`<button class="viewer-button" type="button" aria-label=${words} ?disabled=${!there} @click=${run}>${icon(sign)}</button>`;
}

/**
 * @param {import('../frame/context.js').Services} services
 * @param {HTMLElement} host
 * @param {JobPicture[]} shown
 * @param {(by: number) => void} turn
 */
function begin({ photos }, host, shown, turn) {
  let here = true;
  /** @param {Array<{url: string | null, small: boolean}>} found */
  const draw = (found) =>
    render(
      shown.map(
        ({ words, moment }, n) => html`<div class="viewer-picture">
          ${found[n]?.url ? html`<img src=${found[n].url} alt="${words}, ${moment}" draggable="false" />` : nothing}
          ${found[n] && !found[n].url ? html`<span class="viewer-missing">${photos.absent}</span>` : nothing}
          ${found[n]?.small ? html`<span class="viewer-note">${say('job-picture-small')}</span>` : nothing}
        </div>`,
      ),
      host,
    );
  draw([]);
  zoom = zoomable(host, turn);
  Promise.all(shown.map(({ sha256 }) => wholeOrSmall(photos, sha256))).then((found) => {
    if (here) draw(found);
  });
  const running = zoom;
  return () => {
    here = false;
    running.stop();
    if (zoom === running) zoom = null;
    render(nothing, host);
  };
}

/** @param {import('../../photos/photos.js').Photos} photos @param {string} sha256 */
async function wholeOrSmall(photos, sha256) {
  const whole = await photos.url(sha256);
  if (whole) return { url: whole, small: false };
  const url = await photos.url(sha256, { small: true });
  return { url, small: url !== null };
}
