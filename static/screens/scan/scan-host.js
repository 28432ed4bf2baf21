// @ts-check
/**
 * The live scanner as a part of a screen, with the camera that was chosen last time on this phone.
 */

import { html } from 'lit-html';

import { openScanner } from '../../scan/scanner.js';
import { mounted } from '../frame/mount.js';

/** The setting that keeps which camera was chosen; photographing uses the same. */
export const CAMERA_SETTING = 'camera';

/** The scanner whose picture is on the screen. @type {import('../../scan/scanner.js').CameraHandle | null} */
let present = null;

/** What the scanner sees now, as a picture; rejects where none is open or shows one. */
export async function pictureNow() {
  if (!present) throw new Error('no scanner is open');
  return present.takePhoto();
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Omit<import('../../scan/scanner.js').ScannerOptions, 'camera' | 'onCamera'>} options
 * @param {string} [key]  tells it from another scanner in the same place
 */
export function scanHost(ctx, options, key = 'scan') {
  // It stays open from one step to the next, of which each may want something else in view.
  if (options.words) present?.guide(options.words);
  return html`<div class="scan-live" ${mounted(key, (host) => begin(ctx, host, options))}></div>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {HTMLElement} host
 * @param {Omit<import('../../scan/scanner.js').ScannerOptions, 'camera' | 'onCamera'>} options
 */
function begin({ services: { device } }, host, options) {
  /** @type {import('../../scan/scanner.js').CameraHandle | null} */
  let handle = null;
  let left = false;
  device.setting(CAMERA_SETTING).then((/** @type {string | undefined} */ camera) => {
    if (left) return;
    handle = openScanner(host, { ...options, camera, onCamera: (id) => device.saveSetting(CAMERA_SETTING, id) });
    present = handle;
  });
  return () => {
    left = true;
    handle?.stop();
    if (present === handle) present = null;
  };
}
