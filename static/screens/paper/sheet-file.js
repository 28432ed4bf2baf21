// @ts-check
/**
 * A sheet as one file that stands alone: its looks and its pictures are inside, so that it opens anywhere,
 * also years later and without a network.
 */

const PICTURE_SIDE = 1024;
const PICTURE_QUALITY = 0.8;

/**
 * @param {HTMLElement} sheet   with its pictures loaded
 * @param {string} title
 */
export async function fileOf(sheet, title) {
  // As text, for the policy of this page allows neither pictures nor styles that stand in the page itself.
  let shown = sheet.outerHTML.replaceAll(/<!--.*?-->/gs, '');
  for (const image of sheet.querySelectorAll('img')) shown = shown.replaceAll(image.src, inline(image));
  const text = [
    '<!doctype html>',
    `<html lang="${document.documentElement.lang}"><head><meta charset="utf-8">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${title.replaceAll(/[<&]/g, ' ')}</title>`,
    `<style>${await looks()}</style></head>`,
    `<body><main class="sheet-alone">${shown}</main></body></html>`,
  ].join('\n');
  const name = title.replaceAll(/[^\p{L}\p{N}]+/gu, '-').replaceAll(/^-+|-+$/g, '');
  return new File([text], `${name}.html`, { type: 'text/html' });
}

/**
 * A picture as an address that holds it, no larger than a page needs.
 * @param {HTMLImageElement} image
 */
function inline(image) {
  const { naturalWidth: width, naturalHeight: height } = image;
  const scale = Math.min(1, PICTURE_SIDE / Math.max(width, height, 1));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width * scale));
  canvas.height = Math.max(1, Math.round(height * scale));
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL('image/jpeg', PICTURE_QUALITY);
}

/** The style sheets of this page, in their order. */
async function looks() {
  const links = [...document.querySelectorAll('link[rel=stylesheet]')];
  const texts = await Promise.all(
    links.map(async (link) => (await fetch(/** @type {HTMLLinkElement} */ (link).href)).text()),
  );
  return texts.join('\n');
}
