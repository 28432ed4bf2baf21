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
import { say } from '../../words/words.js';

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
    <p class="panel-kicker">${icon('caution')} ${say('you-entry-not-taken')}</p>
    <p>
      ${say('you-entry-of', { job: data.titles.get(first.job) ?? say('you-this-phone'), moment: dayAndTime(first.at), why: first.reason })}
      ${others ? say('you-more-wait', { count: others }) : ''}
    </p>
    <p>${say('you-entry-not-taken-do')}</p>
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
    // Before all is said to be sent: it stood below that for a moment.
    await ctx.reload();
    await services.sync.now();
    await ctx.reload();
  };
  return html`<section class="panel panel-ask not-taken">
    <p class="panel-kicker">${icon('camera')} ${say('you-picture-not-sent')}</p>
    <p>${say('you-picture-of', { job: data.titles.get(job) ?? say('you-a-picture'), moment: dayAndTime(at), why: problem })}</p>
    ${picture(services, sha256, { alt: say('you-picture-not-sent-alt') })}
    <div class="card-actions">
      ${job
        ? html`<a class="small-button" href=${linkTo(position ? to.position(job, position) : to.job(job))}>${say('scan-take-again')}</a>`
        : nothing}
      <button class="small-button" type="button" @click=${again}>${say('you-picture-again')}</button>
      <button class="link-button" type="button" @click=${leave}>${say('you-picture-leave')}</button>
    </div>
  </section>`;
}
