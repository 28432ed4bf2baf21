// @ts-check
/**
 * What is decided at the counter, and goes on record: on the unit at hand, after which nothing is at hand, or on
 * several that are held alike; what was decided is handed on or taken back.
 */

import { alarm } from '../scan/alarm.js';
import { draftsWith } from '../frame/drafts-with.js';
import { nothingRead, proposal } from './asking.js';
import { forgetEntered } from './entered.js';
import { claim, release } from './others.js';
import { slipOf } from './slips.js';
import { say } from '../../words/words.js';

/** @typedef {import('./asking.js').Current} Current */

/** What goes on record. */
export class Deciding {
  /** @type {import('./at-hand.js').AtHand} */
  #hand;

  /** @param {import('./at-hand.js').AtHand} hand */
  constructor(hand) {
    this.#hand = hand;
  }

  get #ctx() {
    return this.#hand.ctx;
  }

  /** The clerk has the unit: it goes on record as received, and stays at hand. */
  receive = () =>
    this.#hand.inTurn(async (current) => {
      const { answer } = current;
      if (await this.#ctx.act([answer.received], { job: answer.job })) await this.#hand.read(current, {});
    });

  /**
   * Record a decision on the unit at hand.
   * @param {string} decision
   * @param {string} [overrule]  the reason, where it goes against the proposal
   */
  decide = (decision, overrule = '') => this.#hand.inTurn((current) => this.#decide(current, decision, overrule));

  /**
   * @param {Current} current
   * @param {string} decision
   * @param {string} overrule
   */
  async #decide(current, decision, overrule) {
    const ctx = this.#ctx;
    const still = await this.#stillSo(current);
    const mine = still && (await this.#claimed(still, decision));
    if (!mine) return;
    const { answer } = mine;
    const chosen = answer.decisions.find((each) => each.decision === decision);
    if (!chosen) return;
    const signed = ctx.services.device.actor;
    // Of one that waits already only what was read off it since is news.
    const received = current.unit && !Object.values(current.read).some(Boolean) ? [] : [answer.received];
    const drafts = [...received, ...draftsWith(chosen.events, { signed, overrule })];
    const recorded = await ctx.act(drafts, { job: answer.job });
    if (!recorded) {
      await release(ctx.services, answer.unit);
      return;
    }
    this.#hand.inView.done();
    const { unit, shown } = answer;
    forgetEntered(ctx.form, unit);
    this.#hand.set(null);
    ctx.form.done = { unit, shown, decision, word: chosen.past, after: chosen.after };
    if (ctx.data.given) ctx.go('#/');
    void slipOf(ctx, unit);
  }

  /**
   * Ask once more before a decision goes on record: another phone may have decided while the proposal stood here.
   * @param {Current} current
   * @returns {Promise<Current | null>} null where something else is proposed now, and shown
   */
  async #stillSo(current) {
    const answer = await proposal(this.#ctx.services, current);
    if (answer.outcome !== 'unit') return null;
    const now = { ...current, answer };
    const { proposed, against } = current.answer;
    if (answer.proposed === proposed && String(answer.against) === String(against)) return now;
    this.#hand.set(now);
    this.#ctx.form.told = { title: say('counter-changed'), sentence: say('counter-changed-do', { code: answer.shown }) };
    if (answer.proposed === 'refuse') alarm();
    return null;
  }

  /**
   * Of what is accepted the other counters are told first: one that has the part already gets the better of it.
   * @param {Current} current
   * @param {string} decision
   * @returns {Promise<Current | null>} null where this counter may not decide so unknowing
   */
  async #claimed(current, decision) {
    const { against } = current.answer;
    if (decision !== 'accept' || against.includes('others')) return current;
    const register = await claim(this.#ctx.services, current.answer);
    if (!register) return current;
    const known = current.register?.asked === register.asked && !register.found.length;
    const learned = known ? current : await this.#hand.learn(current, register);
    return register.found.length ? null : learned;
  }

  /**
   * Look at several held sensors at once.
   * @param {string} why  they are held
   * @param {string[]} units
   */
  several = async (why, units) => {
    const cards = await Promise.all(units.map((unit) => this.#asProposed(unit)));
    const { form } = this.#ctx;
    // A reason that was given for others is none for these.
    if (form.togetherFor !== why) Object.assign(form, { together: '', togetherFor: why });
    form.several = { why, cards: cards.filter(Boolean) };
    this.#ctx.redraw();
  };

  /** @param {string} unit  one that waits @returns {Promise<Current | null>} */
  async #asProposed(unit) {
    const asked = { unit, how: '', read: nothingRead() };
    const answer = await proposal(this.#ctx.services, asked);
    return answer.outcome === 'unit' ? { ...asked, answer } : null;
  }

  /**
   * Decide on several alike, one after the other; one of which something else is proposed by now is left.
   * @param {Current[]} alike
   * @param {string} decision
   * @param {string} overrule
   */
  decideSeveral = (alike, decision, overrule) =>
    this.#hand.changes.run(async () => {
      /** @type {string[]} */
      const others = [];
      for (const { unit = '', answer } of alike) {
        const now = await this.#asProposed(unit);
        if (now?.answer.proposed === answer.proposed) await this.#decide(now, decision, overrule);
        else others.push(answer.shown);
      }
      const { form } = this.#ctx;
      const cards = form.several?.cards ?? [];
      const left = cards.filter((/** @type {Current} */ each) => !alike.includes(each));
      form.several = left.length ? { ...form.several, cards: left } : null;
      if (!left.length) form.together = '';
      form.done = null;
      if (others.length) form.told = { title: say('counter-changed'), sentence: say('counter-changed-of', { codes: others.join(', ') }) };
      this.#ctx.redraw();
    });

  /** @param {{words: string, events: import('../../log/log.js').Draft[]}} handover  of the unit that was decided last */
  handOn = async ({ words, events }) => {
    const { done } = this.#ctx.form;
    // Its job is closed: what happens to it now goes on record without it.
    if (!(await this.#hand.changes.run(() => this.#ctx.act(events, { job: null })))) return;
    done.after = [];
    done.handed = words;
    this.#ctx.redraw();
  };

  /** @param {any} line  of the day list, the decision to take back */
  takeBack = (line) => {
    const [device, seq] = line.event.split(':');
    const data = { device, seq: Number(seq), reason: say('counter-taken-back') };
    this.#ctx.form.done = null;
    return this.#hand.changes.run(() => this.#ctx.act([{ kind: 'corrected', data }], { job: line.job }));
  };
}
