// @ts-check
/**
 * The screen that a pairing link opens: a name, one tap, and this phone may send. The app on the home screen has
 * no line for addresses, so a link can be scanned or pasted here too.
 */

import { html, nothing } from 'lit-html';

import { ApiError } from '../../sync/api.js';
import { copied } from '../../phone/clipboard.js';
import { isInstalled } from '../../log/device.js';
import { icon } from '../../shapes/icons.js';
import { textField } from '../frame/field.js';
import { phoneFamily } from '../phone/install.js';
import { enterLink } from './pair-link.js';
import { countWords } from '../phone/phone-notices.js';
import { ROLE_WORDS } from './phones-page.js';
import { linkTo, to } from '../frame/router.js';

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
      title: 'Pair this phone',
      back: to.jobs(),
      body: html`
        <h1>Pair this phone</h1>
        <p class="lead">
          It will be a phone ${ROLE_WORDS[role]}. From then on it sends what you record to ${location.host}, and shows
          what the others recorded.
        </p>
        ${problem
          ? html`<section class="panel panel-stop" role="alert">
              <p class="panel-kicker">${icon('stop')} Not paired</p>
              <p>${problem}</p>
            </section>`
          : nothing}
        ${textField(ctx, 'name', 'Your name', {
          note: 'Stands beside everything you record on this phone.',
          initial: data.actor,
          fault: missing ? 'Say who uses this phone.' : '',
          autocomplete: 'name',
          most: 80,
        })}
      `,
      main: { words: 'Pair this phone', run: () => pair(ctx, name) },
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
    title: 'Pair this phone',
    back: to.jobs(),
    body: html`<section class="panel panel-ask">
      <p class="panel-kicker">${icon('caution')} Not yet</p>
      <h1>${waits} must be sent first</h1>
      <p>
        This phone was ${ROLE_WORDS[was]} when they were recorded. One ${ROLE_WORDS[role]} may not send them. Send them,
        or pair it ${ROLE_WORDS[was]} first, then open this link again.
      </p>
    </section>`,
    main: { words: 'Send now', run: () => ctx.services.sync.now() },
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
    title: 'Pair this phone',
    back: to.jobs(),
    body: html`
      <h1>First the home screen, then pair it there</h1>
      <p class="lead">On an iPhone the app on the home screen shares nothing with this page.</p>
      <ol class="way-steps">
        <li>Copy this link with the button below.</li>
        <li>
          Put Swaptrail on the home screen: in Safari, the square with an arrow up, then “Add to Home Screen”.
          <a href=${linkTo(to.install())}>Show me</a>
        </li>
        <li>Open it there, tap “Pair this phone”, and paste the link.</li>
      </ol>
      <p role="status">${copyWords(form.copied)}</p>
      ${form.copied === false ? html`<p class="invitation-link">${location.href}</p>` : nothing}
    `,
    main: { words: 'Copy the link', run: copy },
    second: {
      words: 'Pair this page',
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
  return done ? 'The link is copied.' : 'This browser does not copy. Hold your finger on the link below and copy it.';
}
