// @ts-check
/**
 * The screen that a pairing link opens: a name, one tap, and this phone may send.
 */

import { html, nothing } from 'lit-html';

import { ApiError } from '../api.js';
import { isInstalled } from '../device.js';
import { icon } from '../shapes/icons.js';
import { textField } from './field.js';
import { countWords } from './phone-notices.js';
import { ROLE_WORDS } from './phones-page.js';
import { to } from './router.js';

/** What the server said against it. */
let problem = '';

export const pairPage = {
  /** @param {import('./app.js').Services} services */
  load: ({ device }) => ({ actor: device.actor }),

  formKey: () => 'pair',

  /** @param {import('./app.js').Context} ctx */
  draw(ctx) {
    const { form, data, params, services } = ctx;
    if (!params.token) return noToken(ctx);
    const name = (form.name ?? data.actor).trim();
    const missing = form.tried && !name;
    // The link says what it is for; the server holds it to that.
    const role = params.token.startsWith('counter.') ? 'counter' : 'bench';
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
        ${isInstalled()
          ? nothing
          : html`<p class="soft">
              On a phone, put the app on the home screen first and pair it there: some phones keep the two apart.
            </p>`}
      `,
      main: { words: 'Pair this phone', run: () => pair(ctx, name) },
    };

    /** @param {import('./app.js').Context} context @param {string} as */
    async function pair(context, as) {
      form.tried = true;
      problem = '';
      context.redraw();
      if (!as) return;
      try {
        await services.sync.pair(params.token, as);
      } catch (error) {
        if (!(error instanceof ApiError)) throw error;
        problem = error.sentence;
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
 * @param {import('./app.js').Services} services
 * @param {string} role
 */
function waitingForAnother({ device, sync }, role) {
  const { unsentEvents } = sync.status.value;
  return role !== device.role.value && unsentEvents ? countWords(unsentEvents, 0) : '';
}

/**
 * @param {import('./app.js').Context} ctx
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

/** @param {import('./app.js').Context} ctx */
function noToken(ctx) {
  return {
    title: 'Pair this phone',
    back: to.jobs(),
    body: html`<section class="panel panel-ask">
      <h1>This link is not complete</h1>
      <p>The part behind # is missing. Scan the QR code again, or copy the whole link.</p>
    </section>`,
    main: { words: 'Show the jobs', run: () => ctx.go(to.jobs()) },
  };
}
