// @ts-check
/**
 * All pictures of a job, by what they show; and one more of the work, such as how it looks when it is done.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { capture, takingParts } from '../scan/capture.js';
import { jobQuestion, loadJob } from './job-data.js';
import { picture } from '../frame/picture.js';
import { to } from '../frame/router.js';
import { sentenceCase } from '../frame/sentence-case.js';
import { dayAndTime } from '../frame/when.js';

/** @typedef {import('../../core/views.js').JobView} JobView */

const SHOWS = { screen: 'Screen of the test', unit: 'A sensor', work: 'The work', position: 'A position' };

export const photosPage = {
  load: loadJob,
  asks: jobQuestion,

  /** @param {Record<string, string>} params */
  formKey: ({ job }) => `photos/${job}`,

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const view = ctx.data;
    const head = { title: `Pictures · ${view.title}`, titled: true, back: to.job(view.id) };
    const taking = capture(ctx, { words: 'The work, before or after', alt: 'The work' });
    const parts = takingParts(ctx, taking, head, { shows: 'work' });
    if (parts) return parts;
    return {
      ...head,
      body: view.photos.length
        ? pictureList(ctx, view)
        : html`<section class="nothing">
            ${icon('camera', { size: 'large' })}
            <h2>No picture yet</h2>
            <p>The job asks for one of each position before a hand touches it.</p>
          </section>`,
      main: { words: 'Go on with the job', run: () => ctx.go(to.job(view.id)) },
      second: { words: 'Take a picture', run: taking.open },
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
  return place ? sentenceCase(place.name) : SHOWS[shows];
}
