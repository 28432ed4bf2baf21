// @ts-check
/**
 * Numbers, lists, dates and units as text: the rule of server/words/figures.py, to the letter. The libraries on the two sides
 * round, group and date differently, so none of them formats a figure.
 */

/** Where a verdict begins, in parts per billion. */
const VERDICT = 950_000_000;

/** The first time that is not shown; what was kept with one has a day and a time that nobody knows. */
const TOO_LATE = 253_370_764_800_000;

/** Whether a time can be shown. @param {number} at  ms */
export const isKnown = (at) => at >= 0 && at < TOO_LATE;

/** @typedef {(id: string, args: Record<string, string>) => string} Say */

export class Figures {
  /** @param {Say} say  says the messages of the language's figures.ftl */
  constructor(say) {
    this.#say = say;
  }

  #say;

  /** An integer with its groups marked, as in '12,345'. @param {number} number */
  whole(number) {
    let digits = String(Math.abs(number));
    if (digits.length >= Number(this.#mark('group-from'))) {
      digits = digits.replace(/\B(?=(\d{3})+$)/g, this.#mark('group'));
    }
    return number < 0 ? this.#mark('minus') + digits : digits;
  }

  /**
   * `units` of 10 to the minus `places`, as in (1205, 2) -> '12.05'.
   * @param {number} units
   * @param {number} places
   */
  decimal(units, places) {
    const scale = 10 ** places;
    const above = Math.abs(units);
    let text = this.whole(Math.floor(above / scale));
    if (places) text += this.#mark('decimal') + String(above % scale).padStart(places, '0');
    return units < 0 ? this.#mark('minus') + text : text;
  }

  /**
   * A probability in parts per billion as people read it: whole percent; one decimal above 95, just below it, and below
   * 5, where it matters; never a false 0, 95 or 100.
   * @param {number} ppb
   */
  percent(ppb) {
    if (ppb > 999_500_000) return this.#say('figures-percent-over', { number: this.decimal(999, 1) });
    if (ppb < 500_000) return this.#say('figures-percent-under', { number: this.decimal(1, 1) });
    let tenths = Math.floor((ppb + 500_000) / 1_000_000);
    if (ppb >= 945_000_000 && ppb < VERDICT) {
      // Never 95 for what does not reach it: that is where a verdict begins.
      tenths = Math.floor(ppb / 1_000_000);
    } else if (tenths >= 50 && tenths <= 950) {
      return this.#say('figures-percent', { number: this.whole(Math.floor((ppb + 5_000_000) / 10_000_000)) });
    }
    return this.#say('figures-percent', { number: this.decimal(tenths, 1) });
  }

  /**
   * 'a', 'a and b' or 'a, b and c'. A language may choose its word by how the item begins (`sounds`), as Spanish does:
   * 'derecho e izquierdo'.
   * @param {string[]} items
   * @param {'and' | 'or' | 'also'} last
   */
  listed([first = '', ...rest], last) {
    return rest.reduce((before, item, at) => {
      const joint = at === rest.length - 1 ? `figures-${last}` : 'figures-then';
      const sounds = item.replace(/^[¿¡“]+/, '').slice(0, 2).toLowerCase();
      return this.#say(joint, { before, item, sounds });
    }, first);
  }

  /** The day of a time in milliseconds since 1970. @param {number} at */
  day(at) {
    if (!isKnown(at)) return this.#say('figures-unknown-day', {});
    const then = new Date(at);
    const month = this.#say(`figures-month-${then.getMonth() + 1}`, {});
    return this.#say('figures-day', { day: String(then.getDate()), month, year: String(then.getFullYear()) });
  }

  /** The time of day of a time in milliseconds since 1970. @param {number} at */
  time(at) {
    if (!isKnown(at)) return this.#say('figures-unknown-time', {});
    const then = new Date(at);
    const two = (/** @type {number} */ number) => String(number).padStart(2, '0');
    return this.#say('figures-time', { hour: two(then.getHours()), minute: two(then.getMinutes()) });
  }

  /** Day and time of day. @param {number} at */
  moment(at) {
    if (!isKnown(at)) return this.#say('figures-unknown-time', {});
    return this.#say('figures-moment', { day: this.day(at), time: this.time(at) });
  }

  /** @param {string} name */
  #mark(name) {
    return this.#say(`figures-mark-${name}`, {});
  }
}
