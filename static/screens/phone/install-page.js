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
import { countWords } from './phone-notices.js';
import { linkTo, to } from '../frame/router.js';

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
      title: 'On the home screen',
      back,
      body: html`
        <h1>${isInstalled() ? 'It is on the home screen' : 'Put Swaptrail on the home screen'}</h1>
        <p class="lead">
          It then starts in one tap, and phones are slower to throw away what it keeps. ${PLACE_WORDS.safeEitherWay}
        </p>
        ${ways}
      `,
      main: canInstall() ? { words: 'Put it on the home screen', run: () => byTheBrowser(ctx) } : null,
      second: isInstalled() ? null : { words: 'Not now', run: later },
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
    <h2 id="way-android">On an Android phone</h2>
    <div class="way-how">
      ${androidMenu()}
      <ol class="way-steps">
        <li>Tap the three dots in the browser's bar.</li>
        <li>Tap “Add to Home screen” or “Install app”, and confirm.</li>
      </ol>
    </div>
    <p class="soft">
      Without internet some phones can only make a shortcut to this page. That works too, with the same records.
    </p>
  </section>`;
}

/** @param {import('../frame/context.js').Context} ctx */
function iphone(ctx) {
  return html`<section class="screen-stack way" aria-labelledby="way-iphone">
    <h2 id="way-iphone">On an iPhone</h2>
    ${phoneFamily() === 'iphone' && !isInstalled() ? startsEmpty(ctx) : nothing}
    <div class="way-how">
      ${iphoneMenu()}
      <ol class="way-steps">
        <li>In Safari, tap the square with an arrow up. Newer ones keep it behind three dots.</li>
        <li>Tap “Add to Home Screen” further down the list, then “Add”.</li>
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
    <p class="panel-kicker">${icon('caution')} It starts empty there</p>
    <p>On an iPhone the app on the home screen shares nothing with this page.</p>
    ${HAS_SERVER ? overTheServer(services) : html`<p>Save your file first, and take it in there.</p>
          <a class="small-button" href=${linkTo(to.file())}>Save your file</a>`}
  </section>`;
}

/** @param {import('../frame/context.js').Services} services */
function overTheServer({ sync }) {
  const { state, unsentEvents, unsentPhotos } = sync.status.value;
  const waits = countWords(unsentEvents, unsentPhotos);
  if (state === 'not paired' && !waits) return html`<p>Put it there first. Then open it there and pair it.</p>`;
  return html`<ol class="way-steps">
    <li>
      ${waits
        ? html`${state === 'not paired' ? 'Pair this page and send' : 'Send'} what is only here:
            <a href=${linkTo(to.outbox())}>${waits}</a>.`
        : 'Nothing waits here: all of it was sent.'}
    </li>
    <li>Make a pairing link and copy it: <a href=${linkTo(to.you())}>You and this phone</a>.</li>
    <li>Put the app on the home screen, open it there, and pair it with the copied link.</li>
  </ol>`;
}
