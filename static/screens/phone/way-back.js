// @ts-check
/**
 * What brings back the records of a phone that lost its data: the last file, named where its name outlived them.
 */

import { html, nothing } from 'lit-html';

import { lastFileOfLostData } from '../../alone/saved.js';
import { countWords } from './phone-notices.js';
import { linkTo, to } from '../frame/router.js';
import { dayAndTime } from '../frame/when.js';
import { say } from '../../words/words.js';

/** Below the notice of the loss. */
export function wayBack() {
  const file = lastFileOfLostData();
  return html`${file
      ? html`<p>
          ${say('phone-way-back')} <span class="device-id">${file.name}</span>
          ${say('phone-way-back-holds', { moment: dayAndTime(file.at), what: countWords(file.entries, file.photos) })}
        </p>`
      : nothing}
    <a class="small-button" href=${linkTo(to.takeIn())}>${say('phone-take-in-that')}</a>`;
}
