// @ts-check
/**
 * What is said of a label wherever the phone in the hand holds no record of it, with a server or without.
 */

import { html, nothing } from 'lit-html';

import { isInstalled } from '../../log/device.js';
import { phoneFamily } from '../phone/install.js';
import { say } from '../../words/words.js';

/**
 * The camera of an iPhone opens a label in the browser, which shares nothing with the app on the home screen, so
 * what the page lacks is most often there.
 */
export function homeScreenFirst() {
  if (phoneFamily() !== 'iphone' || isInstalled()) return nothing;
  return html`<section>
    <h2>${say('unit-home-screen')}</h2>
    <p>${say('unit-home-screen-do')}</p>
  </section>`;
}

/** For whoever has nothing to do with the records. */
export function cameAcross() {
  return html`<section>
    <h2>${say('unit-came-across')}</h2>
    <p>${say('unit-came-across-do')}</p>
  </section>`;
}
