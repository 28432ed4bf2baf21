// @ts-check
/**
 * What can be printed: a sheet on a paper of a chosen size, printed or handed on as a file.
 *
 * The size of the paper hangs on `data-paper` in print.css; a phone keeps which one was chosen last.
 */

import { html, nothing } from 'lit-html';

import { say } from '../../words/words.js';
import { SHOP_SETTING, shopField } from '../frame/shop.js';
import { namePages } from './page-name.js';
import { fitRoll } from './roll.js';
import { fileOf } from './sheet-file.js';

/**
 * @typedef {'a5' | 'page' | '80' | '58'} Paper
 *
 * @typedef {object} Sheet
 * @property {string} title       of the screen, and of the file that is handed on
 * @property {string} back        one of `to`
 * @property {Paper[]} papers     those it is laid out for; one alone is not asked about
 * @property {string} kept        the setting of this phone that remembers the paper
 * @property {(paper: Paper) => unknown} body
 * @property {unknown} [before]   what stands on the screen above the sheet
 */

const SIZES = { a5: 'paper-size-a5', page: 'paper-size-page', 80: 'paper-size-80', 58: 'paper-size-58' };

/** How many tests of a trail fit beside each other. */
export const TESTS_ACROSS = { a5: 5, page: 7, 80: 3, 58: 2 };

const PICTURE_WAIT_MS = 5000;

/** The name of the shop, as this phone keeps it. */
let shop = '';

// Whichever way printing was asked for.
addEventListener('beforeprint', () => {
  fitRoll(shownSheet());
  namePages(shownSheet());
});

/** Know the name that stands on all sheets. @param {import('../frame/context.js').Services} services */
export async function loadShop({ device }) {
  shop = (await device.setting(SHOP_SETTING)) ?? '';
}

/**
 * The paper that was chosen last, if the sheet still knows it.
 * @param {import('../frame/context.js').Services} services
 * @param {string} kept
 */
export async function chosenPaper(services, kept) {
  await loadShop(services);
  return (await services.device.setting(`paper.${kept}`)) ?? '';
}

/**
 * @param {import('../frame/context.js').Context} ctx  `ctx.data.paper` is what `chosenPaper` gave
 * @param {Sheet} sheet
 * @returns {import('../frame/frame.js').Parts}
 */
export function paperParts(ctx, { title, back, papers, kept, body, before = nothing }) {
  /** @type {Paper} */
  const paper = papers.find((each) => each === ctx.data.paper) ?? papers[0];
  const choose = async (/** @type {Paper} */ chosen) => {
    await ctx.services.device.saveSetting(`paper.${kept}`, chosen);
    await ctx.reload();
  };
  return {
    title,
    back,
    body: html`
      ${before} ${papers.length > 1 ? choice(papers, paper, choose) : nothing}
      ${shopCard(ctx)}
      <article class="sheet" data-paper=${paper} data-title=${title}>
        ${shop ? html`<p class="sheet-shop">${shop}</p>` : nothing}${body(paper)}
      </article>
    `,
    main: { words: say('paper-print'), run: () => printSheet() },
    second: { words: 'share' in navigator ? say('paper-share') : say('paper-save'), run: () => handOn(title) },
  };
}

/** @param {import('../frame/context.js').Context} ctx */
function shopCard(ctx) {
  const keep = async () => {
    shop = (ctx.form.shop ?? shop).trim();
    await ctx.services.device.saveSetting(SHOP_SETTING, shop);
    ctx.redraw();
  };
  return html`<details class="more">
    <summary>${say('paper-shop')}</summary>
    <div @change=${keep}>${shopField(ctx, shop)}</div>
  </details>`;
}

/**
 * @param {Paper[]} papers
 * @param {Paper} paper
 * @param {(paper: Paper) => unknown} choose
 */
function choice(papers, paper, choose) {
  return html`<fieldset class="asked paper-choice">
    <legend class="asked-words">${say('paper-size')}</legend>
    <div class="choices choices-two">
      ${papers.map(
        (each) => html`<label class="choice">
          <input type="radio" name="paper" .checked=${each === paper} @change=${() => choose(each)} />
          <span class="choice-word">${say(SIZES[each])}</span>
        </label>`,
      )}
    </div>
  </fieldset>`;
}

/** @returns {HTMLElement} */
function shownSheet() {
  return /** @type {HTMLElement} */ (document.querySelector('.sheet'));
}

/** Print once every picture is there, or is known to be missing. */
export async function printSheet() {
  await picturesOf(shownSheet());
  print();
}

/** @param {HTMLElement} sheet */
async function picturesOf(sheet) {
  const ends = Date.now() + PICTURE_WAIT_MS;
  const waits = () => [...sheet.querySelectorAll('.picture')].some((each) => !each.firstElementChild);
  while (waits() && Date.now() < ends) await new Promise((resolve) => setTimeout(resolve, 50));
  await Promise.allSettled([...sheet.querySelectorAll('img')].map((image) => image.decode()));
}

/**
 * Hand the sheet on as one file: by the share sheet of the phone, else as a download.
 * @param {string} title
 */
async function handOn(title) {
  const sheet = shownSheet();
  await picturesOf(sheet);
  const file = await fileOf(sheet, title);
  try {
    if (navigator.canShare?.({ files: [file] })) return await navigator.share({ title, files: [file] });
    if ('share' in navigator) return await navigator.share({ title, text: sheet.innerText });
  } catch (error) {
    // Whoever closes the share sheet has changed his mind.
    if (error instanceof DOMException && error.name === 'AbortError') return;
    throw error;
  }
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
