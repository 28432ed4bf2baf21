// @ts-check
/**
 * Says that this phone may not trust the server, where its certificate is the installation's own, and leads to
 * the page that mends it. A browser does not tell a page why an answer failed, so it is said as a question.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';

/** @param {import('../frame/context.js').Context} ctx */
export function trustNotice({ services }) {
  const { device, sync, update } = services;
  const { trustPage } = device.server.standing.value;
  if (!trustPage) return nothing;
  if (update.refused.value) {
    return panel(
      say('phone-no-trust'),
      say('phone-no-trust-note'),
      trustPage,
    );
  }
  if (sync.status.value.state !== 'server unreachable' || !navigator.onLine) return nothing;
  return panel(
    say('phone-maybe-no-trust'),
    say('phone-maybe-no-trust-note'),
    trustPage,
  );
}

/**
 * @param {string} kicker
 * @param {string} sentence
 * @param {string} page
 */
function panel(kicker, sentence, page) {
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('caution')} ${kicker}</p>
    <p>${sentence}</p>
    <div class="card-actions"><a class="small-button" href=${page}>${say('phone-trust')}</a></div>
  </section>`;
}
