// @ts-check
/**
 * The labels that were just recorded as printed, at their size on paper: to the printer, or as a file.
 *
 * Only a printing that was just made is shown. Labels shown here a second time would be on paper twice, so
 * later the batch asks whether the first print was destroyed.
 */

import { html, nothing } from 'lit-html';

import { canShare, saveFile, shareFile } from '../../phone/save-file.js';
import { to } from '../frame/router.js';
import { labelPage } from './label-drawing.js';
import { pagesOf } from './phone-press.js';
import { press } from './press.js';
import { printingOf } from './printing.js';

/** @typedef {import('../../core/views.js').LabelPage} LabelPage */

/** The size of the paper can't stand in a style sheet: people type it. */
const paperRule = new CSSStyleSheet();

export const labelSheetPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params
   */
  async load(services, { batch }) {
    const { batch: id } = await press.batch(services, Number(batch));
    const printing = printingOf(id);
    const drawn = printing && (await pagesOf(services.core, printing));
    if (drawn) {
      paperRule.replaceSync(pageRule(drawn.paper));
      document.adoptedStyleSheets = [paperRule];
    }
    return { drawn, count: printing?.codes.length ?? 0 };
  },

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    const { drawn, count } = ctx.data;
    const back = to.batch(Number(ctx.params.batch));
    if (!drawn) return shownBefore(ctx, back);
    const [width, height] = drawn.paper.map((/** @type {number} */ side) => side / 100);
    const file = () => fileOf(`Labels of batch ${ctx.params.batch}`, drawn);
    const keep = { words: 'Save as a file', run: () => saveFile(file()) };
    return {
      title: 'To the printer',
      back,
      body: html`
        <section class="panel panel-ask label-advice">
          <p>
            In the print window choose paper of ${width} x ${height} mm, a scale of 100 % and no margins.
            ${drawn.pages.length > 1 ? `${drawn.pages.length} pages.` : nothing} ${ruler(drawn)}
          </p>
        </section>
        <article class="sheet label-sheet" data-paper="labels">
          ${drawn.pages.map((/** @type {LabelPage} */ page, /** @type {number} */ n) =>
            labelPage(drawn, page, `Page ${n + 1} with labels`),
          )}
        </article>
      `,
      main: { words: `Print ${count === 1 ? 'it' : `all ${count}`}`, run: () => print() },
      second: canShare(file()) ? { words: 'Share as a file', run: () => shareFile(file()) } : keep,
    };
  },
};

/** @param {import('./label-drawing.js').Drawn} drawn */
function ruler({ pages }) {
  const told = pages.some(({ lines }) => lines.some(([, , , text]) => text.includes('The bar is')));
  return told ? 'Then measure the bar at the foot: it is 100 mm long.' : nothing;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} back
 */
function shownBefore(ctx, back) {
  return {
    title: 'To the printer',
    back,
    body: html`<section class="nothing">
      <h1>These labels went to the printer before</h1>
      <p>
        A label on paper twice could end up on two sensors. If that print failed, open the batch: what is on no sensor
        can be printed again from there.
      </p>
    </section>`,
    main: { words: 'Open the batch', run: () => ctx.go(back) },
  };
}

/** @param {number[]} paper  in 1/100 mm */
function pageRule(paper) {
  const size = paper.map((side) => `${side / 100}mm`).join(' ');
  return `@page labels { size: ${size}; margin: 0; }`;
}

/**
 * The pages as one file that stands alone.
 * @param {string} title
 * @param {import('./label-drawing.js').Drawn} drawn
 */
function fileOf(title, drawn) {
  const pages = [...document.querySelectorAll('.label-sheet > .label-page')].map((page) =>
    page.outerHTML.replaceAll(/<!--.*?-->/gs, ''),
  );
  const looks =
    `${pageRule(drawn.paper)} body { margin: 0; page: labels; } ` +
    '.label-page { display: block; break-after: page; } .label-page:last-child { break-after: auto; } ' +
    '.label-codes { font-family: ui-monospace, "DejaVu Sans Mono", "Courier New", monospace; }';
  const text = [
    '<!doctype html>',
    `<html lang="${document.documentElement.lang}"><head><meta charset="utf-8"><title>${title}</title>`,
    `<style>${looks}</style></head><body>${pages.join('\n')}</body></html>`,
  ].join('\n');
  return new File([text], `${title.replaceAll(' ', '-')}.html`, { type: 'text/html' });
}
