// @ts-check
/**
 * What the server did not take, with its reason and what can be done: a picture is tried again, taken again
 * or left out; an entry stays on record here.
 */

import { html, nothing } from 'lit-html';

import { leavePhotoOut, tryPhotoAgain } from '../../sync/photo-sending.js';
import { icon } from '../../shapes/icons.js';
import { picture } from '../frame/picture.js';
import { linkTo, to } from '../frame/router.js';
import { dayAndTime } from '../frame/when.js';

/** @param {import('../frame/context.js').Context} ctx */
export function notTaken(ctx) {
  const { photosNotTaken, entriesNotTaken } = ctx.data.waiting;
  return html`${entriesNotTaken.length ? entries(ctx, entriesNotTaken) : nothing}
  ${photosNotTaken.map((/** @type {import('../../sync/unsent.js').PhotoNotTaken} */ photo) => photoNotTaken(ctx, photo))}`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../sync/unsent.js').NotTaken[]} refused
 */
function entries({ data }, refused) {
  const [first] = refused;
  const others = refused.length - 1;
  return html`<section class="panel panel-ask">
    <p class="panel-kicker">${icon('caution')} Not taken by the server</p>
    <p>
      An entry of ${data.titles.get(first.job) ?? 'this phone'}, ${dayAndTime(first.at)}: ${first.reason}
      ${others ? `${others} more wait behind it.` : ''}
    </p>
    <p>It stays on record here. Make a file of what waits, and show this to whoever looks after the server.</p>
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../sync/unsent.js').PhotoNotTaken} photo
 */
function photoNotTaken(ctx, { sha256, problem, at, job, position }) {
  const { services, data } = ctx;
  const again = async () => {
    await tryPhotoAgain(services.store, sha256);
    await ctx.reload();
    await services.sync.now();
    await ctx.reload();
  };
  const leave = async () => {
    await leavePhotoOut(services.store, sha256);
    await services.sync.now();
    await ctx.reload();
  };
  return html`<section class="panel panel-ask not-taken">
    <p class="panel-kicker">${icon('camera')} A picture is not sent</p>
    <p>${data.titles.get(job) ?? 'A picture'}, ${dayAndTime(at)}: ${problem}</p>
    ${picture(services, sha256, { alt: 'The picture that is not sent' })}
    <div class="card-actions">
      ${job
        ? html`<a class="small-button" href=${linkTo(position ? to.position(job, position) : to.job(job))}>Take it again</a>`
        : nothing}
      <button class="small-button" type="button" @click=${again}>Try to send it again</button>
      <button class="link-button" type="button" @click=${leave}>Leave it on this phone</button>
    </div>
  </section>`;
}
