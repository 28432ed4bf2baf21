// @ts-check
/**
 * The clerk's work at the counter: what comes in, the unit at hand, what is decided; and the ways between its screens.
 */

import { prepareTones } from '../../phone/tones.js';
import { saveFile } from '../../phone/save-file.js';
import { ApiError } from '../../sync/request.js';
import { say } from '../../words/words.js';
import { to } from '../frame/router.js';
import { AtHand } from './at-hand.js';
import { ComingIn } from './coming-in.js';
import { Deciding } from './deciding.js';
import { SEARCH_FORM } from './search-page.js';

/** @type {Work | undefined} */
let present;

/**
 * The clerk's work on the screen as it is drawn now. What came in while an earlier one was there goes on here: a part
 * that was set down on a screen that is gone would be lost.
 * @param {import('../frame/context.js').Context} ctx
 */
export function workOn(ctx) {
  present ??= new Work(ctx);
  present.hand.ctx = ctx;
  return present;
}

/** What goes on at the counter. */
export class Work {
  /** @param {import('../frame/context.js').Context} ctx  of the latest drawing */
  constructor(ctx) {
    this.hand = new AtHand(ctx);
    this.comingIn = new ComingIn(this.hand);
    this.deciding = new Deciding(this.hand);
  }

  get ctx() {
    return this.hand.ctx;
  }

  /** Open the camera; what was entered is written down first. */
  open = async () => {
    prepareTones();
    this.hand.inView.forget();
    this.ctx.form.mode = 'camera';
    await this.ctx.keep();
    this.ctx.redraw();
  };

  type = () => {
    Object.assign(this.ctx.form, { mode: 'type', told: null });
    this.ctx.redraw();
  };

  close = () => {
    Object.assign(this.ctx.form, { mode: '', told: null, which: null });
    this.ctx.redraw();
  };

  /** Look for what was typed among all that is on record. @param {string} text */
  searchFor = async (text) => {
    const { ctx } = this;
    Object.assign(ctx.form, { mode: '', told: null });
    await ctx.keep();
    ctx.services.drafts.touch(SEARCH_FORM, { text });
    ctx.go(to.search());
  };

  /** Save the record from another shop that is kept for the unit at hand, as it came. */
  saveRecord = async () => {
    const { current } = this.hand;
    if (!current) return;
    const { shown, record_file: digest } = current.answer;
    try {
      const kept = await this.ctx.services.sync.api.file(`/api/records/kept/${digest}`);
      await saveFile(new File([kept], `swaptrail-record-${shown.replace('-', '')}.zip`, { type: 'application/zip' }));
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      this.hand.tell({ title: say('counter-record-not-here'), sentence: error.sentence });
    }
  };
}
