// @ts-check
/**
 * What comes out of a layout while it is being chosen, and what will be hard to read.
 */

import { press } from './press.js';

const PAUSE_MS = 250; // while somebody is typing a measure

/** @typedef {import('./press.js').Plan} Plan */

/** @type {Map<string, {plan: Plan | null, fault: string, mayForce: boolean}>} */
const known = new Map();
let asked = '';
/** @type {ReturnType<typeof setTimeout> | undefined} */
let timer;

/** Ask afresh: what could not be reached before may be there by now. */
export function forgetPlans() {
  known.clear();
  asked = '';
}

/**
 * The plan of a layout; null until it is known, after which the screen is drawn again.
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('./press.js').Options} options
 */
export function planOf(ctx, options) {
  const query = JSON.stringify(options);
  const found = known.get(query) ?? null;
  if (found || query === asked) return found;
  asked = query;
  clearTimeout(timer);
  timer = setTimeout(async () => {
    const { fault, may_force: mayForce = false, ...plan } = await press.plan(ctx.services, options);
    known.set(query, { plan: fault ? null : plan, fault, mayForce });
    ctx.redraw();
  }, PAUSE_MS);
  return null;
}
