// @ts-check
/**
 * A label that the camera of an iPhone opened: it always opens in the browser, which shares nothing with the app
 * on the home screen, so what the page lacks is most often there.
 */

import { html, nothing } from 'lit-html';

import { isInstalled } from '../device.js';
import { phoneFamily } from './install.js';

/** Says so where it may be the case. */
export function homeScreenFirst() {
  if (phoneFamily() !== 'iphone' || isInstalled()) return nothing;
  return html`<section>
    <h2>You have Swaptrail on the home screen</h2>
    <p>Open it there, and scan the label there. It shares nothing with this page.</p>
  </section>`;
}
