// @ts-check
/** How a comparison stands: it comes with the card, the app's own style with the first visit. */

// Picture and answers are seen at once: one over the other, and beside each other on a wide screen.
const COMPARING = `
.compare-itself .picture { max-height: max(9rem, calc(100vh - 42rem)); }
.compare-itself .picture > img { object-fit: contain; }
@media (min-width: 64rem) {
  .compare { display: grid; grid-template-columns: minmax(0, 1fr) 11rem; gap: 8px; }
  .compare > .answers { grid-area: 1 / 2; align-self: start; }
  .compare > .answers + .compare-pictures { grid-column: 1 / -1; }
  .compare-itself .picture { max-height: calc(100vh - 31rem); }
}`;

let isWorn = false;

/** Puts it on, once. */
export function wearLooks() {
  if (isWorn) return;
  isWorn = true;
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(COMPARING);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}
