// @ts-check
/**
 * The screen that a pairing link opens: a name, one tap, and this phone may send. The app on the home screen has
 * no line for addresses, so a link can be scanned or pasted here too.
 */

import { html, nothing } from 'lit-html';

import { ApiError } from '../../sync/request.js';
import { copied } from '../../phone/clipboard.js';
import { isInstalled } from '../../log/device.js';
import { icon } from '../../shapes/icons.js';
import { textField } from '../frame/field.js';
import { phoneFamily } from '../phone/install.js';
import { enterLink } from './pair-link.js';
import { countWords } from '../phone/phone-notices.js';
import { linkTo, to } from '../frame/router.js';
import { say } from '../../words/words.js';

/** Weeks of work need not be sent, nor years be fetched, before there is something to see. */
const PATIENCE_MS = 3000;

/** What the server said against it. */
let problem = '';

export const pairPage = {
  /** @param {import('../frame/context.js').Services} services */
  load: ({ device }) => ({ actor: device.actor }),

  formKey: () => 'pair',

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { form, data, services } = ctx;
    const token = ctx.params.token || form.token;
    if (!token) return enterLink(ctx);
    if (startsEmptyElsewhere(services) && !form.here) return installFirst(ctx);
    const name = (form.name ?? data.actor).trim();
    const missing = form.tried && !name;
    // The link says what it is for; the server holds it to that.
    const role = token.startsWith('counter.') ? 'counter' : 'bench';
    const waits = waitingForAnother(services, role);
    if (waits) return sendFirst(ctx, role, waits);
    return {
      title: say('phone-pair'),
      back: to.jobs(),
      body: html`
        <h1>${say('phone-pair')}</h1>
        <p class="lead">
          ${say('you-will-be', { role, host: location.host })}
        </p>
        ${problem
          ? html`<section class="panel panel-stop" role="alert">
              <p class="panel-kicker">${icon('stop')} ${say('you-not-paired')}</p>
              <p>${problem}</p>
            </section>`
          : nothing}
        ${textField(ctx, 'name', say('you-name'), {
          note: say('you-pair-name-note'),
          initial: data.actor,
          fault: missing ? say('you-pair-name-wanted') : '',
          autocomplete: 'name',
          most: 80,
        })}
      `,
      main: { words: say('phone-pair'), run: () => pair(ctx, name) },
    };

    /** @param {import('../frame/context.js').Context} context @param {string} as */
    async function pair(context, as) {
      form.tried = true;
      problem = '';
      context.redraw();
      if (!as) return;
      try {
        await services.sync.pair(token, as, { patienceMs: PATIENCE_MS });
      } catch (error) {
        if (!(error instanceof ApiError)) throw error;
        problem = error.sentence;
        // A link that was used up makes way for another one.
        if (error.kind === 'refused' && form.token) Object.assign(form, { token: '', fault: problem });
        context.redraw();
        return;
      }
      await services.device.askToKeepData();
      context.forget();
      // The token is used up and has no business in the address any more.
      context.go(to.jobs(), { replace: true });
    }
  },
};

/**
 * What waits here that a phone of the new role may not send, in words.
 * @param {import('../frame/context.js').Services} services
 * @param {string} role
 */
function waitingForAnother({ device, sync }, role) {
  const { unsentEvents } = sync.status.value;
  return role !== device.role.value && unsentEvents ? countWords(unsentEvents, 0) : '';
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} role
 * @param {string} waits
 */
function sendFirst(ctx, role, waits) {
  const was = ctx.services.device.role.value;
  return {
    title: say('phone-pair'),
    back: to.jobs(),
    body: html`<section class="panel panel-ask">
      <p class="panel-kicker">${icon('caution')} ${say('you-not-yet')}</p>
      <h1>${say('you-send-first', { what: waits })}</h1>
      <p>
        ${say('you-send-first-note', { was, role })}
      </p>
    </section>`,
    main: { words: say('you-send-now'), run: () => ctx.services.sync.now() },
  };
}

/**
 * Safari and the app on the home screen of an iPhone share nothing: paired here, the app there would not be.
 * @param {import('../frame/context.js').Services} services
 */
function startsEmptyElsewhere({ device, sync }) {
  // What is recorded here has to be sent from here.
  const holdsWork = sync.status.value.unsentEvents || device.actor;
  return phoneFamily() === 'iphone' && !isInstalled() && !holdsWork;
}

/** @param {import('../frame/context.js').Context} ctx */
function installFirst(ctx) {
  const { form } = ctx;
  const copy = async () => {
    form.copied = await copied(location.href);
    ctx.redraw();
  };
  return {
    title: say('phone-pair'),
    back: to.jobs(),
    body: html`
      <h1>${say('you-install-first')}</h1>
      <p class="lead">${say('phone-shares-nothing')}</p>
      <ol class="way-steps">
        <li>${say('you-install-first-1')}</li>
        <li>
          ${say('you-install-first-2')}
          <a href=${linkTo(to.install())}>${say('you-show-me')}</a>
        </li>
        <li>${say('you-install-first-3')}</li>
      </ol>
      <p role="status">${copyWords(form.copied)}</p>
      ${form.copied === false ? html`<p class="invitation-link">${location.href}</p>` : nothing}
    `,
    main: { words: say('you-copy-link'), run: copy },
    second: {
      words: say('you-pair-page'),
      run: () => {
        form.here = true;
        ctx.redraw();
      },
    },
  };
}

/** @param {boolean | undefined} done */
function copyWords(done) {
  if (done === undefined) return '';
  return done ? say('you-link-copied') : say('you-no-copy-below');
}
