// @ts-check
/**
 * Taking a picture inside a screen: the camera in the page, a file in its place, a look at what was
 * taken, and another try. What was taken waits in the form until it is recorded.
 */

import { html, nothing } from 'lit-html';

import { PhotoProblem } from '../../photos/prepare-photo.js';
import { freshPicture } from '../frame/picture.js';
import { cameraHost, problemPanel, shutterButton } from './camera-host.js';
import { say } from '../../words/words.js';

/** Forms whose camera is open, with its handle. @type {WeakMap<object, import('../../scan/scanner.js').CameraHandle>} */
const cameras = new WeakMap();
/** Forms for which the camera was asked for. @type {WeakSet<object>} */
const wanted = new WeakSet();
/** What went wrong with the last picture of a form. @type {WeakMap<object, {title: string, sentence: string}>} */
const problems = new WeakMap();

/**
 * @typedef {object} Capture
 * @property {'closed' | 'open' | 'taken'} state
 * @property {unknown} body
 * @property {() => Promise<void>} open
 * @property {() => void} close
 * @property {(words: string) => import('../frame/frame.js').Button} shutter  takes it; starts a camera again that shows nothing
 * @property {() => void} again
 * @property {import('../../log/log.js').Photo | null} photo
 */

/**
 * The picture of a form; it stands in `form.photo`.
 * @param {import('../frame/context.js').Context} ctx
 * @param {{words: string, alt: string, open?: boolean}} options  `open` opens the camera without asking
 * @returns {Capture}
 */
export function capture(ctx, { words, alt, open = false }) {
  const { form } = ctx;
  if (open && !form.photo && !wanted.has(form)) wanted.add(form);
  const photo = form.photo ?? null;
  const state = photo ? 'taken' : wanted.has(form) ? 'open' : 'closed';
  return {
    state,
    photo,
    body: html`${problemPanel(problems.get(form))}${state === 'taken'
      ? freshPicture(photo, alt)
      : state === 'open'
        ? host(ctx, words)
        : nothing}`,
    open: async () => {
      // The camera can end the page on a phone: what was entered has to be written down before.
      await ctx.keep();
      wanted.add(form);
      ctx.redraw();
    },
    close: () => {
      wanted.delete(form);
      problems.delete(form);
      ctx.redraw();
    },
    shutter: (take) => shutterButton(cameras.get(form), take, () => shoot(ctx)),
    again: () => {
      delete form.photo;
      wanted.add(form);
      ctx.redraw();
    },
  };
}

/**
 * The fact that a picture was taken.
 * @param {import('../../log/log.js').Photo} photo
 * @param {{shows: 'position' | 'screen' | 'unit' | 'work', position?: string, unit?: string, repair?: 'before' | 'after'}} what
 * @returns {import('../../log/log.js').Draft}
 */
export function photoTaken({ sha256, mime, bytes, width, height }, { shows, position = '', unit = '', repair }) {
  return {
    kind: 'photo_taken',
    data: { sha256, mime, bytes: bytes.byteLength, width, height, shows, position, unit, ...(repair && { repair }) },
  };
}

/**
 * The screen while a picture is taken or looked at; null while neither is going on.
 * @param {import('../frame/context.js').Context} ctx
 * @param {Capture} taking
 * @param {{title: unknown, back: string}} head   of the screen that the picture belongs to
 * @param {Parameters<typeof photoTaken>[1]} what
 * @returns {import('../frame/frame.js').Parts | null}
 */
export function takingParts(ctx, taking, head, what) {
  const { photo, body } = taking;
  if (photo) {
    return {
      ...head,
      key: 'taken',
      body,
      main: {
        words: say('scan-keep'),
        run: () => ctx.act([photoTaken(photo, what)], { photo, after: ctx.forget }),
      },
      second: { words: say('scan-take-again'), run: taking.again },
    };
  }
  if (taking.state !== 'open') return null;
  return {
    ...head,
    key: 'camera',
    body,
    main: taking.shutter(say('scan-take')),
    second: { words: say('scan-go-back'), run: taking.close },
  };
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} words
 */
function host(ctx, words) {
  const onHandle = (/** @type {import('../../scan/scanner.js').CameraHandle | null} */ camera) =>
    camera ? cameras.set(ctx.form, camera) : cameras.delete(ctx.form);
  return cameraHost(ctx, 'camera', { words, onFile: (file) => prepare(ctx, file), onHandle });
}

/** @param {import('../frame/context.js').Context} ctx */
async function shoot(ctx) {
  const camera = cameras.get(ctx.form);
  try {
    if (camera) await prepare(ctx, await camera.takePhoto());
  } catch {
    camera?.note(say('scan-no-picture'));
  }
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {Blob} file
 */
async function prepare(ctx, file) {
  const { form, services } = ctx;
  try {
    form.photo = await services.photos.prepare(file);
    problems.delete(form);
    wanted.delete(form);
  } catch (error) {
    if (!(error instanceof PhotoProblem)) throw error;
    problems.set(form, error);
  }
  ctx.redraw();
}
