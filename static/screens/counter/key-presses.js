// @ts-check
/**
 * Gathers the key presses of a hand scanner to codes, and leaves those of a person alone.
 */

import { altDigit, controlOf, onUsKeyboard } from './scanner-keys.js';

/** A pause this long ends a code without an Enter; slow scanners leave 100 ms between two keys. */
const QUIET_MS = 500;
/** So much later than asked for, a look at the clock says that the computer was busy. */
const BUSY_MS = 50;
/** However late a key came, the end of its code is not waited for longer. */
const MOST_LATE_MS = 3000;
/** A message that has begun and not ended has keys to come: RS and EOT, as in ISO/IEC 15434; some makers leave them out. */
const HAS_NO_END = /\[\)>.*[^\x1e\x04]$/s;
/** A label's address, or a message that has ended, is all there. What is not may go on: a number's beginning is one, too. */
const IS_WHOLE = /:\/\/.*[/#]\w{5}$|\[\)>.*[\x1e\x04]$/s;
/** So much longer than the pause it is waited for, so that no other part is shown that has that number. */
const MAY_GO_ON_MS = 1000;
/** A person's next step, with the code before it at an end. */
const STEP_KEY = /^F\d+$/;
/** An Enter this soon after a code belongs to it. */
const LATE_END_MS = 1000;
/** Between two keys on average: people need 60 and more. A field takes what people type, so there it is less. */
const SCANNED_MS = 60;
const SCANNED_IN_FIELD_MS = 40;
const FEWEST = 4;
/** Nobody types these: a separator, the mark of a maker's symbol, an address, the sign of the sort of symbol. */
const UNMISTAKABLE = /[\x1c-\x1f\x04]|\[\)>|^\][A-Za-z]\w|:\/\/./;
/** Pressed while a code is typed; any other key is a person's, who corrects what stands in a field. */
const PART_OF_A_CODE = /^(Shift|Control|Alt|AltGraph|CapsLock|NumLock|Unidentified|)$/;
const FIELDS = ['textarea', 'select', 'input[type=text]'].join();

/**
 * @typedef {object} Keyed            a code that was typed by a scanner, or by a person beside every field
 * @property {string} text
 * @property {string} us              the same keys on a US keyboard
 * @property {'scanned' | 'typed'} how
 * @property {number} at              when its last key was pressed, by performance.now()
 * @property {boolean} goesOn         it begins with all of the code handed over before, which was cut
 */

/**
 * @typedef {object} Cut
 * @property {Array<{key: string, us: string}>} keys
 * @property {{field: HTMLInputElement, before: string} | null} into
 * @property {number} first
 * @property {number} last
 * @property {boolean} handed
 */

/** Gathers key presses to codes. */
export class KeyPresses {
  /**
   * @param {(keyed: Keyed) => void} onKeyed
   * @param {(text: string) => void} onHeld  a code that is held back, for more of it may come; '' once it is not any more
   */
  constructor(onKeyed, onHeld) {
    this.#onKeyed = onKeyed;
    this.#onHeld = onHeld;
  }

  #onKeyed;
  #onHeld;
  /** @type {Array<{key: string, us: string}>} */
  #keys = [];
  #first = 0;
  #last = 0;
  /** The field that the keys went to, and what it held before. @type {{field: HTMLInputElement, before: string} | null} */
  #into = null;
  /** Digits of an Alt code that is not over. */
  #alt = '';
  #timer = 0;
  #heldTimer = 0;
  /** What the clock ended: its keys, whether it was handed over, and where it went. @type {Cut | null} */
  #cut = null;
  /** Whether the keys begin with a code that was handed over. */
  #goesOn = false;
  /** When a code came in without an Enter. */
  #endedAt = -LATE_END_MS;

