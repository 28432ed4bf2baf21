// @ts-check
/**
 * The phones that are let in: what each is for, when it was last seen, and the way to put one out;
 * below them what phones brought without proof, and who came, who failed to, and who was put out.
 */

import { html, nothing } from 'lit-html';

import { ApiError } from '../../sync/request.js';
import { icon } from '../../shapes/icons.js';
import { to } from '../frame/router.js';
import { ago, day, dayAndTime } from '../frame/when.js';
import { say } from '../../words/words.js';

export const phonesPage = {
  /** @param {import('../frame/context.js').Services} services */
  async load({ sync }) {
    try {
      const { api } = sync;
      return { ...(await api.get('/api/phones')), ...(await api.get('/api/brought')) };
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      return { phones: [], problem: error.sentence };
    }
  },

  formKey: () => 'phones',

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { phones, log = [], brought = [], bringers = [], set_aside: aside = [], problem } = ctx.data;
    return {
      title: say('you-phones'),
      back: to.you(),
      body: html`
        <h1>${say('you-phones')}</h1>
        <p class="lead">${say('you-phones-lead')}</p>
        ${problem || ctx.form.problem
          ? html`<p class="field-fault" role="alert">${problem || ctx.form.problem}</p>`
          : nothing}
        <ul class="list">
          ${phones.map((/** @type {any} */ phone) => row(ctx, phone))}
        </ul>
        ${brought.length ? notProven(ctx, brought, bringers) : nothing}
        ${aside.length ? setAside(ctx, aside) : nothing} ${log.length ? cameAndWent(log) : nothing}
      `,
      main: { words: say('you-look-again'), run: () => ctx.reload() },
    };
  },
};

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {any} phone
 */
function row(ctx, phone) {
  const isAsked = ctx.form.asked === phone.id;
  const ask = () => {
    ctx.form.asked = isAsked ? 0 : phone.id;
    ctx.redraw();
  };
  return html`<li class="phone-row">
    <div class="list-row">
      ${icon(phone.role === 'counter' ? 'counter' : 'car')}
      <span class="list-main">
        <span class="list-title">${phone.name || say('you-no-name')}</span>
        <span class="list-note">${phone.this ? say('you-role-this', { role: phone.role }) : say('you-role', { role: phone.role })}</span>
        <span class="list-note">${say('you-seen', { ago: ago(phone.seen_at), day: day(phone.paired_at) })}</span>
        ${keepingWords(phone)}
      </span>
      ${phone.this
        ? nothing
        : html`<button class="small-button" type="button" aria-expanded=${isAsked} @click=${ask}>${say('you-put-out')}</button>`}
    </div>
    ${isAsked
      ? html`<div class="panel panel-ask" role="alert">
          <p>${say('you-put-out-ask', { phone: phone.name || say('phone-this') })}</p>
          <button class="small-button" type="button" @click=${() => revoke(ctx, phone)}>${say('you-put-out-now')}</button>
        </div>`
      : nothing}
  </li>`;
}

/**
 * What phones brought and nothing proves: it counts for nothing until somebody whose work it is accepts it.
 *
 * @typedef {{device: string, by: number, brought_by: string, brought_at: number, entries: number, actor: string,
 *   first_at: number, last_at: number}} Brought
 *
 * @typedef {{by: number, brought_by: string, at: number | null, devices: number, entries: number}} Together  what one
 *   phone brought of all devices; `at` is when it was set aside
 *
 * @param {import('../frame/context.js').Context} ctx
 * @param {Brought[]} brought
 * @param {Together[]} bringers
 */
