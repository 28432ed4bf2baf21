// @ts-check
/**
 * Small questions to the core while something is being typed: the answer is there at the next drawing.
 */

const MOST_KEPT = 200;

/** @type {Map<string, {value: any, fault: import('../../core/client.js').CoreError | null} | null>} */
const answers = new Map();

/**
 * What the core says to a question; null until it has answered, after which the screen is drawn again.
 * @param {import('./context.js').Context} ctx
 * @param {string} op
 * @param {Record<string, unknown>} args
 */
export function ask(ctx, op, args) {
  const { core } = ctx.services;
  const key = JSON.stringify([op, args]);
  if (!answers.has(key) && core.available) {
    if (answers.size >= MOST_KEPT) answers.clear();
    answers.set(key, null);
    core
      .call(op, args)
      .then(
        (value) => answers.set(key, { value, fault: null }),
        (fault) => answers.set(key, { value: null, fault }),
      )
      .then(() => ctx.redraw());
  }
  return answers.get(key) ?? null;
}
