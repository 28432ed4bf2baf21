// @ts-check
/**
 * The camera for photographing as a part of a screen, with the one that was chosen last time on this phone,
 * and what is said of a picture that is none.
 */

import { html, nothing } from 'lit-html';

import { openCamera } from '../../scan/scanner.js';
import { mounted } from '../frame/mount.js';
import { CAMERA_SETTING } from './scan-host.js';

/** @typedef {import('../../scan/scanner.js').CameraHandle} CameraHandle */

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} key  tells it from another camera in the same place
 * @param {object} options
 * @param {string} options.words
 * @param {(file: Blob) => void} options.onFile              a picture was picked in place of taking one
 * @param {(camera: CameraHandle | null) => void} options.onHandle  it is open; null once it is closed
 * @param {(trouble: unknown) => void} [options.onProblem]   it shows nothing, or does again: null; the screen has the button
 */
export function cameraHost({ services: { device } }, key, { words, onFile, onHandle, onProblem }) {
  return html`<div
    class="camera"
    ${mounted(key, (host) => {
      let left = false;
      /** @type {CameraHandle | null} */
      let camera = null;
      device.setting(CAMERA_SETTING).then((/** @type {string | undefined} */ chosen) => {
        if (left) return;
        camera = openCamera(host, { words, camera: chosen, onCamera: (id) => device.saveSetting(CAMERA_SETTING, id), onFile, onProblem });
        onHandle(camera);
      });
      return () => {
        left = true;
        camera?.stop();
        onHandle(null);
      };
    })}
  ></div>`;
}

/** @param {{title: string, sentence: string} | null | undefined} problem */
export function problemPanel(problem) {
  if (!problem) return nothing;
  return html`<section class="panel panel-ask" role="alert">
    <h2>${problem.title}</h2>
    <p>${problem.sentence}</p>
  </section>`;
}
