// @ts-check
/**
 * The camera for photographing as a part of a screen, with the one that was chosen last time on this phone,
 * and what is said of a picture that is none.
 */

import { html, nothing } from 'lit-html';

import { openCamera } from '../../scan/scanner.js';
import { say } from '../../words/words.js';
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
 */
export function cameraHost({ redraw, services: { device } }, key, { words, onFile, onHandle }) {
  return html`<div
    class="camera"
    ${mounted(key, (host) => {
      let left = false;
      /** @type {CameraHandle | null} */
      let camera = null;
      device.setting(CAMERA_SETTING).then((/** @type {string | undefined} */ chosen) => {
        if (left) return;
        camera = openCamera(host, { words, camera: chosen, onCamera: (id) => device.saveSetting(CAMERA_SETTING, id), onFile, onProblem: () => redraw() });
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

/**
 * The button that takes a picture, or starts a camera again that shows nothing.
 * @param {CameraHandle | null | undefined} camera
 * @param {string} words
 * @param {() => unknown} take
 * @returns {import('../frame/frame.js').Button}
 */
export function shutterButton(camera, words, take) {
  return camera?.isDark?.() ? { words: say('scan-start'), run: () => camera.start?.() } : { words, run: take };
}

/** @param {{title: string, sentence: string} | null | undefined} problem */
export function problemPanel(problem) {
  if (!problem) return nothing;
  return html`<section class="panel panel-ask" role="alert">
    <h2>${problem.title}</h2>
    <p>${problem.sentence}</p>
  </section>`;
}
