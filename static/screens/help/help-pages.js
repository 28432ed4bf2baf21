// @ts-check
/**
 * The help that came with this build of the app: its pages, ready to be put on the screen.
 *
 * The server renders them once (server/web/help_pages.py), with raw HTML off, so that a phone needs no Markdown reader.
 */

import { APP, ROOT } from '../../place.js';
import { helpAddress, say } from '../../words/words.js';

/**
 * @typedef {object} HelpPage
 * @property {string} name   the name of its file, without the ending
 * @property {string} title
 * @property {string} html
 * @property {URL} folder    its pictures are named as seen from there
 * @property {HTMLElement} [element]  kept, so that a screen that is drawn anew does not blink
 */

/** The page that leads to all others; README in the repository. */
export const HELP_INDEX = 'README';

/** @type {Promise<HelpPage[]> | null} */
let reading = null;

/**
 * One page of the help, or null where there is none of this name.
 * @param {string} name
 * @returns {Promise<HelpPage | null>}
 */
export async function helpPage(name) {
  reading ??= readPages();
  try {
    return (await reading).find((page) => page.name === name) ?? null;
  } catch (error) {
    reading = null; // the next tap tries again
    throw error;
  }
}

/**
 * The page as an element; its pictures lie beside it, and its links lead to screens of the app.
 * @param {HelpPage} page
 * @returns {HTMLElement}
 */
export function helpElement(page) {
  page.element ??= elementOf(page);
  return page.element;
}

/** @param {HelpPage} page */
function elementOf({ html, folder }) {
  const template = document.createElement('template');
  template.innerHTML = html;
  for (const picture of template.content.querySelectorAll('img')) {
    picture.src = new URL(picture.getAttribute('src') ?? '', folder).href;
  }
  for (const link of template.content.querySelectorAll('a')) {
    link.href = new URL(link.getAttribute('href') ?? '', ROOT).href;
  }
  const article = document.createElement('article');
  article.className = 'help';
  article.append(template.content);
  return article;
}

/** @returns {Promise<HelpPage[]>} */
async function readPages() {
  const answer = await fetch(helpAddress());
  if (!answer.ok) throw new Error(say('frame-help-missing'));
  const { folder, pages } = await answer.json();
  const at = new URL(`help/${folder}/`, APP);
  return pages.map((/** @type {HelpPage} */ page) => ({ ...page, folder: at }));
}
