// @ts-check
/**
 * Reads which label is in the hand: by camera, typed, or written by hand, and says what the core makes of
 * it. The guided exchange, a new sensor and 'where does it go' share it.
 *
 * It lives in `ctx.form.read`, so that an offered code or a stop is still there after the phone ended the
 * page. Only the camera is not: it starts on a tap. Where one label follows another (`carry`) it then stays
 * open from step to step, and whatever is seen is taken.
 */

import { sayNow } from '../frame/aloud.js';
import { alarm } from './alarm.js';
import { cameraView, typeView, whichView, writeView } from './label-views.js';
import { isWanted, labelledPicture } from './labelled-picture.js';
import { carryOn, isCarried, isStillThere, noteTaken, putDown } from './open-camera.js';
import { stopPanel, toldPanel } from './stop-panel.js';
import { confirmRead, prepareTones } from '../../phone/tones.js';
import { LABEL_HOST } from '../../phone/label-place.js';
import { say } from '../../words/words.js';

/** @typedef {'scanned' | 'typed' | 'written'} How  a code that is read off a label written by hand is 'written' */
/** @typedef {'' | 'camera' | 'type' | 'write' | 'which' | 'told' | 'stop'} Mode */

/**
 * @typedef {object} Reading      what is kept in `ctx.form.read`
 * @property {Mode} mode
 * @property {string} [typed]     what stands in the field
 * @property {string} [title]
 * @property {string} [sentence]
 * @property {string} [more]
 * @property {{code: string, shown: string}} [offer]       the code to write by hand
 * @property {Array<{text: string, shown: string}>} [which]  several labels in view
 *
 * @typedef {object} ReaderOptions
 * @property {string} heading     what this is about, over the camera
 * @property {string} [instruction]  what to do now, where the heading is that of several steps
 * @property {unknown} [cautions]  those of the step: the reader has the screen to itself
 * @property {boolean} [mayWrite] whether a label written by hand will do
 * @property {boolean} [writes]   that is the likelier: nothing carries a label yet
 * @property {string} [carry]     the work over whose steps the camera stays open
 * @property {boolean} [labels]   a label is put on here: its sensor is pictured with it
 * @property {unknown} [below]    what stands under the camera
 * @property {Record<string, unknown>} [expects]  asked of the core in place of the step's own
 * @property {(() => unknown) | null} [onMixed]  leads from a stop to saying that some got mixed up, where they can be
 * @property {(answer: any, how: How, labelled: import('./labelled-picture.js').Labelled | null) => unknown} onOurs
 *     the label is the right one; what was pictured as it was read
 */

/** Forms whose camera was opened by a tap since the page was loaded. @type {WeakSet<object>} */
const tapped = new WeakSet();

/** The reader that is on the screen: what the camera sees is its to take. @type {Reader | null} */
let present = null;

/** The text that is being asked about just now: the camera sees faster than the core thinks. */
let asked = '';
/** What was seen meanwhile: the scanner tells a label once, so it is taken as soon as the core has answered. */
let meanwhile = /** @type {(() => Promise<void>) | null} */ (null);

/**
 * The reader of a step.
 * @param {any} ctx
 * @param {ReaderOptions} options
 */
export function labelReader(ctx, options) {
  const reader = new Reader(ctx, options);
  present = reader;
  return { reader, parts: reader.parts() };
}

/** One drawing's view of the reader; everything that lasts is in `ctx.form.read`. */
export class Reader {
  /**
   * @param {any} ctx
   * @param {ReaderOptions} options
   */
  constructor(ctx, options) {
    this.ctx = ctx;
    this.options = options;
  }

  /** @returns {Reading} */
  get state() {
    const state = this.ctx.form.read ?? { mode: '' };
    return state.mode === '' && this.#carried ? { ...state, mode: 'camera' } : state;
  }

