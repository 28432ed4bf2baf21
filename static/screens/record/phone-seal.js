// @ts-check
/**
 * The seal of a phone that has no server: its fingerprint, to be read out to whoever takes a record.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { day } from '../frame/when.js';

/** @param {import('../../record/phone-key.js').PhoneKey} key */
export function phoneSeal({ fingerprint, madeAt, kept }) {
  return html`<section class="card">
    <h2>The seal of this phone</h2>
    <p class="kicker">The records made here bear this fingerprint</p>
    <p class="fingerprint">${fingerprint}</p>
    ${kept
      ? html`<p class="soft">
          Read it out to whoever takes one of them. It is this phone's since ${day(madeAt)} and in no file: another phone,
          or a browser that lost its data, has another. Records made before stay good.
        </p>`
      : html`<p class="panel panel-ask">
          ${icon('ask')} This browser keeps no keys, so the fingerprint is another each time the app is opened. Read it
          out while you hand the file over. Nothing that you recorded hangs on it.
        </p>`}
  </section>`;
}
