// @ts-check
/**
 * A label that was scanned on a phone without a server and without any record: a new phone of the person whose label
 * it is, or somebody who came across it.
 */

import { html } from 'lit-html';

import { code as shownCode } from '../../shapes/code.js';
import { to } from '../frame/router.js';
import { cameAcross, homeScreenFirst } from './unknown-label.js';

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {{shown: string}} read
 * @returns {import('../frame/frame.js').Parts}
 */
export function emptyPhoneParts(ctx, { shown }) {
  return {
    title: 'A label',
    back: to.jobs(),
    body: html`
      <section class="unit-head">
        ${shownCode(shown, { size: 'large' })}
        <h1>This phone holds no records yet</h1>
        <p class="lead">What is on record about this sensor is on the phone of whoever put the label on it.</p>
      </section>
      ${homeScreenFirst()}
      <section>
        <h2>It is your label</h2>
        <p>Take in the file that your other phone saved, then scan the label again.</p>
      </section>
      ${cameAcross()}
    `,
    main: { words: 'Take in my file', run: () => ctx.go(to.takeIn()) },
    second: { words: 'The jobs', run: () => ctx.go(to.jobs()) },
  };
}
