// @ts-check
/**
 * A camera that stays open over several pictures: each one is kept as it is taken, and the next may follow.
 */

import { html, nothing } from 'lit-html';

import { PhotoProblem } from '../../photos/photos.js';
import { openCamera } from '../../scan/scanner.js';
import { mounted } from '../frame/mount.js';
import { CAMERA_SETTING } from './scan-host.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../log/log.js').Photo} Photo */

/**
 * What a series of pictures is at, by its key: open once it was opened by a tap, until the page is left.
 * @type {Map<string, {open: boolean, kept: Promise<void>, problem: {title: string, sentence: string} | null, keep: (photo: Photo) => Promise<unknown>,
 *   camera: import('../../scan/scanner.js').CameraHandle | null}>}
 */
const series = new Map();

/** The series whose camera opens with their first screen. @type {Set<string>} */
const opened = new Set();

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} key  tells one series from another
 * @param {{words: string, keep: (photo: Photo) => Promise<unknown>}} options
 */
export function shutter(ctx, key, { words, keep }) {
  const state = series.get(key) ?? { open: opened.has(key), kept: Promise.resolve(), problem: null, keep, camera: null };
  series.set(key, state);
  state.keep = keep;
  const prepare = async (/** @type {Blob} */ file) => {
    try {
      const photo = await ctx.services.photos.prepare(file);
      state.problem = null;
      await state.keep(photo);
    } catch (error) {
      if (!(error instanceof PhotoProblem)) throw error;
      state.problem = error;
      ctx.redraw();
    }
  };
  // A quick finger is ahead of the phone: each picture is kept after the one before, none is dropped.
  const queue = (/** @type {Blob} */ file) => {
    state.kept = state.kept.then(() => prepare(file));
    return state.kept;
  };
  return {
    open: state.open,
    body: html`${problemPanel(state.problem)}${state.open ? host(ctx, state, words, queue) : nothing}`,
    start: async () => {
      // The camera can end the page on a phone: what was entered has to be written down before.
      await ctx.keep();
      state.open = true;
      ctx.redraw();
    },
    take: async () => {
      try {
        if (state.camera) await queue(await state.camera.takePhoto());
      } catch {
        state.camera?.note(say('scan-no-picture'));
      }
    },
  };
}

/**
 * Open the camera of a series with its first screen; call it on the tap that leads there.
 * @param {string} key
 */
export function openSeries(key) {
  opened.add(key);
}

/**
 * The name of a position, as the list has it.
 * @param {Array<{id: string, name: string}>} positions
 * @param {string} id
 */
export function nameOf(positions, id) {
  return positions.find((each) => each.id === id)?.name ?? id;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {{camera: import('../../scan/scanner.js').CameraHandle | null}} state
 * @param {string} words
 * @param {(file: Blob) => void} onFile
 */
function host({ services: { device } }, state, words, onFile) {
  return html`<div
    class="camera"
    ${mounted('series', (element) => {
      let left = false;
      device.setting(CAMERA_SETTING).then((camera) => {
        if (left) return;
        state.camera = openCamera(element, { words, camera, onCamera: (id) => device.saveSetting(CAMERA_SETTING, id), onFile });
      });
      return () => {
        left = true;
        state.camera?.stop();
        state.camera = null;
      };
    })}
  ></div>`;
}

/** @param {{title: string, sentence: string} | null} problem */
function problemPanel(problem) {
  if (!problem) return nothing;
  return html`<section class="panel panel-ask" role="alert">
    <h2>${problem.title}</h2>
    <p>${problem.sentence}</p>
  </section>`;
}