  /** @param {KeyboardEvent} event */
  down(event) {
    // A busy computer's clock is behind its keys: what comes after a pause is another code.
    if (this.#keys.length && event.timeStamp - this.#last > QUIET_MS) this.#finish();
    this.#restore(event);
    const digit = altDigit(event);
    if (digit && this.#keys.length) {
      this.#alt += digit;
      this.#last = event.timeStamp;
      this.#wait();
      stop(event);
      return;
    }
    const control = controlOf(event);
    if (event.key === 'Enter' || event.key === 'Tab' || control === '\r' || control === '\n') this.#ends(event);
    else if (control && this.#keys.length && (!this.#into || event.ctrlKey || this.#isFast(SCANNED_MS))) {
      this.#take(event, control, control);
      stop(event);
    } else if (this.#isCharacter(event)) this.#character(event);
    else if (!this.#into && STEP_KEY.test(event.key)) this.tapped(event);
    else if (this.#into && !PART_OF_A_CODE.test(event.key)) this.#forget();
  }

  /** @param {KeyboardEvent} event */
  up(event) {
    if (event.key !== 'Alt' || !this.#alt) return;
    const sent = String.fromCharCode(Number(this.#alt));
    this.#alt = '';
    this.#take(event, sent, sent);
    stop(event);
  }

  /**
   * A person goes on before a code is handed over: it comes first, for what is on the screen may be of another part then.
   * @param {Event} event
   */
  tapped(event) {
    if (this.#into || !this.#isRead()) return;
    stop(event);
    this.#finish();
  }

  /** A bare control character comes as no key that has a name. @param {KeyboardEvent} event */
  press(event) {
    const sent = String.fromCharCode(event.charCode);
    if (sent < ' ') this.#restore(event);
    if (!this.#keys.length || sent >= ' ' || sent === '\r' || sent === '\n') return;
    this.#take(event, sent, sent);
    stop(event);
  }

  /**
   * However long is waited, a busy computer may hand over the rest of a code later, with the moments at which it was typed:
   * what was cut goes on then.
   * @param {KeyboardEvent} event
   */
  #restore(event) {
    const cut = this.#cut;
    if (!cut || this.#keys.length || event.timeStamp - cut.last > QUIET_MS) return;
    const sent = event.type === 'keypress' || event.key === ' ' ? event.key : controlOf(event) || altDigit(event);
    if (!this.#isCharacter(event) && (!sent || '\r\n'.includes(sent))) return;
    this.#keys = cut.keys;
    this.#into = cut.into;
    this.#first = cut.first;
    this.#last = cut.last;
    this.#goesOn = cut.handed;
    this.#cut = null;
  }

  /** @param {KeyboardEvent} event */
  #isCharacter(event) {
    const { key, ctrlKey, altKey, metaKey, repeat } = event;
    if (repeat || event.isComposing || metaKey) return false;
    if ((ctrlKey || altKey) && !event.getModifierState('AltGraph')) return false;
    // A space presses the button that has the focus; no code begins with one.
    if (key === ' ' && !this.#keys.length) return false;
    return key.length === 1 || key === 'Dead';
  }

  /** @param {KeyboardEvent} event */
  #character(event) {
    const { target } = event;
    if (!this.#keys.length) {
      const field = target instanceof HTMLElement ? /** @type {HTMLInputElement | null} */ (target.closest(FIELDS)) : null;
      this.#into = field && { field, before: field.value };
    }
    this.#take(event, event.key.length === 1 ? event.key : '', onUsKeyboard(event));
    if (!this.#into) stop(event);
  }

  /**
   * @param {KeyboardEvent} event
   * @param {string} key
   * @param {string} us
   */
  #take(event, key, us) {
    if (!this.#keys.length) this.#first = event.timeStamp;
    this.#keys.push({ key, us });
    this.#last = event.timeStamp;
    this.#wait();
  }

  /**
   * Keys that come late come in heaps: as late as this one was, the next heap may be.
   * @param {number} late  ms
   */
  #wait(late = this.#lateness()) {
    clearTimeout(this.#timer);
    clearTimeout(this.#heldTimer);
    const due = performance.now() + QUIET_MS + late;
    const atLast = due + MOST_LATE_MS;
    // Where this computer was busy, keys that were pressed meanwhile are still to come: at least those that stand in line.
    // One that is busy all the time is waited for no longer: what comes after it goes on with what was cut.
    const look = (/** @type {number} */ asked) => {
      const now = performance.now();
      const isBusy = now - asked > BUSY_MS && now < atLast;
      this.#timer = isBusy ? setTimeout(look, QUIET_MS, now + QUIET_MS) : setTimeout(() => this.#pause(), 0);
    };
    this.#timer = setTimeout(look, QUIET_MS + late, due);
    if (late >= MAY_GO_ON_MS) this.#heldTimer = setTimeout(() => this.#isRead() && this.#onHeld(this.#text()), QUIET_MS);
  }

  /** @param {KeyboardEvent} event  an Enter or Tab */
  #ends(event) {
    if (this.#keys.length) {
      const person = this.#into !== null && !this.#isRead();
      if (!person) stop(event);
      this.#finish();
    } else if (event.timeStamp - this.#endedAt < LATE_END_MS) stop(event);
    this.#endedAt = -LATE_END_MS;
  }

  /** How late the next keys may be, in ms. */
  #lateness() {
    if (HAS_NO_END.test(this.#text())) return MOST_LATE_MS;
    const open = IS_WHOLE.test(this.#text()) ? 0 : MAY_GO_ON_MS;
    return Math.min(Math.max(performance.now() - this.#last, open), MOST_LATE_MS);
  }

  /** No key has come for a while. */
  #pause() {
    const [keys, into, first, last] = [this.#keys, this.#into, this.#first, this.#last];
    const handed = this.#finish();
    this.#cut = { keys, into, first, last, handed };
  }

  /** Hand the code over; false where it is none. */
  #finish() {
    const text = this.#text();
    const us = this.#keys.map((each) => each.us).join('');
    const how = this.#isFast(SCANNED_MS) || UNMISTAKABLE.test(text) || UNMISTAKABLE.test(us) ? 'scanned' : 'typed';
    const isRead = this.#isRead();
    const into = this.#into;
    const goesOn = this.#goesOn;
    this.#forget();
    if (!isRead) return false;
    this.#endedAt = this.#last;
    if (into) {
      into.field.value = into.before;
      into.field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    }
    this.#onKeyed({ text, us, how, at: this.#last, goesOn });
    return true;
  }

  #forget() {
    clearTimeout(this.#timer);
    clearTimeout(this.#heldTimer);
    this.#onHeld('');
    this.#keys = [];
    this.#into = null;
    this.#alt = '';
    this.#cut = null;
    this.#goesOn = false;
  }

  #text() {
    return this.#keys.map(({ key }) => key).join('');
  }

  /** Whether this is a code for the screen: all that is long enough, in a field only what no person types. */
  #isRead() {
    if (this.#keys.length < FEWEST) return false;
    return !this.#into || this.#isFast(SCANNED_IN_FIELD_MS) || UNMISTAKABLE.test(this.#text());
  }

  /** @param {number} most  ms between two keys on average */
  #isFast(most) {
    return this.#keys.length >= FEWEST && (this.#last - this.#first) / (this.#keys.length - 1) <= most;
  }
}

/** @param {Event} event */
function stop(event) {
  event.preventDefault();
  event.stopPropagation();
}
