// @ts-check
/**
 * What stands in place of a screen that only an app with a server has. No screen leads here; an address from outside
 * may, a pairing link for one.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { to } from '../frame/router.js';

/**
 * @param {{sign: string, title: string, heading: string, sentences: string[], second?: {words: string, hash: string}}} told
 * @returns {import('../pages.js').Page}
 */
function page({ sign, title, heading, sentences, second }) {
  return {
    load: () => null,
    /** @param {import('../frame/context.js').Context} ctx */
    draw: (ctx) => ({
      title,
      back: to.jobs(),
      body: html`<section class="nothing">
        ${icon(sign, { size: 'large' })}
        <h1>${heading}</h1>
        ${sentences.map((sentence) => html`<p>${sentence}</p>`)}
      </section>`,
      main: { words: 'Show the jobs', run: () => ctx.go(to.jobs()) },
      second: second ? { words: second.words, run: () => ctx.go(second.hash) } : null,
    }),
  };
}

export const noPairingPage = page({
  sign: 'car',
  title: 'A pairing link',
  heading: 'Nothing to pair here',
  sentences: [
    'This app works by itself, for one person. A pairing link belongs to a server: open it at the address of that server, as it was given to you.',
    'What you recorded here gets there as a file.',
  ],
  second: { words: 'Your file', hash: to.file() },
});

export const onePhonePage = page({
  sign: 'car',
  title: 'Phones',
  heading: 'No other phones are known here',
  sentences: ['A second phone is set up from your file. Where you worked on both, each takes in the file of the other.'],
  second: { words: 'Your file', hash: to.file() },
});

export const noCounterPage = page({
  sign: 'counter',
  title: 'Returns',
  heading: 'Returns are decided elsewhere',
  sentences: ['Take the sensor to the parts counter with its return slip and its record. Both are on the page of the sensor.'],
  second: { words: 'Scan a label', hash: to.find() },
});
