// @ts-check
/**
 * Shows photos: those on record by their hash, and one that was just taken by its bytes.
 */

import { html, nothing, render } from 'lit-html';

import { mounted } from './mount.js';

/**
 * A photo on record, from this phone or the server; says so where neither has it now.
 * @param {import('./context.js').Services} services
 * @param {string} sha256
 * @param {{alt: string, large?: boolean, small?: boolean}} options  small: a small version does, as in a list; where
 *     the whole one cannot be had, it does anyway
 */
export function picture({ photos }, sha256, { alt, large = false, small = false }) {
  return html`<span
    class=${large ? 'picture picture-large' : 'picture'}
    ${mounted(sha256, (host) => {
      let here = true;
      const found = small ? photos.url(sha256, { small }) : photos.url(sha256).then((url) => url ?? photos.url(sha256, { small: true }));
      found.then((url) => {
        if (!here) return;
        const missing = html`<span class="picture-missing">${photos.absent}</span>`;
        render(url ? html`<img src=${url} alt=${alt} />` : missing, host);
      });
      return () => {
        here = false;
        render(nothing, host);
      };
    })}
  ></span>`;
}

/**
 * What is to be said of a photo that is not here as it was taken.
 * @param {import('./context.js').Services} services
 * @param {string} sha256
 */
export function pictureNote({ photos }, sha256) {
  const note = photos.note(sha256);
  return note ? html`<br /><span class="soft">${note}</span>` : nothing;
}

/**
 * A photo that is not on record yet.
 * @param {import('../../log/log.js').Photo} photo
 * @param {string} alt
 */
export function freshPicture({ sha256, bytes, mime }, alt) {
  return html`<span
    class="picture picture-large"
    ${mounted(`fresh ${sha256}`, (host) => {
      const url = URL.createObjectURL(new Blob([bytes], { type: mime }));
      render(html`<img src=${url} alt=${alt} />`, host);
      return () => {
        render(nothing, host);
        URL.revokeObjectURL(url);
      };
    })}
  ></span>`;
}
