// @ts-check
/**
 * The picture of a sensor with the label that is just being put on it: what the camera saw as it read the label.
 *
 * It takes no tap and is what a counter later holds beside the part, for others have the same part number. A maker's
 * symbol in the same picture gives the serial number.
 */

import { codesIn } from '../../scan/read-picture.js';
import { LABEL_HOST } from '../../phone/label-place.js';
import { photoTaken } from './capture.js';
import { pictureNow } from './scan-host.js';

/** The setting of a phone whose owner wants none; such pictures are taken where nothing is set. */
const SETTING = 'labels.pictures';
const SYMBOLS = ['data_matrix', 'code_128'];
/** The label waits no longer for a symbol beside it. */
const SYMBOL_MS = 500;

/** @typedef {{photo: import('../../log/log.js').Photo, part: string, serial: string}} Labelled */

/** Whether such pictures are wanted; undefined until it was asked. @type {boolean | undefined} */
let wanted;

/**
 * Whether such pictures are wanted on this phone.
 * @param {import('../frame/context.js').Context} ctx
 */
export function isWanted({ services: { device }, redraw }) {
  if (wanted === undefined) {
    wanted = true;
    device.setting(SETTING).then((/** @type {string | undefined} */ kept) => {
      wanted = kept !== 'no';
      if (!wanted) redraw();
    });
  }
  return wanted;
}

/** @param {import('../frame/context.js').Context} ctx */
export async function changeWanted({ services: { device }, redraw }) {
  wanted = !wanted;
  redraw();
  await device.saveSetting(SETTING, wanted ? 'yes' : 'no');
}

/**
 * What the camera sees now, ready to be recorded; null where it sees nothing, or no picture can be kept: the label
 * counts without one.
 * @param {import('../frame/context.js').Services} services
 * @returns {Promise<Labelled | null>}
 */
export async function labelledPicture({ photos, core }) {
  try {
    const seen = await pictureNow();
    const late = new Promise((/** @type {(none: string[]) => void} */ resolve) => setTimeout(resolve, SYMBOL_MS, []));
    const [photo, texts] = await Promise.all([photos.prepare(seen), Promise.race([codesIn(seen, SYMBOLS), late])]);
    const read = texts.length ? await core.call('maker_symbol', { texts, host: LABEL_HOST }) : null;
    const numbers = read?.outcome === 'numbers' ? read : { part: '', serial: '' };
    return { photo, part: numbers.part, serial: numbers.serial };
  } catch {
    return null;
  }
}

/**
 * The facts of such a picture, to be recorded with those of the label.
 * @param {Labelled | null | undefined} labelled
 * @param {string} unit
 * @returns {{drafts: import('../../log/log.js').Draft[], options: {photo?: import('../../log/log.js').Photo}}}
 */
export function withPicture(labelled, unit) {
  if (!labelled) return { drafts: [], options: {} };
  return { drafts: [photoTaken(labelled.photo, { shows: 'unit', unit })], options: { photo: labelled.photo } };
}
