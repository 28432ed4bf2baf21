// @ts-check
/**
 * The seal of a phone that has no server: its fingerprint, to be read out to whoever takes a record.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { day } from '../frame/when.js';

/** @param {import('../../log/phone-key.js').PhoneKey} key */
export function phoneSeal({ fingerprint, madeAt, kept }) {
  return html`<section class="card">
    <h2>${say('sealed-phone-heading')}</h2>
    <p class="kicker">${say('sealed-phone-kicker')}</p>
    <p class="fingerprint">${fingerprint}</p>
    ${kept
      ? html`<p class="soft">
          ${say('sealed-phone-kept', { since: day(madeAt) })}
        </p>`
      : html`<p class="panel panel-ask">
          ${icon('ask')} ${say('sealed-phone-not-kept')}
        </p>`}
  </section>`;
}
