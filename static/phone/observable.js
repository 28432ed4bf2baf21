// @ts-check
/**
 * A value that tells whoever listens when it changes.
 *
 * Sync status, core trouble and 'new version ready' are each one of these, so that a screen can draw
 * what is true now and need not poll.
 */

/**
 * @template T
 * @typedef {object} Observable
 * @property {T} value                                   what is true now
 * @property {(next: T) => void} set                     change it; listeners hear of it at once
 * @property {(listener: (value: T) => void) => () => void} subscribe
 *     calls `listener` now and at each change; returns the function that ends this
 */

/**
 * Make an observable.
 * @template T
 * @param {T} initial
 * @returns {Observable<T>}
 */
export function observable(initial) {
  let value = initial;
  /** @type {Set<(value: T) => void>} */
  const listeners = new Set();
  return {
    get value() {
      return value;
    },
    set(next) {
      value = next;
      for (const listener of [...listeners]) listener(value);
    },
    subscribe(listener) {
      listeners.add(listener);
      listener(value);
      return () => listeners.delete(listener);
    },
  };
}
