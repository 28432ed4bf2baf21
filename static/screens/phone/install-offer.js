// @ts-check
/**
 * The offer to put the app on the home screen: made once a job is on the phone, put off with one tap, and
 * plainer when much would be lost.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { canInstall, install, installOffer, phoneFamily, putInstallOff } from './install.js';
import { unsentWords } from './phone-notices.js';
import { linkTo, to } from '../frame/router.js';
import { say } from '../../words/words.js';

/**
 * On the list of jobs: above it once much would be lost, below it before.
 * @param {import('../frame/context.js').Context} ctx
 * @param {number} jobs  on this phone
 * @param {'offer' | 'strong'} asked  the one that belongs to this place
 */
export function installCard(ctx, jobs, asked) {
  const level = installOffer(ctx.services, jobs);
  if (level !== asked) return nothing;
  const strong = level === 'strong';
  return html`<section class="panel ${strong ? 'panel-ask' : 'panel-act'}" aria-labelledby="install-title">
    <p class="panel-kicker">${icon(strong ? 'caution' : 'in')} ${strong ? say('phone-can-get-lost') : say('phone-so-it-stays')}</p>
    <h2 id="install-title">${say('phone-install')}</h2>
    <p>${strong ? muchWaits(ctx) : calmWords()}</p>
    <div class="card-actions">
      ${way(ctx)}
      ${strong ? html`<a class="small-button" href=${linkTo(to.outbox())}>${say('phone-see-what-waits')}</a>` : nothing}
      <button class="link-button" type="button" @click=${() => later(ctx)}>${say('phone-not-now')}</button>
    </div>
  </section>`;
}

/**
 * At the first step of a job: one line, below what is to be done.
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} job
 */
export function installLine({ services }, job) {
  if (installOffer(services, 1) === 'none') return nothing;
  return html`<a class="notice notice-row" href=${linkTo(to.jobPart(job, 'install'))}>
    ${icon('in')} <span>${say('phone-install-line')}</span>
  </a>`;
}

/** @param {import('../frame/context.js').Context} ctx */
function way({ services }) {
  // On an iPhone there is more to say first, and no browser hands over a prompt there.
  return canInstall()
    ? html`<button class="small-button" type="button" @click=${() => install(services)}>${say('phone-put-it-there')}</button>`
    : html`<a class="small-button" href=${linkTo(to.install())}>${say('phone-show-how')}</a>`;
}

function calmWords() {
  return phoneFamily() === 'iphone'
    ? say('phone-install-iphone')
    : say('phone-install-calm');
}

/** @param {import('../frame/context.js').Context} ctx */
function muchWaits({ services }) {
  return say('phone-install-strong', { what: unsentWords(services.sync.status.value) });
}

/** @param {import('../frame/context.js').Context} ctx */
async function later(ctx) {
  await putInstallOff(ctx.services);
  ctx.redraw();
}
