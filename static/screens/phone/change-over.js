// @ts-check
/**
 * The new version of the app: offered on screens where nothing is entered and no camera is open, and applied
 * on the person's tap once everything that was begun is written down.
 */

import { html, nothing } from 'lit-html';

import { LOG_LOCK, withLock } from '../../phone/locks.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';

/** @param {import('../frame/context.js').Context} ctx */
export function newVersion(ctx) {
  const { update, log } = ctx.services;
  if (!update.ready.value) return nothing;
  // It is kept in this page alone, and the page would go.
  const unsaved = log.unsaved.value !== null;
  return html`<section class="panel panel-act">
    <p class="panel-kicker">${icon('in')} ${say('phone-version')}</p>
    <p>
      ${unsaved
        ? say('phone-version-waits')
        : say('phone-version-here')}
    </p>
    <button class="small-button" type="button" ?disabled=${unsaved} @click=${() => changeOver(ctx)}>
      ${say('phone-version-change')}
    </button>
  </section>`;
}

/**
 * While the log is locked no tab of this app writes a fact.
 * @param {import('../frame/context.js').Context} ctx
 */
function changeOver({ services: { update, drafts } }) {
  return withLock(LOG_LOCK, async () => {
    await drafts.flush();
    await update.apply();
  });
}
