// @ts-check
/**
 * The clerk's work at the counter: labels and symbols come in, decisions go on record.
 *
 * Everything that lasts is in `ctx.form`: the unit at hand (`current`), what was decided last (`done`),
 * what a code said that is no label (`told`), several labels in view (`which`), a symbol of which nobody has said
 * what part it is on (`whose`), held sensors that are decided together (`several`).
 */

import { alarm } from '../scan/alarm.js';
import { draftsWith } from '../frame/drafts-with.js';
import { confirmRead, prepareTones } from '../../phone/tones.js';
import { nothingRead, proposal } from './asking.js';
import { closeOtherwise, enterOtherwise, forgetEntered, isEntered, otherwiseOn, serialKey } from './entered.js';
import { InView } from './in-view.js';
import { codesIn, keysFault, withoutMarks } from './keys-read.js';
import { claim, heardOf, release } from './others.js';
import { LABEL_HOST } from '../../phone/label-place.js';
import { slipOf } from './slips.js';
import { Turns } from '../../phone/turns.js';
import { saveFile } from '../../phone/save-file.js';
import { ApiError } from '../../sync/request.js';
import { visible } from '../../words/visible.js';
import { say } from '../../words/words.js';
import { to } from '../frame/router.js';
import { SEARCH_FORM } from './search-page.js';

/** What comes into view takes turns at being asked about: the camera sees faster than the core thinks, and tells once. */
const sightings = new Turns();
/** What waits for its turn; seen once more it is no other. @type {Set<string>} */
const waiting = new Set();
const inView = new InView();
/** Whatever changes the unit at hand, or records, takes turns too: a tap and a label may come at one moment. */
const changes = new Turns();

/** Proposals for which other counters are being asked. @type {WeakSet<object>} */
const asking = new WeakSet();

/** @type {Work | undefined} */
let present;

/**
 * The clerk's work on the screen as it is drawn now. What came in while an earlier one was there goes on here: a part
 * that was set down on a screen that is gone would be lost.
 * @param {import('../frame/context.js').Context} ctx
 */
export function workOn(ctx) {
  present ??= new Work(ctx);
  present.ctx = ctx;
  return present;
}

const labelFirst = () => ({ title: say('counter-label-first'), sentence: say('counter-label-first-do') });

/** What goes on at the counter. */
export class Work {
  /** @param {import('../frame/context.js').Context} ctx  of the latest drawing */
  constructor(ctx) {
    this.ctx = ctx;
  }

  /** The unit at hand before the code that was typed last. @type {import('./asking.js').Current | null} */
  #before = null;

  /** The unit at hand: one that came in here, or the one that the address names. @returns {import('./asking.js').Current | null} */
  get current() {
    const { form, data } = this.ctx;
    if (data.given) return form.given?.answer.unit === data.given.answer.unit ? form.given : data.given;
    return form.current ?? null;
  }

  /** @param {import('./asking.js').Current | null} current */
  #set(current) {
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

  /** Another decision on the unit at hand, while it is entered; null while its proposal is shown. */
  get otherwise() {
    const { current } = this;
    const entered = current && otherwiseOn(this.ctx.form, current.answer.unit);
    return entered?.isOpen ? entered : null;
  }

  /** Enter another decision on the unit at hand: what is chosen, the reason. @param {Partial<import('./entered.js').Otherwise>} more */
  enterOtherwise = (more) => {
    if (this.current) enterOtherwise(this.ctx.form, this.current.answer.unit, { isOpen: true, ...more });
    this.ctx.redraw();
  };

  asProposed = () => {
    if (this.current) closeOtherwise(this.ctx.form, this.current.answer.unit);
    this.ctx.redraw();
  };