function notProven(ctx, brought, bringers) {
  return html`<h2>${say('you-brought')}</h2>
    <p class="lead">${say('you-brought-lead')}</p>
    ${bringers.filter(({ devices }) => devices > 1).map(
      ({ by, brought_by, devices, entries }) => html`<section class="panel panel-ask">
        <p>${say('you-brought-all', { name: brought_by || say('you-nameless'), entries, devices })}</p>
        <div class="card-actions">
          <button class="small-button" type="button" @click=${() => asked(ctx, '/api/brought/set-aside', { by })}>${say('you-brought-all-aside')}</button>
        </div>
      </section>`,
    )}
    ${brought.map(
      ({ device, by, brought_by, brought_at, entries, actor, first_at, last_at }) => html`<section class="panel panel-ask">
        <p class="panel-kicker">${icon('caution')} ${say('you-brought-by', { name: brought_by || say('you-nameless'), moment: dayAndTime(brought_at) })}</p>
        <p>${say('you-brought-of', { entries, name: actor || say('you-no-name'), first: dayAndTime(first_at), last: dayAndTime(last_at) })}</p>
        <div class="card-actions">
          <button class="small-button" type="button" @click=${() => decide(ctx, device, 'accept', by)}>${say('you-brought-accept')}</button>
          <button class="small-button" type="button" @click=${() => decide(ctx, device, 'set-aside', by)}>${say('you-brought-set-aside')}</button>
        </div>
      </section>`,
    )}`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Together[]} aside  the last first
 */
function setAside(ctx, aside) {
  return html`<h2>${say('you-set-aside')}</h2>
    <p class="lead">${say('you-set-aside-lead')}</p>
    ${aside.map(
      ({ by, brought_by, at, entries }) => html`<section class="panel">
        <p>${say('you-set-aside-of', { entries, name: brought_by || say('you-nameless'), moment: dayAndTime(at ?? 0) })}</p>
        <div class="card-actions">
          <button class="small-button" type="button" @click=${() => asked(ctx, '/api/brought/take-back', { by, at })}>${say('you-set-aside-back')}</button>
        </div>
      </section>`,
    )}`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} device
 * @param {'accept' | 'set-aside'} what
 * @param {number} by
 */
function decide(ctx, device, what, by) {
  return asked(ctx, `/api/brought/${device}/${what}`, { by });
}

/**
 * @typedef {{at: number, what: string, name: string, role: string, address: string, by: string}} Line
 */

/** @param {Line[]} log  the newest first */
function cameAndWent(log) {
  return html`<h2>${say('you-came-and-went')}</h2>
    ${log.some(({ what }) => what === 'failed')
      ? html`<p class="lead">${say('you-failed-note')}</p>`
      : nothing}
    <ul class="list">
      ${log.map(
        (line) => html`<li class="list-row">
          ${icon(line.what === 'paired' ? 'tick' : line.what === 'failed' ? 'caution' : 'cross')}
          <span class="list-main">
            <span class="list-title">${lineWords(line)}</span>
            <span class="list-note">${line.address ? say('you-line-from', { moment: dayAndTime(line.at), address: line.address }) : dayAndTime(line.at)}</span>
          </span>
        </li>`,
      )}
    </ul>`;
}

/** @param {Line} line */
function lineWords({ what, name, role, by }) {
  const who = name || say('you-nameless');
  if (what === 'paired') return say('you-let-in', { name: who, role });
  if (what === 'put_out') return by ? say('you-was-put-out-by', { name: who, by }) : say('you-was-put-out', { name: who });
  return name ? say('you-name-failed', { name }) : say('you-someone-failed');
}

/**
 * Whether it keeps what it has not sent, as far as it has said.
 * @param {{promised: boolean | null, installed: boolean | null}} phone
 */
function keepingWords({ promised, installed }) {
  const said = [];
  if (installed !== null) said.push(installed ? say('you-keeps-installed') : say('you-keeps-page'));
  if (promised !== null) said.push(promised ? say('you-keeps-promised') : say('you-keeps-may-remove'));
  const safe = promised !== false && installed !== false;
  return said.length
    ? html`<span class="list-note list-note-marked">${icon(safe ? 'tick' : 'caution')}<span>${said.join(', ')}</span></span>`
    : nothing;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {any} phone
 */
function revoke(ctx, phone) {
  return asked(ctx, `/api/phones/${phone.id}/revoke`, {});
}

/**
 * Ask the server for it, then look again.
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} path
 * @param {object} body
 */
async function asked(ctx, path, body) {
  const { api } = ctx.services.sync;
  Object.assign(ctx.form, { asked: 0, problem: '' });
  try {
    await api.session();
    await api.post(path, body);
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    ctx.form.problem = error.sentence;
  }
  await ctx.reload();
}
