// @ts-check
/**
 * A camera that stays open over several pictures: each one is kept as it is taken, and the next may follow.
 */

import { html, nothing } from 'lit-html';

import { PhotoProblem } from '../../photos/prepare-photo.js';
import { cameraHost, problemPanel, shutterButton } from './camera-host.js';
import { say } from '../../words/words.js';

/** @typedef {import('../../log/log.js').Photo} Photo */

/**
 * @typedef {object} Series
 * @property {Promise<unknown>} kept  settles once every picture so far was kept
 * @property {{title: string, sentence: string} | null} problem
 * @property {(photo: Photo) => Promise<unknown>} keep
 * @property {import('../../scan/scanner.js').CameraHandle | null} camera
 * @property {string} taking  what is being taken and kept just now
 */

/** What each series of pictures is at, by its key. @type {Map<string, Series>} */
const series = new Map();
/** The series whose camera is open, until the page is left. @type {Set<string>} */
const opened = new Set();

/**
 * Open the camera of a series with its next drawing; call it on a tap.
 * @param {string} key
 */
export function openSeries(key) {
  opened.add(key);
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} key  tells one series from another
 * @param {{words: string, of: string, keep: (photo: Photo) => Promise<unknown>}} options  `of`: what the next picture shows
 */
export function shutter(ctx, key, { words, of, keep }) {
  const state = series.get(key) ?? { kept: Promise.resolve(), problem: null, keep, camera: null, taking: '' };
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
  // A quick finger is ahead of the phone: each picture is kept after the one before, whatever became of that.
  const queue = (/** @type {Blob} */ file) => {
    const mine = state.kept.then(() => prepare(file));
    state.kept = mine.catch(() => undefined);
    return mine;
  };
  const host = () =>
    cameraHost(ctx, 'series', {
      words,
      onFile: queue,
      onHandle: (camera) => {
        state.camera = camera;
      },
    });
  const take = async () => {
    // A second tap on the same words is no picture of what comes next.
    if (!state.camera || state.taking === of) return;
    state.taking = of;
    try {
      await queue(await state.camera.takePhoto());
    } catch {
      state.camera?.note(say('scan-no-picture'));
    } finally {
      if (state.taking === of) state.taking = '';
    }
  };
  return {
    open: opened.has(key),
    body: html`${problemPanel(state.problem)}${opened.has(key) ? host() : nothing}`,
    start: async () => {
      // The camera can end the page on a phone: what was entered has to be written down before.
      await ctx.keep();
      openSeries(key);
      ctx.redraw();
    },
    shutter: (/** @type {string} */ shown) => shutterButton(state.camera, shown, take),
  };
}
