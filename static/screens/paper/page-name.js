// @ts-check
/**
 * At the foot of each page stands what it is a page of, for loose pages get mixed. A style sheet can't know the name; a
 * roll has no pages.
 */

const pageRule = new CSSStyleSheet();
/** print.css has its looks. */
const PLACE = '@bottom-left';
const ENDS_A_STRING = /["\\\n]/g;

/** @param {HTMLElement | null} sheet  `data-title` is what its pages are called */
export function namePages(sheet) {
  const name = (sheet?.dataset.title ?? '').replace(ENDS_A_STRING, (sign) => `\\${sign.charCodeAt(0).toString(16)} `);
  const hasPages = sheet?.dataset.paper === 'a5' || sheet?.dataset.paper === 'page';
  pageRule.replaceSync(hasPages ? `@page { ${PLACE} { content: "${name}"; } }` : '');
  document.adoptedStyleSheets = [...document.adoptedStyleSheets.filter((each) => each !== pageRule), pageRule];
}