  /** Open the camera; what was entered is written down first. */
  open = async () => {
    prepareTones();
    inView.forget();
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

  /** What each picture of the camera shows. @param {string[]} texts */
  see = (texts) => inView.picture(texts);

  /** What the camera shows anew. @param {string[]} texts */
  show = (texts) => {
    const fresh = texts.filter((text) => !inView.isDoneWith(text));
    return fresh.length ? this.take(fresh) : undefined;
  };

  /** What a hand scanner typed. @param {import('./key-presses.js').Keyed} keyed */
  keyed = async (keyed) => {
    prepareTones();
    const { services } = this.ctx;
    try {
      await this.#restart(keyed);
      const codes = codesIn(keyed);
      const faults = await Promise.all(codes.map((code) => keysFault(services, code)));
      const fault = faults.find(Boolean);
      if (fault) return this.#tell(fault);
      // What came at one go was seen at one look.
      const texts = await Promise.all(codes.map(({ text }) => withoutMarks(services, text)));
      await this.take([...new Set(texts)], keyed.how, keyed.at);
    } catch (error) {
      this.#unchecked(error);
    }
  };

  /**
   * The beginning of a code may have been taken for one: what was read off the part by it was not there.
   * @param {import('./key-presses.js').Keyed} keyed
   */
  async #restart({ goesOn }) {
    const before = this.#before;
    if (goesOn && before) await this.#atHand(async (now) => {
      if (now.answer.unit === before.answer.unit) this.#set(before);
    });
    this.#before = this.current;
  }

  /**
   * Texts of codes read at one time: a label is the next unit, anything else the maker's symbol of the one at hand.
   * @param {string[]} texts
   * @param {string} [how]
   * @param {number} [at]  when they were read, by performance.now()
   */
  take = async (texts, how = 'scanned', at = performance.now()) => {
    const key = JSON.stringify([how, [...texts].sort()]);
    if (waiting.has(key)) return;
    waiting.add(key);
    await sightings.run(async () => {
      try {
        await this.#take(texts, how, at);
      } catch (error) {
        this.#unchecked(error);
      } finally {
        waiting.delete(key);
      }
    });
  };

  /**
   * @param {string[]} texts
   * @param {string} how
   * @param {number} at
   */
  async #take(texts, how, at) {
    /** @type {import('./asking.js').Current[]} */
    const labels = [];
    /** @type {Array<{text: string, answer: any}>} */
    const others = [];
    for (const text of texts) {
      const answer = await proposal(this.ctx.services, { text, how, read: nothingRead() });
      if (answer.outcome === 'unit') labels.push({ text, how, read: nothingRead(), answer });
      else others.push({ text, answer });
    }
    await changes.run(() => this.#come(labels, others, at));
  }

  /**
   * @param {import('./asking.js').Current[]} labels  of ours
   * @param {Array<{text: string, answer: any}>} others
   * @param {number} at
   */
  async #come(labels, others, at) {
    const { form } = this.ctx;
    form.told = null;
    form.whose = null;
    form.which = labels.length > 1 ? labels.map(({ text, answer }) => ({ text, shown: answer.shown })) : null;
    if (labels.length === 1) this.#next(labels[0], at);
    const { current } = this;
    const symbols = others.map(({ text }) => text);
    if (symbols.length && current && !form.which) {
      // Beside a label that is not the one at hand, it is that one's.
      const beside = labels.length && labels[0].answer.unit !== current.answer.unit;
      if (labels.length ? !beside : inView.isSameLook(at)) await this.#symbol(symbols, at);
      else if (!beside) this.#askWhose(current, symbols);
    } else if (symbols.length && !labels.length) form.told = await this.#noLabel(others[0]);
    this.ctx.redraw();
    inView.shown();
  }

  /**
   * What is said of a text that is no label, where no unit is at hand: of the next part's bag, that its label comes
   * first; of what was typed, which sensors have that serial number, or where else to look for it.
   * @param {{text: string, answer: any}} read
   */
  async #noLabel({ text, answer }) {
    if (answer.sensors?.length) return { ...answer, title: say('counter-serial-known'), sentence: say('counter-serial-known-of', { serial: visible(text) }), serial: text };
    if (answer.sensors) return { ...answer, search: text };
    if (answer.outcome !== 'foreign') return answer;
    const read = await this.ctx.services.core.call('maker_symbol', { texts: [text], host: LABEL_HOST });
    if (read.outcome !== 'numbers' && read.outcome !== 'choices') return answer;
    const numbers = read.outcome === 'numbers' ? [read.part, read.serial].filter(Boolean).join(', ') : text;
    return { ...labelFirst(), sentence: say('counter-bag-first', { numbers: visible(numbers) }) };
  }

  /**
   * @param {import('./asking.js').Current} following
   * @param {number} at
   */
  #next(following, at) {
    const { form } = this.ctx;
    const { unit } = following.answer;
    const before = this.current?.answer;
    inView.look(following.text ?? '', [], at);
    if (unit === before?.unit) return;
    const isKept = before && isEntered(form, before.unit);
    if (before && (isKept || !before.waiting)) {
      form.told = {
        title: isKept ? say('counter-entered-kept') : say('counter-only-looked'),
        sentence: isKept ? say('counter-entered-kept-of', { code: before.shown }) : say('counter-only-looked-at', { code: before.shown }),
      };
    }
    form.mode = form.mode === 'type' ? '' : form.mode;
    form.typed = '';
    form.done = null;
    this.#set(following);
    if (following.answer.proposed === 'refuse') alarm();
    else confirmRead();
  }

  /**
   * @param {string[]} texts  of symbols that are no labels of ours
   * @param {number} at
   * @param {{said?: boolean}} [options]  said: the clerk says that they are on the part at hand
   */
  async #symbol(texts, at, { said = false } = {}) {
    const current = this.current;
    if (!current) return;
    inView.look(current.text ?? '', texts, at);
    const read = await this.ctx.services.core.call('maker_symbol', { texts, host: LABEL_HOST });
    if (read.outcome !== 'numbers') this.ctx.form.told = { ...read, unit: current.answer.unit };
    // A part has one serial number: a second one is perhaps of the next part, of which the label is still to come.
    else if (!said && read.serial && current.read.serial && read.serial !== current.read.serial) this.#askWhose(current, texts);
    else await this.#read(current, { part: read.part, serial: read.serial });
  }

  /**
   * @param {import('./asking.js').Current} current  that may be the part meant
   * @param {string[]} texts
   */
  #askWhose(current, texts) {
    this.ctx.form.whose = { texts, unit: current.answer.unit };
  }

  /**
   * Something was read off the part or compared: ask again.
   * @param {import('./asking.js').Current} current
   * @param {Partial<import('./asking.js').Asked['read']>} more  empty fields add nothing
   */
  async #read(current, more) {
    const read = { ...current.read };
    for (const [field, value] of Object.entries(more)) if (value) read[/** @type {'part'} */ (field)] = value;
    const before = current.answer.proposed;
    const answer = await proposal(this.ctx.services, { ...current, read });
    if (answer.outcome !== 'unit') return;
    // What was given as the serial number was the part number.
    if (read.serial && !answer.read.serial) Object.assign(read, { part: answer.read.part, serial: '' });
    this.#set({ ...current, read, answer });
    this.ctx.form.told = null;
    if (answer.proposed === 'refuse' && before !== 'refuse') alarm();
  }

  /** Ask the other counters of the chain, where that is due; the proposal stands meanwhile, and changes with what they have. */
  async hear() {
    const { current } = this;
    if (!current || current.heard === String(current.answer.keys) || asking.has(current.answer)) return;
    asking.add(current.answer);
    const register = await heardOf(this.ctx.services, current.answer);
    if (!register) return;
    await changes.run(async () => {
      const now = this.current;
      // Its number may have been read meanwhile: then others are asked by that one too.
      if (now?.answer.unit === current.answer.unit && String(now.answer.keys) === String(current.answer.keys)) {
        await this.#learn(now, register);
      }
    });
    this.ctx.redraw();
  }

  /**
   * What other counters have is known now.
   * @param {import('./asking.js').Current} current
   * @param {import('./others.js').Heard} register
   * @returns {Promise<import('./asking.js').Current>}
   */
  async #learn(current, register) {
    const answer = await proposal(this.ctx.services, { ...current, register });
    if (answer.outcome !== 'unit') return current;
    const learned = { ...current, register, heard: String(answer.keys), answer };
    this.#set(learned);
    if (answer.proposed === 'refuse' && current.answer.proposed !== 'refuse') alarm();
    return learned;
  }

  /**
   * The part at hand is named by its serial number, which somebody typed; nobody read its label.
   * @param {string} unit
   * @param {string} serial
   */
  bySerial = (unit, serial) =>
    changes.run(async () => {
      const asked = { unit, how: '', read: { ...nothingRead(), serial } };
      const answer = await proposal(this.ctx.services, asked);
      if (answer.outcome !== 'unit') return;
      this.ctx.form.told = null;
      this.#next({ ...asked, answer }, performance.now());
      this.ctx.redraw();
    });

  /** Look for what was typed among all that is on record. @param {string} text */
  searchFor = async (text) => {
    const { ctx } = this;
    Object.assign(ctx.form, { mode: '', told: null });
    await ctx.keep();
    ctx.services.drafts.touch(SEARCH_FORM, { text });
    ctx.go(to.search());
  };

  /** @param {{part: string, serial: string}} choice  of several numbers on a bag */
  choose = (choice) => this.#atHand((current) => this.#read(current, choice));

  /** The symbol that was asked about is on the part at hand. */
  itsOwn = () =>
    this.#atHand(async () => {
      const { form } = this.ctx;
      const { texts } = form.whose;
      form.whose = null;
      await this.#symbol(texts, performance.now(), { said: true });
    });

  /** It is on another part, whose label is wanted first. */
  anothers = () => {
    this.ctx.form.whose = null;
    this.#tell(labelFirst());
  };

  /** A serial number that somebody read with their own eyes. @param {string} serial */
  serial = (serial) =>
    this.#atHand(async (current) => {
      Reflect.deleteProperty(this.ctx.form, serialKey(current.answer.unit));
      await this.#read(current, { serial });
    });

  /** @param {'same' | 'other' | ''} compared  the part beside its pictures, by eye; '' takes that back */
  compare = (compared) => this.#atHand((current) => this.#read({ ...current, read: { ...current.read, compared } }, {}));

  /** The clerk has the unit: it goes on record as received, and stays at hand. */
  receive = () =>
    this.#atHand(async (current) => {
      const { answer } = current;
      if (await this.ctx.act([answer.received], { job: answer.job })) await this.#read(current, {});
    });

  /** Leave the unit at hand as it is; nothing is recorded. */
  leave = () =>
    this.#atHand(async () => {
      inView.done();
      this.#set(null);
      if (this.ctx.data.given) this.ctx.go('#/');
    });

  /**
   * Do something with the unit at hand; not with the next one, which may have come in its place before its turn.
   * @param {(current: import('./asking.js').Current) => Promise<void>} work
   */
  async #atHand(work) {
    const { current } = this;
    if (!current) return;
    const { unit } = current.answer;
    await changes.run(async () => {
      const now = this.current;
      if (now && now.answer.unit === unit) await work(now);
    });
    this.ctx.redraw();
  }

  /**
   * Record a decision on the unit at hand.
   * @param {string} decision
   * @param {string} [overrule]  the reason, where it goes against the proposal
   */
  decide = (decision, overrule = '') => this.#atHand((current) => this.#decide(current, decision, overrule));

  /**
   * @param {import('./asking.js').Current} current
   * @param {string} decision
   * @param {string} overrule
   */
  async #decide(current, decision, overrule) {
    const { ctx } = this;
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
    inView.done();
    const { unit, shown } = answer;
    forgetEntered(ctx.form, unit);
    this.#set(null);
    ctx.form.done = { unit, shown, decision, word: chosen.past, after: chosen.after };
    if (ctx.data.given) ctx.go('#/');
    void slipOf(ctx, unit);
  }

  /**
   * Ask once more before a decision goes on record: another phone may have decided while the proposal stood here.
   * @param {import('./asking.js').Current} current
   * @returns {Promise<import('./asking.js').Current | null>} null where something else is proposed now, and shown
   */
  async #stillSo(current) {
    const { services } = this.ctx;
    const answer = await proposal(services, current);
    if (answer.outcome !== 'unit') return null;
    const now = { ...current, answer };
    const { proposed, against } = current.answer;
    if (answer.proposed === proposed && String(answer.against) === String(against)) return now;
    this.#set(now);
    this.ctx.form.told = { title: say('counter-changed'), sentence: say('counter-changed-do', { code: answer.shown }) };
    if (answer.proposed === 'refuse') alarm();
    return null;
  }

  /**
   * Look at several held sensors at once.
   * @param {string} why  they are held
   * @param {string[]} units
   */
  several = async (why, units) => {
    const cards = await Promise.all(units.map((unit) => this.#asProposed(unit)));
    const { form } = this.ctx;
    // A reason that was given for others is none for these.
    if (form.togetherFor !== why) Object.assign(form, { together: '', togetherFor: why });
    form.several = { why, cards: cards.filter(Boolean) };
    this.ctx.redraw();
  };

  /** @param {string} unit  one that waits @returns {Promise<import('./asking.js').Current | null>} */
  async #asProposed(unit) {
    const asked = { unit, how: '', read: nothingRead() };
    const answer = await proposal(this.ctx.services, asked);
    return answer.outcome === 'unit' ? { ...asked, answer } : null;
  }

  /**
   * Decide on several alike, one after the other; one of which something else is proposed by now is left.
   * @param {import('./asking.js').Current[]} alike
   * @param {string} decision
   * @param {string} overrule
   */
  decideSeveral = (alike, decision, overrule) =>
    changes.run(async () => {
      /** @type {string[]} */
      const others = [];
      for (const { unit = '', answer } of alike) {
        const now = await this.#asProposed(unit);
        if (now?.answer.proposed === answer.proposed) await this.#decide(now, decision, overrule);
        else others.push(answer.shown);
      }
      const { form } = this.ctx;
      const cards = form.several?.cards ?? [];
      const left = cards.filter((/** @type {import('./asking.js').Current} */ each) => !alike.includes(each));
      form.several = left.length ? { ...form.several, cards: left } : null;
      if (!left.length) form.together = '';
      form.done = null;
      if (others.length) form.told = { title: say('counter-changed'), sentence: say('counter-changed-of', { codes: others.join(', ') }) };
      this.ctx.redraw();
    });

  /**
   * Of what is accepted the other counters are told first: one that has the part already gets the better of it.
   * @param {import('./asking.js').Current} current
   * @param {string} decision
   * @returns {Promise<import('./asking.js').Current | null>} null where this counter may not decide so unknowing
   */
  async #claimed(current, decision) {
    const { against } = current.answer;
    if (decision !== 'accept' || against.includes('others')) return current;
    const register = await claim(this.ctx.services, current.answer);
    if (!register) return current;
    const known = current.register?.asked === register.asked && !register.found.length;
    const learned = known ? current : await this.#learn(current, register);
    return register.found.length ? null : learned;
  }

  /** @param {{words: string, events: import('../../log/log.js').Draft[]}} handover  of the unit that was decided last */
  handOn = async ({ words, events }) => {
    const { done } = this.ctx.form;
    // Its job is closed: what happens to it now goes on record without it.
    if (!(await changes.run(() => this.ctx.act(events, { job: null })))) return;
    done.after = [];
    done.handed = words;
    this.ctx.redraw();
  };

  /** @param {any} line  of the day list, the decision to take back */
  takeBack = (line) => {
    const [device, seq] = line.event.split(':');
    const data = { device, seq: Number(seq), reason: say('counter-taken-back') };
    this.ctx.form.done = null;
    return changes.run(() => this.ctx.act([{ kind: 'corrected', data }], { job: line.job }));
  };

  /** Save the record from another shop that is kept for the unit at hand, as it came. */
  saveRecord = async () => {
    const { current } = this;
    if (!current) return;
    const { shown, record_file: digest } = current.answer;
    try {
      const kept = await this.ctx.services.sync.api.file(`/api/records/kept/${digest}`);
      await saveFile(new File([kept], `swaptrail-record-${shown.replace('-', '')}.zip`, { type: 'application/zip' }));
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      this.#tell({ title: say('counter-record-not-here'), sentence: error.sentence });
    }
  };

  /** @param {unknown} error  of the core, which then said nothing of what was read */
  #unchecked(error) {
    this.#tell({ title: say('counter-unchecked'), sentence: error instanceof Error ? error.message : String(error) });
  }

  /** @param {{title: string, sentence: string}} told */
  #tell(told) {
    this.ctx.form.told = told;
    this.ctx.redraw();
  }
}
