// @ts-check
/**
 * How the app gets onto the home screen, on both families of phones; the one this phone belongs to first.
 */

import { html, nothing } from 'lit-html';

import { isInstalled } from '../../log/device.js';
import { icon } from '../../shapes/icons.js';
import { PLACE_WORDS } from '../../phone/place-words.js';
import { HAS_SERVER } from '../../place.js';
import { androidMenu, iphoneMenu } from '../../shapes/install-menus.js';
import { canInstall, install, phoneFamily, putInstallOff } from './install.js';
import { unsentWords } from './phone-notices.js';
import { linkTo, to } from '../frame/router.js';
import { say } from '../../words/words.js';

export const installPage = {
  load: () => ({}),

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const back = ctx.params.job ? to.job(ctx.params.job) : to.jobs();
    const family = phoneFamily();
    const ways = family === 'iphone' ? [iphone(ctx), android()] : [android(), iphone(ctx)];
    const later = async () => {
      await putInstallOff(ctx.services);
      ctx.go(back);
    };
    return {
      title: say('phone-on-home-screen'),
      back,
      body: html`
        <h1>${isInstalled() ? say('phone-is-installed') : say('phone-install')}</h1>
        <p class="lead">
          ${say('phone-install-lead')} ${PLACE_WORDS.safeEitherWay}
        </p>
        ${ways}
      `,
      main: canInstall() ? { words: say('phone-install-button'), run: () => byTheBrowser(ctx) } : null,
      second: isInstalled() ? null : { words: say('phone-not-now'), run: later },
    };
  },
};

/** @param {import('../frame/context.js').Context} ctx */
async function byTheBrowser(ctx) {
  await install(ctx.services);
  ctx.redraw();
}

/** The words are those of the systems, from memory: versions differ in them. */
function android() {
  return html`<section class="screen-stack way" aria-labelledby="way-android">
    <h2 id="way-android">${say('phone-android')}</h2>
    <div class="way-how">
      ${androidMenu()}
      <ol class="way-steps">
        <li>${say('phone-android-1')}</li>
        <li>${say('phone-android-2')}</li>
      </ol>
    </div>
    <p class="soft">
      ${say('phone-android-note')}
    </p>
  </section>`;
}

/** @param {import('../frame/context.js').Context} ctx */
function iphone(ctx) {
  return html`<section class="screen-stack way" aria-labelledby="way-iphone">
    <h2 id="way-iphone">${say('phone-iphone')}</h2>
    ${phoneFamily() === 'iphone' && !isInstalled() ? startsEmpty(ctx) : nothing}
    <div class="way-how">
      ${iphoneMenu()}
      <ol class="way-steps">
        <li>${say('phone-iphone-1')}</li>
        <li>${say('phone-iphone-2')}</li>
      </ol>
    </div>
  </section>`;
}

/**
 * Safari and the app on the home screen of an iPhone share nothing: what is here has to be sent, and the new
 * one paired by itself.
 * @param {import('../frame/context.js').Context} ctx
 */
function startsEmpty({ services }) {
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('caution')} ${say('phone-starts-empty')}</p>
    <p>${say('phone-shares-nothing')}</p>
    ${HAS_SERVER ? overTheServer(services) : html`<p>${say('phone-save-first')}</p>
          <a class="small-button" href=${linkTo(to.file())}>${say('phone-save-your-file')}</a>`}
  </section>`;
}

/** @param {import('../frame/context.js').Services} services */
function overTheServer({ sync }) {
  const { state } = sync.status.value;
  const waits = unsentWords(sync.status.value);
  if (state === 'not paired' && !waits) return html`<p>${say('phone-pair-there')}</p>`;
  return html`<ol class="way-steps">
    <li>
      ${waits
        ? html`${say('phone-send-only-here', { paired: state === 'not paired' ? 'no' : 'yes' })}
            <a href=${linkTo(to.outbox())}>${waits}</a>.`
        : say('phone-nothing-only-here')}
    </li>
    <li>${say('phone-make-link')} <a href=${linkTo(to.you())}>${say('you-title')}</a>.</li>
    <li>${say('phone-pair-with-link')}</li>
  </ol>`;
}
