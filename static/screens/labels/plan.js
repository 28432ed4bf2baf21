// @ts-check
/**
 * What the server says of a layout while it is being chosen: what comes out, what will be hard to read.
 */

import { ApiError } from '../../api.js';

const PAUSE_MS = 250; // while somebody is typing a measure

/** @typedef {{summary: string, warnings: string[], rule: string, a_page: number, most: number}} Plan */

/** @type {Map<string, {plan: Plan | null, fault: string}>} */
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
 * The plan of a layout; null until the server has answered, after which the screen is drawn again.
 * @param {import('../app.js').Context} ctx
 * @param {string} query
 */
export function planOf(ctx, query) {
  const found = known.get(query) ?? null;
  if (found || query === asked) return found;
  asked = query;
  clearTimeout(timer);
  timer = setTimeout(async () => {
    try {
      const { fault, ...plan } = await ctx.services.sync.api.get(`/api/labels/plan?${query}`);
      known.set(query, { plan: fault ? null : plan, fault });
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      known.set(query, { plan: null, fault: error.sentence });
    }
    ctx.redraw();
  }, PAUSE_MS);
  return null;
}
