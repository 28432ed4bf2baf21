// @ts-check
/**
 * Looking at a record from another installation: choose the file, see whether it is as it was sealed, by
 * whom, and what it says. Nothing of it is kept, unless a counter takes it as evidence.
 */

import { html, nothing } from 'lit-html';

import { openForeignRecord, RecordProblem } from '../../record/foreign-record.js';
import { HAS_SERVER } from '../../place.js';
import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { waitingFor } from './as-evidence.js';
import { foreignRecord } from './foreign-record-view.js';
import { to } from '../frame/router.js';

/** What is looked at now. @type {import('../../record/foreign-record.js').ForeignRecord | null} */
let shown = null;
/** @type {RecordProblem | null} */
let problem = null;
let checking = false;
/** Tells one file from the next, so that each is shown from its beginning. */
let count = 0;

export const checkRecordPage = {
  /** @param {import('../frame/context.js').Services} services */
  load: async (services) => {
    const { sync, saved } = services;
    if (shown) return { fingerprint: '', waiting: await waitingFor(services, shown) };
    // Without a server the fingerprint is this phone's, on the page about it.
    if (saved) return { fingerprint: '' };
    try {
      return { fingerprint: await sync.api.recordFingerprint() };
    } catch {
      return { fingerprint: '' }; // of use only while the server can be reached
    }
  },

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const choose = { words: chooseWords(), disabled: checking, run: pick };
    return {
      title: shown ? say('sealed-check-shown') : say('sealed-check-title'),
      back: to.jobs(),
      key: `${count}`,
      body: html`
        ${shown ? foreignRecord(ctx, shown) : before(ctx)}
        <input id="record-file" class="aloud" type="file" accept=".zip,application/zip" tabindex="-1" aria-label=${say('sealed-check-label')}
          @change=${(/** @type {Event} */ event) => take(ctx, event)} />
      `,
      main: choose,
      second: shown ? { words: say('sealed-check-away'), run: () => putAway(ctx) } : null,
    };
  },
};

function chooseWords() {
  if (checking) return say('sealed-check-checking');
  return shown || problem ? say('sealed-check-another') : say('sealed-check-choose');
}

function pick() {
  document.getElementById('record-file')?.click();
}

/** @param {import('../frame/context.js').Context} ctx */
function before({ data }) {
  return html`
    <h1>${say('sealed-check-heading')}</h1>
    <p class="lead">
      ${say('sealed-check-lead', { checker: HAS_SERVER ? 'server' : 'phone' })}
    </p>
    ${problem ? problemPanel(problem) : nothing}
    ${data.fingerprint
      ? html`<section class="card">
          <p class="kicker">${say('sealed-check-own')}</p>
          <p class="fingerprint">${data.fingerprint}</p>
          <p class="soft">${say('sealed-check-read-out')}</p>
        </section>`
      : nothing}
  `;
}

/** @param {RecordProblem} problem */
function problemPanel({ kind, title, sentence }) {
  const altered = kind === 'altered';
  return html`<section class="panel ${altered ? 'panel-stop' : 'panel-ask'}" role="alert">
    <p class="panel-kicker">${icon(altered ? 'stop' : 'ask')} ${title}</p>
    <p class="record-place">${sentence}</p>
    ${altered
      ? html`<p>${say('sealed-check-altered')}</p>`
      : nothing}
    ${kind === 'cut' ? html`<p>${say('sealed-check-cut')}</p>` : nothing}
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Event} event
 */
async function take(ctx, { target }) {
  const input = /** @type {HTMLInputElement} */ (target);
  const file = input.files?.[0];
  input.value = ''; // the same file may be chosen again
  if (!file) return;
  forget();
  checking = true;
  ctx.redraw();
  try {
    shown = await openForeignRecord(ctx.services, file);
  } catch (error) {
    if (!(error instanceof RecordProblem)) throw error;
    problem = error;
  } finally {
    checking = false;
    count += 1;
  }
  await ctx.reload();
}

/** @param {import('../frame/context.js').Context} ctx */
function putAway(ctx) {
  forget();
  count += 1;
  ctx.redraw();
}

function forget() {
  shown?.close();
  shown = null;
  problem = null;
}
