// @ts-check
/**
 * Figures between yards: one's own as a file, those of others weighed in and taken out. The server reads the file
 * and says what comes of it; a seal that nobody has confirmed is compared first, as that of a record is.
 */

import { html, nothing } from 'lit-html';

import { saveFile } from '../../phone/save-file.js';
import { icon } from '../../shapes/icons.js';
import { ApiError } from '../../sync/request.js';
import { whoseSeal } from '../frame/whose-seal.js';

/**
 * @typedef {object} YardsCard
 * @property {string} title
 * @property {string} note
 * @property {Record<string, string>} words
 * @property {Array<{value: string, words: string}>} weights
 * @property {Array<{fingerprint: string, words: string, note: string}>} rows
 * @property {string} none  what is said where there is none
 * @property {string} give_from  why one's own cannot be given yet
 */

const PATH = '/api/lessons/yards';
const MOST_FILE = 999_999;

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {YardsCard} card
 */
export function yards(ctx, card) {
  if (ctx.services.device.role.value === 'counter') return nothing;
  const { words } = card;
  const { yards: form = {} } = ctx.form;
  const set = (/** @type {object} */ more) => {
    ctx.form.yards = { ...ctx.form.yards, ...more };
    ctx.redraw();
  };
  const weight = form.weight ?? card.weights[0].value;
  // On paper stand the yards that count, and nothing of what can be done about them.
  return html`<section class="screen-stack ${card.rows.length ? '' : 'on-screen'}">
    <h2>${card.title}</h2>
    <p>${card.note}</p>
    ${card.none ? html`<p class="soft">${card.none}</p>` : nothing}
    ${card.give_from ? html`<p class="soft">${card.give_from}</p>` : nothing}
    ${form.says ? html`<p role="status"><strong>${form.says}</strong></p>` : nothing}
    ${form.fault ? html`<p class="field-fault" role="alert">${form.fault}</p>` : nothing}
    ${card.rows.length ? counting(ctx, card, set) : nothing}
    <div class="card-actions">
      ${card.give_from
        ? nothing
        : html`<button class="small-button" type="button" @click=${() => give(ctx, set)}>${icon('out')} ${words.give}</button>`}
      <label class="small-button file-button"
        >${icon('in')} ${words.choose}
        <input class="aloud" type="file" accept=".json,application/json" @change=${(/** @type {any} */ { target }) => choose(target, set)} />
      </label>
    </div>
    ${form.file ? weighing(ctx, card, weight, set) : nothing}
  </section>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {YardsCard} card
 * @param {(more: object) => void} set
 */
function counting(ctx, { rows, words }, set) {
  return html`<ul class="list">
    ${rows.map(
      (row) => html`<li class="list-row">
        <span class="list-main">
          <span class="list-title">${row.words}</span>
          <span class="list-note">${row.note}</span>
          <button class="small-button on-screen" type="button" ?disabled=${ctx.busy} @click=${() => takeOut(ctx, row.fingerprint, set)}>
            ${words.out}
          </button>
        </span>
      </li>`,
    )}
  </ul>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {YardsCard} card
 * @param {string} weight
 * @param {(more: object) => void} set
 */
function weighing(ctx, { words, weights }, weight, set) {
  const { maker, name } = ctx.form.yards;
  return html`<fieldset class="asked on-screen">
      <legend class="asked-words">${name}. ${words.weight}</legend>
      <div class="choices">
        ${weights.map(
          (each) => html`<label class="choice">
            <input type="radio" name="yard-weight" .checked=${each.value === weight} @change=${() => set({ weight: each.value })} />
            <span class="choice-word">${each.words}</span>
          </label>`,
        )}
      </div>
    </fieldset>
    ${maker
      ? html`<p class="code">${maker.fingerprint}</p>
          ${whoseSeal(ctx, /** @type {any} */ ({ answer: { maker } }))}`
      : nothing}
    <button class="small-button wide-button on-screen" type="button" ?disabled=${ctx.busy || (maker && !maker.confirmed)} @click=${() => weighIn(ctx, weight, set)}>
      ${words['weigh-in']}
    </button>`;
}

/**
 * @param {HTMLInputElement} input
 * @param {(more: object) => void} set
 */
async function choose(input, set) {
  const file = input.files?.[0];
  input.value = '';
  // Longer than any file of a yard: the server says so of its first part.
  if (file) set({ file: await file.slice(0, MOST_FILE + 1).text(), name: file.name, says: '', fault: '', maker: null });
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} weight
 * @param {(more: object) => void} set
 */
async function weighIn(ctx, weight, set) {
  await asking(set, async () => {
    const answer = await ctx.services.sync.api.post(PATH, { file: ctx.form.yards.file, weight });
    if (answer.outcome === 'unconfirmed') {
      set({ maker: { fingerprint: answer.fingerprint, known_since: null, confirmed: null } });
      return;
    }
    set({ file: '', maker: null, says: answer.says });
    await ctx.reload();
  });
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} fingerprint
 * @param {(more: object) => void} set
 */
async function takeOut(ctx, fingerprint, set) {
  await asking(set, async () => {
    const { says } = await ctx.services.sync.api.post(`${PATH}/out`, { fingerprint });
    set({ says });
    await ctx.reload();
  });
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {(more: object) => void} set
 */
async function give(ctx, set) {
  await asking(set, async () => {
    const file = await ctx.services.sync.api.file(`${PATH}/own`);
    saveFile(new File([file], 'lessons-for-another-yard.json', { type: file.type }));
  });
}

/**
 * Says what the server refuses.
 * @param {(more: object) => void} set
 * @param {() => Promise<void>} work
 */
async function asking(set, work) {
  set({ fault: '', says: '' });
  try {
    await work();
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    set({ fault: error.sentence });
  }
}
