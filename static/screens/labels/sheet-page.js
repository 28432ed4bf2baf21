// @ts-check
/**
 * The labels that were just recorded as printed, at their size on paper: to the printer, or as a file.
 *
 * Only a printing that was just made is shown. Labels shown here a second time would be on paper twice, so
 * later the batch asks whether the first print was destroyed.
 */

import { html, nothing } from 'lit-html';

import { canShare, saveFile, shareFile } from '../../phone/save-file.js';
import { say } from '../../words/words.js';
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
    const file = () => fileOf(say('labels-file', { number: ctx.params.batch }), drawn);
    const keep = { words: say('labels-save-file'), run: () => saveFile(file()) };
    return {
      title: say('labels-to-printer'),
      back,
      body: html`
        <section class="panel panel-ask label-advice">
          <p>
            ${say('labels-window', { width, height })}
            ${drawn.pages.length > 1 ? say('labels-pages', { count: drawn.pages.length }) : nothing} ${ruler(drawn)}
          </p>
        </section>
        <article class="sheet label-sheet" data-paper="labels">
          ${drawn.pages.map((/** @type {LabelPage} */ page, /** @type {number} */ n) =>
            labelPage(drawn, page, say('labels-page', { number: n + 1 })),
          )}
        </article>
      `,
      main: { words: say('labels-print-them', { count }), run: () => print() },
      second: canShare(file()) ? { words: say('labels-share-file'), run: () => shareFile(file()) } : keep,
    };
  },
};

/** @param {import('./label-drawing.js').Drawn} drawn */
function ruler({ pages }) {
  return pages.some((page) => page.ruler) ? say('labels-bar') : nothing;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} back
 */
function shownBefore(ctx, back) {
  return {
    title: say('labels-to-printer'),
    back,
    body: html`<section class="nothing">
      <h1>${say('labels-before')}</h1>
      <p>
        ${say('labels-before-lead')}
      </p>
    </section>`,
    main: { words: say('labels-open-batch'), run: () => ctx.go(back) },
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
