// @ts-check
/**
 * What stands in place of a screen that only an app with a server has. No screen leads here; an address from outside
 * may, a pairing link for one.
 */

import { html } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { to } from '../frame/router.js';

/**
 * @typedef {{sign: string, title: string, heading: string, sentences: string[], second: {words: string, hash: string}}} Told
 *
 * @param {() => Told} tell  in the language in use, which is not there yet while modules load
 * @returns {import('../pages.js').Page}
 */
function page(tell) {
  return {
    load: () => null,
    /** @param {import('../frame/context.js').Context} ctx */
    draw(ctx) {
      const { sign, title, heading, sentences, second } = tell();
      return {
        title,
        back: to.jobs(),
        body: html`<section class="nothing">
          ${icon(sign, { size: 'large' })}
          <h1>${heading}</h1>
          ${sentences.map((sentence) => html`<p>${sentence}</p>`)}
        </section>`,
        main: { words: say('alone-show-jobs'), run: () => ctx.go(to.jobs()) },
        second: { words: second.words, run: () => ctx.go(second.hash) },
      };
    },
  };
}

export const noPairingPage = page(() => ({
  sign: 'car',
  title: say('alone-pairing-title'),
  heading: say('alone-pairing-heading'),
  sentences: [say('alone-pairing-what'), say('alone-pairing-file')],
  second: { words: say('alone-file-title'), hash: to.file() },
}));

export const onePhonePage = page(() => ({
  sign: 'car',
  title: say('alone-phones-title'),
  heading: say('alone-phones-heading'),
  sentences: [say('alone-phones-what')],
  second: { words: say('alone-file-title'), hash: to.file() },
}));

export const noCounterPage = page(() => ({
  sign: 'counter',
  title: say('alone-returns-title'),
  heading: say('alone-returns-heading'),
  sentences: [say('alone-returns-what')],
  second: { words: say('alone-returns-scan'), hash: to.find() },
}));
