// @ts-check
/**
 * The phones that are let in: what each is for, when it was last seen, and the way to put one out;
 * below them who came, who failed to, and who was put out.
 */

import { html, nothing } from 'lit-html';

import { ApiError } from '../../sync/api.js';
import { icon } from '../../shapes/icons.js';
import { to } from '../frame/router.js';
import { ago, day, dayAndTime } from '../frame/when.js';

export const ROLE_WORDS = /** @type {Record<string, string>} */ ({
  bench: 'at the bench',
  counter: 'at the parts counter',
});

export const phonesPage = {
  /** @param {import('../frame/context.js').Services} services */
  async load({ sync }) {
    try {
      return await sync.api.get('/api/phones');
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      return { phones: [], log: [], problem: error.sentence };
    }
  },

  formKey: () => 'phones',

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { phones, log = [], problem } = ctx.data;
    return {
      title: 'Paired phones',
      back: to.you(),
      body: html`
        <h1>Paired phones</h1>
        <p class="lead">Put a phone out that was lost or that someone has taken along. What it has not sent stays on it.</p>
        ${problem || ctx.form.problem
          ? html`<p class="field-fault" role="alert">${problem || ctx.form.problem}</p>`
          : nothing}
        <ul class="list">
          ${phones.map((/** @type {any} */ phone) => row(ctx, phone))}
        </ul>
        ${log.length ? cameAndWent(log) : nothing}
      `,
      main: { words: 'Look again', run: () => ctx.reload() },
    };
  },
};

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {any} phone
 */
function row(ctx, phone) {
  const asked = ctx.form.asked === phone.id;
  const ask = () => {
    ctx.form.asked = asked ? 0 : phone.id;
    ctx.redraw();
  };
  return html`<li class="phone-row">
    <div class="list-row">
      ${icon(phone.role === 'counter' ? 'counter' : 'car')}
      <span class="list-main">
        <span class="list-title">${phone.name || 'No name'}</span>
        <span class="list-note">${ROLE_WORDS[phone.role]}${phone.this ? ', this phone' : ''}</span>
        <span class="list-note">last seen ${ago(phone.seen_at)}, paired ${day(phone.paired_at)}</span>
        ${keepingWords(phone)}
      </span>
      ${phone.this
        ? nothing
        : html`<button class="small-button" type="button" aria-expanded=${asked} @click=${ask}>Put out</button>`}
    </div>
    ${asked
      ? html`<div class="panel panel-ask" role="alert">
          <p>${phone.name || 'This phone'} can then send and see nothing until it is paired again.</p>
          <button class="small-button" type="button" @click=${() => revoke(ctx, phone)}>Put it out now</button>
        </div>`
      : nothing}
  </li>`;
}

/**
 * @typedef {{at: number, what: string, name: string, role: string, address: string, by: string}} Line
 */

/** @param {Line[]} log  the newest first */
function cameAndWent(log) {
  return html`<h2>Who came and went</h2>
    ${log.some(({ what }) => what === 'failed')
      ? html`<p class="lead">Whoever was not let in had no good link and saw nothing. If it was none of you, ask who uses your network.</p>`
      : nothing}
    <ul class="list">
      ${log.map(
        (line) => html`<li class="list-row">
          ${icon(line.what === 'paired' ? 'tick' : line.what === 'failed' ? 'caution' : 'cross')}
          <span class="list-main">
            <span class="list-title">${lineWords(line)}</span>
            <span class="list-note">${dayAndTime(line.at)}${line.address ? `, from ${line.address}` : ''}</span>
          </span>
        </li>`,
      )}
    </ul>`;
}

/** @param {Line} line */
function lineWords({ what, name, role, by }) {
  const who = name || 'A phone without a name';
  if (what === 'paired') return `${who} was let in ${ROLE_WORDS[role] ?? ''}`;
  if (what === 'put_out') return `${who} was put out${by ? ` by ${by}` : ''}`;
  return name ? `Someone who said to be ${name} was not let in` : 'Someone was not let in';
}

/**
 * Whether it keeps what it has not sent, as far as it has said.
 * @param {{promised: boolean | null, installed: boolean | null}} phone
 */
function keepingWords({ promised, installed }) {
  const said = [];
  if (installed !== null) said.push(installed ? 'on the home screen' : 'only a page in the browser');
  if (promised !== null) said.push(promised ? 'its browser keeps the data' : 'its browser may remove what is not sent');
  const safe = promised !== false && installed !== false;
  return said.length
    ? html`<span class="list-note list-note-marked">${icon(safe ? 'tick' : 'caution')}<span>${said.join(', ')}</span></span>`
    : nothing;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {any} phone
 */
async function revoke(ctx, phone) {
  const { api } = ctx.services.sync;
  Object.assign(ctx.form, { asked: 0, problem: '' });
  try {
    await api.session();
    await api.post(`/api/phones/${phone.id}/revoke`, {});
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    ctx.form.problem = error.sentence;
  }
  await ctx.reload();
}
