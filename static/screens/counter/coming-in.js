// @ts-check
/**
 * What comes in at the counter, by camera, hand scanner, typing or tap: a label brings the next unit to hand, anything
 * else is read off the one that is.
 */

import { alarm } from '../scan/alarm.js';
import { confirmRead, prepareTones } from '../../phone/tones.js';
import { nothingRead, proposal } from './asking.js';
import { isEntered, serialKey } from './entered.js';
import { codesIn, keysFault, withoutMarks } from './keys-read.js';
import { labelFirst, ofNoLabel } from './no-label.js';
import { LABEL_HOST } from '../../phone/label-place.js';
import { Turns } from '../../phone/turns.js';
import { say } from '../../words/words.js';

/** @typedef {import('./asking.js').Current} Current */

/** What comes in, each in its turn. */
export class ComingIn {
  /** @type {import('./at-hand.js').AtHand} */
  #hand;
  /** What comes into view takes turns at being asked about: the camera sees faster than the core thinks, and tells once. */
  #sightings = new Turns();
  /** What waits for its turn; seen once more it is no other. @type {Set<string>} */
  #waiting = new Set();
  /** The unit at hand before the code that was typed last. @type {Current | null} */
  #before = null;

  /** @param {import('./at-hand.js').AtHand} hand */
  constructor(hand) {
    this.#hand = hand;
  }

  /** What each picture of the camera shows. @param {string[]} texts */
  see = (texts) => this.#hand.inView.picture(texts);

  /** What the camera shows anew. @param {string[]} texts */
  show = (texts) => {
    const fresh = texts.filter((text) => !this.#hand.inView.isDoneWith(text));
    return fresh.length ? this.take(fresh) : undefined;
  };

  /** What a hand scanner typed. @param {import('./key-presses.js').Keyed} keyed */
  keyed = async (keyed) => {
    prepareTones();
    const { services } = this.#hand.ctx;
    try {
      await this.#restart(keyed);
      const codes = codesIn(keyed);
      const faults = await Promise.all(codes.map((code) => keysFault(services, code)));
      const fault = faults.find(Boolean);
      if (fault) return this.#hand.tell(fault);
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
    if (goesOn && before) await this.#hand.inTurn(async (now) => {
      if (now.answer.unit === before.answer.unit) this.#hand.set(before);
    });
    this.#before = this.#hand.current;
  }

