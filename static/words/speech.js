// @ts-check
/**
 * Says messages as server/words/speech.py does: an id and arguments become text of one language.
 */

import { FluentBundle, FluentNumber, FluentResource } from '@fluent/bundle';

import { Figures } from './figures.js';
import { visible } from './visible.js';

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

  /** As a fault tells of it. */
  toJSON() {
    return this.value;
  }
}

/**
 * What the messages of a bundle may call, as server/words/speech.py explains.
 * @param {() => FluentBundle} own  gives the bundle that they belong to
 */
function functionsOf(own) {
  const plain = (/** @type {any} */ pattern) => own().formatPattern(pattern, {});
  return {
    /** @param {any[]} of */
    CAP: ([text]) => String(text).slice(0, 1).toUpperCase() + String(text).slice(1),
    /** @param {any[]} of @param {Record<string, any>} how */
    PART: ([sort], { form = 'one' }) => {
      const pattern = own().getMessage(`part-${sort}`)?.attributes[String(form)];
      if (!pattern) throw new ReferenceError(`part-${sort} has no form ${form}`);
      return plain(pattern);
    },
    /** @param {any[]} of */
    JOIN: ([word, text]) => {
      const [first, ...rest] = String(text).split(' ');
      const joint = rest.length ? own().getMessage(`join-${word}-${first}`)?.value : null;
      return joint ? `${plain(joint)} ${rest.join(' ')}` : `${word} ${text}`;
    },
  };
}

export class Speech {
  /**
   * @param {string} language
   * @param {string} text       its Fluent messages
   * @param {(fault: string) => void} [complain]   hears of a message that is not there or lacks an argument
   */
  constructor(language, text, complain = (fault) => console.error(fault)) {
    this.language = language;
    this.#bundle = new FluentBundle(language, { useIsolating: false, functions: functionsOf(() => this.#bundle) });
    this.#bundle.addResource(new FluentResource(text));
    this.#complain = complain;
    this.#figures = new Figures((id, args) => this.#plain(id, args));
  }

  #bundle;
  #complain;
  #figures;

  /**
   * @param {string} msg
   * @param {Record<string, unknown>} [args]
   * @returns {string}
   */
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
    if (value !== null && typeof value === 'object') return this.#said(/** @type {any} */ (value)) ?? '';
    return Number.isInteger(value) ? new Count(/** @type {number} */ (value), this.#figures) : visible(String(value));
  }

  /**
   * The text of a message or a figure; undefined for anything else.
   * @param {Record<string, any>} value
   * @returns {string | undefined}
   */
  #said(value) {
    if (Object.keys(value).length !== 2) return undefined;
    if ('msg' in value && 'args' in value) return this.say(value.msg, value.args);
    if (!('figure' in value && 'of' in value)) return undefined;
    return FIGURES[value.figure](this.#figures, value.of, (items) => this.#texts(items));
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
    if (!faults.length) return text;
    this.#complain(`Message ${id} cannot be said in ${this.language}: ${faults.join(' ')}; arguments ${JSON.stringify(args)}.`);
    return id;
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
  also: (figures, items, texts) => figures.listed(texts(items), 'also'),
  sentences: (_, items, texts) => texts(items).join(' '),
};