  get #carried() {
    return isCarried(this.options.carry ?? '');
  }

  /** @param {Partial<Reading> & {mode: Mode}} state */
  show(state) {
    this.#set(state);
    this.ctx.redraw();
  }

  /**
   * Show it once it is kept: what must not be lost with the page.
   * @param {Partial<Reading> & {mode: Mode}} state
   */
  async #keep(state) {
    this.#set(state);
    await this.ctx.keep();
    this.ctx.redraw();
  }

  /** @param {Partial<Reading> & {mode: Mode}} state */
  #set(state) {
    // What was typed or offered is kept while one looks for another way.
    const { typed, offer } = this.state;
    this.ctx.form.read = { typed, offer, ...state };
  }

  openCamera = () => {
    prepareTones();
    tapped.add(this.ctx.form);
    if (this.options.carry) carryOn(this.options.carry);
    // A camera is more than some phones have memory for: what was entered is written down first.
    return this.#keep({ mode: 'camera' });
  };

  type = () => {
    putDown(this.options.carry ?? '');
    this.show({ mode: 'type' });
  };

  leave = () => {
    putDown(this.options.carry ?? '');
    this.show({ mode: '' });
  };

  /** Offer a code that is free, to be written by hand. The same one again until it is used. */
  write = async () => {
    putDown(this.options.carry ?? '');
    if (this.state.offer) {
      this.show({ mode: 'write' });
      return;
    }
    const { core, device } = this.ctx.services;
    try {
      const offer = await core.call('offer_code', { random: device.randomInts(64) });
      await this.#keep({ mode: 'write', offer });
    } catch (error) {
      this.#tell(error);
    }
  };

  /**
   * Ask the core what a text means here, and go on or stop.
   * @param {string} text
   * @param {How} how
   */
  take = async (text, how) => {
    if (asked) return;
    asked = text;
    // On the tap itself: some phones let no sound begin later.
    if (how !== 'scanned') prepareTones();
    try {
      const { ctx, options } = this;
      const question = { job: ctx.job, text, how, host: LABEL_HOST };
      if (options.expects) Object.assign(question, { expects: options.expects });
      const pictures = options.labels && how === 'scanned' && this.state.mode === 'camera' && isWanted(ctx);
      const labelled = pictures ? labelledPicture(ctx.services) : Promise.resolve(null);
      await this.#answer(await ctx.services.core.call('scan', question), how, labelled);
    } catch (error) {
      this.#tell(error);
    } finally {
      asked = '';
    }
    const next = meanwhile;
    meanwhile = null;
    await next?.();
  };

  /**
   * The texts of all codes in view: one is taken, several are asked about.
   * @param {string[]} texts
   * @returns {Promise<void>}
   */
  see = async (texts) => {
    // The camera outlives the step at which it was opened.
    if (present && present !== this) return present.see(texts);
    if (this.state.mode !== 'camera' || (this.#carried && isStillThere(texts))) return;
    if (asked) {
      // The one that is asked about may still be in view.
      if (!texts.includes(asked)) meanwhile = () => this.see(texts);
      return;
    }
    const which = texts.length === 1 ? [] : await this.#labelsAmong(texts);
    if (which.length > 1) this.show({ mode: 'which', which });
    else await this.take(which[0]?.text ?? texts[0], 'scanned');
  };

  /**
   * @param {string[]} texts
   * @returns {Promise<Array<{text: string, shown: string}>>}
   */
  async #labelsAmong(texts) {
    const labels = [];
    [asked] = texts;
    try {
      for (const text of texts) {
        const read = await this.ctx.services.core.call('code', { text, host: LABEL_HOST });
        if (read.outcome === 'ours') labels.push({ text, shown: read.shown });
      }
    } finally {
      asked = '';
    }
    return labels;
  }

  /** The ways beside the camera, as buttons. */
  ways() {
    return { type: { words: say('scan-type'), run: this.type }, write: { words: say('scan-write'), run: this.write } };
  }

  /**
   * What the reader puts on the screen; null while it waits to be opened.
   * @returns {{body: unknown, main: any, second: any, bare: true, alone: true, key?: string} | null}
   */
  parts() {
    const { state } = this;
    const again = { words: say('scan-again'), run: this.openCamera };
    const { type, write } = this.ways();
    switch (state.mode) {
      case 'camera':
        // After a reload nobody has tapped yet, and the phone may lie on the ground.
        return tapped.has(this.ctx.form) || this.#carried
          ? { bare: true, alone: true, key: `camera ${this.options.carry ?? ''}`, body: cameraView(this), main: null, second: this.options.writes ? write : type }
          : null;
      case 'type': {
        const main = { words: say('scan-check'), run: this.#typed };
        return { bare: true, alone: true, body: typeView(this), main, second: { words: say('scan-use-camera'), run: this.openCamera } };
      }
      case 'write': {
        const main = { words: say('scan-written'), run: this.#written };
        return { bare: true, alone: true, body: writeView(this), main, second: { words: say('scan-another-way'), run: this.leave } };
      }
      case 'which':
        return { bare: true, alone: true, body: whichView(this), main: again, second: type };
      case 'told':
        return { bare: true, alone: true, body: toldPanel(/** @type {any} */ (state)), main: again, second: type };
      case 'stop':
        return { bare: true, alone: true, body: stopPanel(/** @type {any} */ (state), this.options.onMixed), main: again, second: type };
      default:
        return null;
    }
  }

  #typed = () => {
    const typed = (this.state.typed ?? '').trim();
    if (typed) return this.take(typed, 'typed');
    return this.show({ mode: 'type', title: say('scan-nothing-typed'), sentence: say('scan-nothing-typed-do') });
  };

  #written = () => this.take(this.state.offer?.code ?? '', 'written');

  /**
   * @param {any} answer
   * @param {How} how
   * @param {Promise<import('./labelled-picture.js').Labelled | null>} labelled
   */
  async #answer(answer, how, labelled) {
    if (answer.outcome === 'ours') {
      confirmRead();
      if (how === 'scanned') noteTaken(asked);
      await this.options.onOurs(answer, how, await labelled);
      return;
    }
    const { title, sentence, more = '' } = answer;
    sayNow([title, sentence, more]);
    if (answer.outcome === 'stop') {
      alarm();
      await this.#keep({ mode: 'stop', title, sentence, more });
      // A stop that was noticed is a fact too: it shows that custody was watched.
      if (answer.events.length) await this.ctx.act(answer.events);
      return;
    }
    this.show({ mode: how === 'typed' ? 'type' : 'told', title, sentence });
  }

  /** @param {unknown} error */
  #tell(error) {
    const sentence = error instanceof Error ? error.message : String(error);
    this.show({ mode: 'told', title: say('scan-unchecked'), sentence });
  }
}
