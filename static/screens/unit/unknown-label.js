// @ts-check
/**
 * What is said of a label wherever the phone in the hand holds no record of it, with a server or without.
 */

import { html, nothing } from 'lit-html';

import { isInstalled } from '../../log/device.js';
import { phoneFamily } from '../phone/install.js';

/**
 * The camera of an iPhone opens a label in the browser, which shares nothing with the app on the home screen, so
 * what the page lacks is most often there.
 */
export function homeScreenFirst() {
  if (phoneFamily() !== 'iphone' || isInstalled()) return nothing;
  return html`<section>
    <h2>You have Swaptrail on the home screen</h2>
    <p>Open it there, and scan the label there. It shares nothing with this page.</p>
  </section>`;
}

/** For whoever has nothing to do with the records. */
export function cameAcross() {
  return html`<section>
    <h2>You came across this sensor</h2>
    <p>Leave the label on it. Take it, with its slip if there is one, to whoever gave it to you or to their parts counter.</p>
  </section>`;
}
