// @ts-check
/**
 * All pictures of a job, by what they show; and one more of the work, such as how it looks when it is done.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { capture, takingParts } from '../scan/capture.js';
import { jobQuestion, loadJob } from './job-data.js';
import { picture, pictureNote } from '../frame/picture.js';
import { rows } from '../frame/part.js';
import { linkTo, to } from '../frame/router.js';
import { sentenceCase } from '../frame/sentence-case.js';
import { dayAndTime } from '../frame/when.js';

/** @typedef {import('../../core/views.js').JobPicture} JobPicture */
/** @typedef {import('../../core/views.js').JobView} JobView */

export const photosPage = {
  load: loadJob,
  asks: jobQuestion,

  /** @param {Record<string, string>} params */
  formKey: ({ job }) => `photos/${job}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const view = ctx.data;
    const head = { title: say('job-photos-title', { job: view.title }), titled: true, back: to.job(view.id) };
    const taking = capture(ctx, { words: say('job-photos-guide'), alt: say('job-photos-work') });
    const parts = takingParts(ctx, taking, head, { shows: 'work' });
    if (parts) return parts;
    return {
      ...head,
      body: view.photos.length
        ? pictureList(ctx, view, { opens: true })
        : html`<section class="nothing">
            ${icon('camera', { size: 'large' })}
            <h2>${say('job-photos-none')}</h2>
            <p>${say('job-photos-none-lead')}</p>
          </section>`,
      main: { words: view.closed ? say('job-back') : say('job-go-on'), run: () => ctx.go(to.job(view.id)) },
      second: { words: say('job-photos-take'), run: taking.open },
    };
  },
};

/**
 * By position, so that what came before a change stands beside what came after it.
 * @param {import('../frame/context.js').Context} ctx
 * @param {JobView} view  of the job
 * @param {{opens?: boolean}} [options]  opens: a tap shows one large; not where the job is only in a file
 */
export function pictureList({ services }, view, { opens = false } = {}) {
  return groups(inOrder(view)).map(
    ({ words, photos }) => html`<section>
      ${opens ? html`<h2>${words}</h2>` : html`<h4>${words}</h4>`}
      <ul class="photos photos-wide">
        ${rows(photos, (photo) => {
          const shown = html`${picture(services, photo.sha256, { alt: photo.words, small: true })}
            <span class="photo-words">${sentenceCase(photo.moment)}<br /><span class="soft">${dayAndTime(photo.at)}</span>${pictureNote(services, photo.sha256)}</span>`;
          return opens
            ? html`<li><a class="photo" href=${linkTo(to.photo(view.id, photo.sha256))}>${shown}</a></li>`
            : html`<li class="photo">${shown}</li>`;
        })}
      </ul>
    </section>`,
  );
}

/**
 * Those of positions in the order of the board, each position's first picture first; then the others.
 * @param {JobView} view
 */
export function inOrder({ photos, board }) {
  const places = board.positions.map(({ id }) => id);
  const place = (/** @type {JobPicture} */ { shows, position }) => {
    const at = shows === 'position' ? places.indexOf(position) : -1;
    return at < 0 ? places.length : at;
  };
  return [...photos].sort((one, other) => place(one) - place(other));
}

/**
 * Pictures that show the same, in the order in which they come.
 * @param {JobPicture[]} photos
 */
function groups(photos) {
  /** @type {Array<{words: string, photos: JobPicture[]}>} */
  const found = [];
  for (const photo of photos) {
    const group = found.find(({ words }) => words === photo.words);
    if (group) group.photos.push(photo);
    else found.push({ words: photo.words, photos: [photo] });
  }
  return found;
}
