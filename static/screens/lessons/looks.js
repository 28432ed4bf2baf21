// @ts-check
/** How figures stand on their page: a style sheet that comes with it, for the app's own comes with the first visit. */

const SHEET = `
.figure-line { display: flex; flex-wrap: wrap; justify-content: space-between; align-items: baseline; gap: 0 16px; }
@media (min-width: 900px), print {
  .figures { display: grid; grid-template-columns: repeat(2, minmax(0, 1fr)); column-gap: 48px; align-items: start; }
  .figures > .list-row { height: 100%; align-items: start; }
}`;

let isWorn = false;

/** Puts it on, once. */
export function wearLooks() {
  if (isWorn) return;
  isWorn = true;
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(SHEET);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}