  /**
   * Texts of codes read at one time: a label is the next unit, anything else the maker's symbol of the one at hand.
   * @param {string[]} texts
   * @param {string} [how]
   * @param {number} [at]  when they were read, by performance.now()
   */
  take = async (texts, how = 'scanned', at = performance.now()) => {
    const key = JSON.stringify([how, [...texts].sort()]);
    if (this.#waiting.has(key)) return;
    this.#waiting.add(key);
    await this.#sightings.run(async () => {
      try {
        await this.#take(texts, how, at);
      } catch (error) {
        this.#unchecked(error);
      } finally {
        this.#waiting.delete(key);
      }
    });
  };

  /**
   * @param {string[]} texts
   * @param {string} how
   * @param {number} at
   */
  async #take(texts, how, at) {
    /** @type {Current[]} */
    const labels = [];
    /** @type {Array<{text: string, answer: any}>} */
    const others = [];
    for (const text of texts) {
      const answer = await proposal(this.#hand.ctx.services, { text, how, read: nothingRead() });
      if (answer.outcome === 'unit') labels.push({ text, how, read: nothingRead(), answer });
      else others.push({ text, answer });
    }
    await this.#hand.changes.run(() => this.#come(labels, others, at));
  }

  /**
   * @param {Current[]} labels  of ours
   * @param {Array<{text: string, answer: any}>} others
   * @param {number} at
   */
  async #come(labels, others, at) {
    const { ctx, inView } = this.#hand;
    const { form } = ctx;
    form.told = null;
    form.whose = null;
    form.which = labels.length > 1 ? labels.map(({ text, answer }) => ({ text, shown: answer.shown })) : null;
    if (labels.length === 1) this.#next(labels[0], at);
    const { current } = this.#hand;
    const symbols = others.map(({ text }) => text);
    if (symbols.length && current && !form.which) {
      // Beside a label that is not the one at hand, it is that one's.
      const beside = labels.length && labels[0].answer.unit !== current.answer.unit;
      if (labels.length ? !beside : inView.isSameLook(at)) await this.#symbol(symbols, at);
      else if (!beside) this.#askWhose(current, symbols);
    } else if (symbols.length && !labels.length) form.told = await ofNoLabel(ctx.services, others[0]);
    this.#hand.ctx.redraw();
    inView.shown();
  }

  /**
   * @param {Current} following
   * @param {number} at
   */
  #next(following, at) {
    const { ctx, current, inView } = this.#hand;
    const { form } = ctx;
    const { unit } = following.answer;
    const before = current?.answer;
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
    this.#hand.set(following);
    if (following.answer.proposed === 'refuse') alarm();
    else confirmRead();
  }

  /**
   * @param {string[]} texts  of symbols that are no labels of ours
   * @param {number} at
   * @param {{said?: boolean}} [options]  said: the clerk says that they are on the part at hand
   */
  async #symbol(texts, at, { said = false } = {}) {
    const { current, inView } = this.#hand;
    if (!current) return;
    inView.look(current.text ?? '', texts, at);
    const read = await this.#hand.ctx.services.core.call('maker_symbol', { texts, host: LABEL_HOST });
    if (read.outcome !== 'numbers') this.#hand.ctx.form.told = { ...read, unit: current.answer.unit };
    // A part has one serial number: a second one is perhaps of the next part, of which the label is still to come.
    else if (!said && read.serial && current.read.serial && read.serial !== current.read.serial) this.#askWhose(current, texts);
    else await this.#hand.read(current, { part: read.part, serial: read.serial });
  }

  /**
   * @param {Current} current  that may be the part meant
   * @param {string[]} texts
   */
  #askWhose(current, texts) {
    this.#hand.ctx.form.whose = { texts, unit: current.answer.unit };
  }

  /** The symbol that was asked about is on the part at hand. */
  itsOwn = () =>
    this.#hand.inTurn(async () => {
      const { form } = this.#hand.ctx;
      const { texts } = form.whose;
      form.whose = null;
      await this.#symbol(texts, performance.now(), { said: true });
    });

  /** It is on another part, whose label is wanted first. */
  anothers = () => {
    this.#hand.ctx.form.whose = null;
    this.#hand.tell(labelFirst());
  };

  /** @param {{part: string, serial: string}} choice  of several numbers on a bag */
  choose = (choice) => this.#hand.inTurn((current) => this.#hand.read(current, choice));

  /** A serial number that somebody read with their own eyes. @param {string} serial */
  serial = (serial) =>
    this.#hand.inTurn(async (current) => {
      Reflect.deleteProperty(this.#hand.ctx.form, serialKey(current.answer.unit));
      await this.#hand.read(current, { serial });
    });

  /** @param {'same' | 'other' | ''} compared  the part beside its pictures, by eye; '' takes that back */
  compare = (compared) => this.#hand.inTurn((current) => this.#hand.read({ ...current, read: { ...current.read, compared } }, {}));

  /**
   * The part at hand is named by its serial number, which somebody typed; nobody read its label.
   * @param {string} unit
   * @param {string} serial
   */
  bySerial = (unit, serial) =>
    this.#hand.changes.run(async () => {
      const asked = { unit, how: '', read: { ...nothingRead(), serial } };
      const answer = await proposal(this.#hand.ctx.services, asked);
      if (answer.outcome !== 'unit') return;
      this.#hand.ctx.form.told = null;
      this.#next({ ...asked, answer }, performance.now());
      this.#hand.ctx.redraw();
    });

  /** @param {unknown} error  of the core, which then said nothing of what was read */
  #unchecked(error) {
    this.#hand.tell({ title: say('counter-unchecked'), sentence: error instanceof Error ? error.message : String(error) });
  }
}
