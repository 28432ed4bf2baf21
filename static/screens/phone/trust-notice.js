// @ts-check
/**
 * Says that this phone may not trust the server, where its certificate is the installation's own, and leads to
 * the page that mends it. A browser does not tell a page why an answer failed, so it is said as a question.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';

/** @param {import('../frame/context.js').Context} ctx */
export function trustNotice({ services }) {
  const { device, sync, update } = services;
  const { trustPage } = device.server.standing.value;
  if (!trustPage) return nothing;
  if (update.refused.value) {
    return panel(
      'This phone does not trust the server',
      'The app was opened past a warning of the browser, so it will not open without a network. What you record here is kept.',
      trustPage,
    );
  }
  if (sync.status.value.state !== 'server unreachable' || !navigator.onLine) return nothing;
  return panel(
    'The server: not reachable, or not trusted',
    'Is this phone in its network, and the server on? If both are so, the phone may have lost its trust, or its clock is wrong.',
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
    <div class="card-actions"><a class="small-button" href=${page}>Trust the server</a></div>
  </section>`;
}
