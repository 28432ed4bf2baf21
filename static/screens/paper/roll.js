// @ts-check
/**
 * A roll is cut where the sheet ends: its page is as long as what is on it. That is measured before printing, with
 * the looks of paper put on for as long as that takes, so that nothing of it is seen.
 */

/** Width of the roll, and mm of it that are printed on, as print.css has them. @type {Record<string, [number, number]>} */
const ROLLS = { 80: [80, 72], 58: [58, 48] };
const ENDS_MM = 8 + 5; // of margin above and below, and a line: on paper a word may go to the next one
const LONGER = 1.02; // the same, of a long sheet
const PIXELS_A_MM = 96 / 25.4; // of CSS

/** The length of a page can't stand in a style sheet: it is that of what is on it. */
const pageRule = new CSSStyleSheet();

/** Make the page of a roll as long as its sheet; other paper stays as it is. @param {HTMLElement | null} sheet */
export function fitRoll(sheet) {
  const paper = sheet?.dataset.paper ?? '';
  const roll = ROLLS[paper];
  if (!sheet || !roll) return;
  const [width, room] = roll;
  const before = sheet.style.width;
  const putBack = asPrinted();
  sheet.style.width = `${room}mm`;
  const high = Math.ceil((LONGER * sheet.getBoundingClientRect().height) / PIXELS_A_MM) + ENDS_MM;
  sheet.style.width = before;
  putBack();
  const size = `${width}mm ${high}mm`;
  const name = `roll-${paper}`;
  pageRule.replaceSync(`@page ${name} { size: ${size}; }`);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets.filter((each) => each !== pageRule), pageRule];
}

/** Put on the looks of paper; returns what takes them off. */
function asPrinted() {
  const changed = [...document.styleSheets].flatMap((each) => [...mediaRules(each)]);
  const media = changed.map((rule) => rule.media.mediaText);
  changed.forEach((rule, at) => {
    if (media[at] === 'print') rule.media.mediaText = 'all';
    if (media[at] === 'screen') rule.media.mediaText = 'not all';
  });
  return () => changed.forEach((rule, at) => {
    rule.media.mediaText = media[at];
  });
}

/** @param {CSSStyleSheet} sheet @returns {Generator<CSSMediaRule>} */
function* mediaRules(sheet) {
  for (const rule of sheet.cssRules) {
    if (rule instanceof CSSMediaRule) yield rule;
    if (rule instanceof CSSImportRule && rule.styleSheet) yield* mediaRules(rule.styleSheet);
  }
}
