// @ts-check
/**
 * The one unit at hand at the counter: what was read off it, what is proposed for it, what other counters have of it,
 * and another decision while it is entered.
 *
 * Everything that lasts is in `ctx.form`: the unit at hand (`current`), what was decided last (`done`),
 * what a code said that is no label (`told`), several labels in view (`which`), a symbol of which nobody has said
 * what part it is on (`whose`), held sensors that are decided together (`several`).
 */

import { alarm } from '../scan/alarm.js';
import { proposal } from './asking.js';
import { closeOtherwise, enterOtherwise, otherwiseOn } from './entered.js';
import { InView } from './in-view.js';
import { heardOf } from './others.js';
import { Turns } from '../../phone/turns.js';

/** @typedef {import('./asking.js').Current} Current */

/** The unit at hand; none between two parts. */
export class AtHand {
  /** @param {import('../frame/context.js').Context} ctx  of the latest drawing */
  constructor(ctx) {
    this.ctx = ctx;
  }

  inView = new InView();
  /** Whatever changes the unit at hand, or records, takes turns: a tap and a label may come at one moment. */
  changes = new Turns();
  /** Proposals for which other counters are being asked. @type {WeakSet<object>} */
  #asking = new WeakSet();

  /** One that came in here, or the one that the address names. @returns {Current | null} */
  get current() {
    const { form, data } = this.ctx;
    if (data.given) return form.given?.answer.unit === data.given.answer.unit ? form.given : data.given;
    return form.current ?? null;
  }

  /** Have another one at hand, or other things read off it; null puts it down. @param {Current | null} current */
  set(current) {
    const { form, data } = this.ctx;
    const before = this.current?.answer;
    if (current?.answer.unit !== before?.unit) {
      form.whose = null;
      if (before) closeOtherwise(form, before.unit);
    } else if (before && current?.answer.proposed !== before.proposed) {
      // What was chosen against the one proposal may be the other.
      closeOtherwise(form, before.unit, { decision: '' });
    }
    if (data.given) form.given = current;
    else form.current = current;
    // The camera stands at the top, and the next proposal right under it.
    document.querySelector('main')?.scrollTo(0, 0);
  }

  /**
   * Do something with the unit at hand; not with the next one, which may have come in its place before its turn.
   * @param {(current: Current) => Promise<void>} work
   */
  async inTurn(work) {
    const { current } = this;
    if (!current) return;
    const { unit } = current.answer;
    await this.changes.run(async () => {
      const now = this.current;
      if (now && now.answer.unit === unit) await work(now);
    });
    this.ctx.redraw();
  }

  /**
   * Something was read off the part or compared: ask again.
   * @param {Current} current
   * @param {Partial<import('./asking.js').Asked['read']>} more  empty fields add nothing
   */
  async read(current, more) {
    const read = { ...current.read };
    for (const [field, value] of Object.entries(more)) if (value) read[/** @type {'part'} */ (field)] = value;
    const before = current.answer.proposed;
    const answer = await proposal(this.ctx.services, { ...current, read });
    if (answer.outcome !== 'unit') return;
    // What was given as the serial number was the part number.
    if (read.serial && !answer.read.serial) Object.assign(read, { part: answer.read.part, serial: '' });
    this.set({ ...current, read, answer });
    this.ctx.form.told = null;
    if (answer.proposed === 'refuse' && before !== 'refuse') alarm();
  }

  /** Ask the other counters of the chain, where that is due; the proposal stands meanwhile, and changes with what they have. */
  async hear() {
    const { current } = this;
    if (!current || current.heard === String(current.answer.keys) || this.#asking.has(current.answer)) return;
    this.#asking.add(current.answer);
    const register = await heardOf(this.ctx.services, current.answer);
    if (!register) return;
    await this.changes.run(async () => {
      const now = this.current;
      // Its number may have been read meanwhile: then others are asked by that one too.
      if (now?.answer.unit === current.answer.unit && String(now.answer.keys) === String(current.answer.keys)) {
        await this.learn(now, register);
      }
    });
    this.ctx.redraw();
  }

  /**
   * What other counters have is known now.
   * @param {Current} current
   * @param {import('./others.js').Heard} register
   * @returns {Promise<Current>}
   */
  async learn(current, register) {
    const answer = await proposal(this.ctx.services, { ...current, register });
    if (answer.outcome !== 'unit') return current;
    const learned = { ...current, register, heard: String(answer.keys), answer };
    this.set(learned);
    if (answer.proposed === 'refuse' && current.answer.proposed !== 'refuse') alarm();
    return learned;
  }

  /** Another decision on the unit, while it is entered; null while its proposal is shown. */
  get otherwise() {
    const { current } = this;
    const entered = current && otherwiseOn(this.ctx.form, current.answer.unit);
    return entered?.isOpen ? entered : null;
  }

  /** Enter another decision on it: what is chosen, the reason. @param {Partial<import('./entered.js').Otherwise>} more */
  enterOtherwise = (more) => {
    if (this.current) enterOtherwise(this.ctx.form, this.current.answer.unit, { isOpen: true, ...more });
    this.ctx.redraw();
  };

  asProposed = () => {
    if (this.current) closeOtherwise(this.ctx.form, this.current.answer.unit);
    this.ctx.redraw();
  };

  /** Put the unit down as it is; nothing is recorded. */
  leave = () =>
    this.inTurn(async () => {
      this.inView.done();
      this.set(null);
      if (this.ctx.data.given) this.ctx.go('#/');
    });

  /** Say something between two parts. @param {{title: string, sentence: string}} told */
  tell(told) {
    this.ctx.form.told = told;
    this.ctx.redraw();
  }
}
