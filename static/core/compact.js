// @ts-check
/**
 * Writes values for the core so that each text stands there once: Python on the phone reads that several times as
 * fast as plain JSON. `server/core/log/compact.py` is the other side, and says what the form is.
 */

/** What stands first in a list: it has nothing but scalars, or lists and objects too. */
const SCALARS = -1;
const MIXED = -2;

/**
 * @typedef {number | any[]} Node
 * @typedef {{scalars: any[], shapes: [number[], number[]][], value: Node}} Compact
 */

/**
 * The text of a value, as the core takes it under `compact`.
 * @param {unknown} value  what JSON can hold
 * @returns {string}
 */
export function compactText(value) {
  const writer = new Writer();
  const node = writer.node(value);
  return JSON.stringify({ scalars: writer.scalars, shapes: writer.shapes, value: node });
}

/** What was met in one value so far. */
class Writer {
  /** @type {any[]} */
  scalars = [];
  /** @type {[number[], number[]][]} */
  shapes = [];
  /** @type {Map<any, number>} */
  #places = new Map();
  /** @type {Map<string, number>} */
  #shapePlaces = new Map();

  /**
   * @param {any} value
   * @returns {Node}
   */
  node(value) {
    if (!isNested(value)) return this.#place(value);
    if (!Array.isArray(value)) return this.#object(value);
    return [value.some(isNested) ? MIXED : SCALARS, ...value.map((item) => this.node(item))];
  }

  /**
   * @param {Record<string, any>} value
   * @returns {Node}
   */
  #object(value) {
    const keys = Object.keys(value).filter((key) => value[key] !== undefined);
    const plain = keys.filter((key) => !isNested(value[key]));
    const nested = keys.filter((key) => isNested(value[key]));
    const shape = this.#shape(plain, nested);
    return [shape, ...plain.concat(nested).map((key) => this.node(value[key]))];
  }

  /**
   * @param {string[]} plain
   * @param {string[]} nested
   */
  #shape(plain, nested) {
    /** @type {[number[], number[]]} */
    const shape = [plain.map((key) => this.#place(key)), nested.map((key) => this.#place(key))];
    const name = shape.join('|');
    let place = this.#shapePlaces.get(name);
    if (place === undefined) {
      place = this.shapes.push(shape) - 1;
      this.#shapePlaces.set(name, place);
    }
    return place;
  }

  /** @param {any} scalar */
  #place(scalar) {
    let place = this.#places.get(scalar);
    if (place === undefined) {
      place = this.scalars.push(scalar) - 1;
      this.#places.set(scalar, place);
    }
    return place;
  }
}

/** @param {any} value */
function isNested(value) {
  return typeof value === 'object' && value !== null;
}
