// @ts-check
/** How figures stand on a wide screen and on paper: it comes with their page, the app's own style with the first visit. */

const COLUMNS = '.figures { display: grid; grid-template-columns: 1fr 1fr; column-gap: 48px; }';
// What a section says of itself stands over its figures, not at the foot of the page before.
const TOGETHER = '.screen-stack > p{break-after:avoid}';
const LEVEL = '.figures .list-row{align-items:start}';

let isWorn = false;

/** Puts it on, once. */
export function wearLooks() {
  if (isWorn) return;
  isWorn = true;
  for (const medium of ['(min-width: 900px)', 'print']) {
    const sheet = new CSSStyleSheet({ media: medium });
    sheet.replaceSync(COLUMNS + LEVEL + TOGETHER);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  }
}
