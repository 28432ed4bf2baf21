// @ts-check
/**
 * All pictures of a job, by what they show; and one more of the work, such as how it looks when it is done.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { capture, takingParts } from '../scan/capture.js';
import { jobQuestion, loadJob } from './job-data.js';
import { picture } from '../frame/picture.js';
import { to } from '../frame/router.js';
import { sentenceCase } from '../frame/sentence-case.js';
import { dayAndTime } from '../frame/when.js';

/** @typedef {import('../../core/views.js').JobView} JobView */

const SHOWS = { screen: 'job-photos-screen', unit: 'job-photos-unit', work: 'job-photos-work', position: 'job-photos-position' };

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
        ? pictureList(ctx, view)
        : html`<section class="nothing">
            ${icon('camera', { size: 'large' })}
            <h2>${say('job-photos-none')}</h2>
            <p>${say('job-photos-none-lead')}</p>
          </section>`,
      main: { words: say('job-go-on'), run: () => ctx.go(to.job(view.id)) },
      second: { words: say('job-photos-take'), run: taking.open },
    };
  },
};

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {JobView} view  of the job
 */
export function pictureList({ services }, view) {
  return html`<ul class="photos photos-wide">
    ${view.photos.map((photo) => {
      const words = photoWords(view, photo);
      return html`<li class="photo">
        ${picture(services, photo.sha256, { alt: words })}
        <span class="photo-words">${words}<br />${dayAndTime(photo.at)}</span>
      </li>`;
    })}
  </ul>`;
}

/**
 * @param {JobView} view
 * @param {{shows: keyof typeof SHOWS, position: string}} photo
 */
function photoWords(view, { shows, position }) {
  const place = view.board.positions.find(({ id }) => id === position);
  return place ? sentenceCase(place.name) : say(SHOWS[shows]);
}
