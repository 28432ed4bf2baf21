// @ts-check
/**
 * A label that was scanned on a phone without a server and without any record: a new phone of the person whose label
 * it is, or somebody who came across it.
 */

import { html } from 'lit-html';

import { code as shownCode } from '../../shapes/code.js';
import { to } from '../frame/router.js';
import { cameAcross, homeScreenFirst } from './unknown-label.js';
import { say } from '../../words/words.js';

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {{shown: string}} read
 * @returns {import('../frame/frame.js').Parts}
 */
export function emptyPhoneParts(ctx, { shown }) {
  return {
    title: say('unit-a-label'),
    back: to.jobs(),
    body: html`
      <section class="unit-head">
        ${shownCode(shown, { size: 'large' })}
        <h1>${say('unit-phone-empty')}</h1>
        <p class="lead">${say('unit-kept-elsewhere')}</p>
      </section>
      ${homeScreenFirst()}
      <section>
        <h2>${say('unit-your-label')}</h2>
        <p>${say('unit-your-label-do')}</p>
      </section>
      ${cameAcross()}
    `,
    main: { words: say('unit-take-in'), run: () => ctx.go(to.takeIn()) },
    second: { words: say('frame-the-jobs'), run: () => ctx.go(to.jobs()) },
  };
}
