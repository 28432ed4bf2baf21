// @ts-check
/**
 * Says messages as server/words/speech.py does: an id and arguments become text of one language.
 */

import { FluentBundle, FluentNumber, FluentResource } from '@fluent/bundle';

import { Figures } from './figures.js';

/**
 * @typedef {{msg: string, args?: Record<string, unknown>}} Message   arguments: text, a count, a message, or a figure
 */

/** A count: its plural is the language's, its digits follow our rule. */
class Count extends FluentNumber {
  /**
   * @param {number} number
   * @param {Figures} figures
   */
  constructor(number, figures) {
    super(number);
    this.figures = figures;
  }

  toString() {
    return this.figures.whole(this.value);
  }
}

/** Has a text begin a sentence: `CAP($cause) is the cause.` @param {any[]} of */
function capital([text]) {
  const said = String(text);
  return said.slice(0, 1).toUpperCase() + said.slice(1);
}

export class Speech {
  /**
   * @param {string} language
   * @param {string} text       its Fluent messages
   * @param {(fault: string) => void} [complain]   hears of a message that is not there or lacks an argument
   */
  constructor(language, text, complain = (fault) => console.error(fault)) {
    this.language = language;
    this.#bundle = new FluentBundle(language, { useIsolating: false, functions: { CAP: capital } });
    this.#bundle.addResource(new FluentResource(text));
    this.#complain = complain;
    this.#figures = new Figures((id, args) => this.#plain(id, args));
  }

  #bundle;
  #complain;
  #figures;

  /** @param {string} msg @param {Record<string, unknown>} [args] */
  say(msg, args = {}) {
    return this.#plain(msg, Object.fromEntries(Object.entries(args).map(([name, value]) => [name, this.#argument(value)])));
  }

  /**
   * A value as JSON has it, each message in it as its text.
   * @param {unknown} value
   * @returns {any}
   */
  render(value) {
    if (Array.isArray(value)) return value.map((each) => this.render(each));
    if (value === null || typeof value !== 'object') return value;
    const said = this.#said(/** @type {Record<string, unknown>} */ (value));
    if (said !== undefined) return said;
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, this.render(each)]));
  }

  /** @param {unknown} value */
  #argument(value) {
    if (value !== null && typeof value === 'object') return this.#said(/** @type {Record<string, unknown>} */ (value)) ?? '';
    return Number.isInteger(value) ? new Count(/** @type {number} */ (value), this.#figures) : String(value);
  }

  /**
   * The text of a message or a figure; undefined for anything else.
   * @param {Record<string, any>} value
   */
  #said(value) {
    if ('msg' in value) return this.say(value.msg, value.args);
    const [[name, what] = [''], ...more] = Object.entries(value);
    return more.length || !Object.hasOwn(FIGURES, name) ? undefined : FIGURES[name](this.#figures, what, (items) => this.#texts(items));
  }

  /** @param {unknown[]} items @returns {string[]} */
  #texts(items) {
    return items.map((item) => String(this.render(item))).filter(Boolean);
  }

  /** @param {string} id @param {Record<string, any>} args */
  #plain(id, args) {
    const pattern = this.#bundle.getMessage(id)?.value;
    if (!pattern) {
      this.#complain(`Message ${id} is not there in ${this.language}; arguments ${JSON.stringify(args)}.`);
      return id;
    }
    /** @type {Error[]} */
    const faults = [];
    const text = this.#bundle.formatPattern(pattern, args, faults);
    if (faults.length) this.#complain(`Message ${id} cannot be said in ${this.language}: ${faults.join(' ')}; arguments ${JSON.stringify(args)}.`);
    return text;
  }
}

/** @type {Record<string, (figures: Figures, what: any, texts: (items: unknown[]) => string[]) => string>} */
const FIGURES = {
  whole: (figures, number) => figures.whole(number),
  decimal: (figures, [units, places]) => figures.decimal(units, places),
  percent: (figures, ppb) => figures.percent(ppb),
  day: (figures, at) => figures.day(at),
  time: (figures, at) => figures.time(at),
  moment: (figures, at) => figures.moment(at),
  and: (figures, items, texts) => figures.listed(texts(items), 'and'),
  or: (figures, items, texts) => figures.listed(texts(items), 'or'),
  sentences: (_, items, texts) => texts(items).join(' '),
};
