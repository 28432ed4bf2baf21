// @ts-check
/**
 * The slip that goes with a decision, where this counter wants one: from the printer at the server, or on paper from here.
 * The decision is on record before; a printer that is off neither loses nor delays one.
 */

import { to } from '../frame/router.js';

/** The setting that says how slips are printed: '' not at all, 'printer' or 'paper'. */
export const SLIP_SETTING = 'counter.slip';

/**
 * Have the slip of the decision made last printed, if the counter wants it.
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} unit
 */
export async function slipOf(ctx, unit) {
  const wanted = await ctx.services.device.setting(SLIP_SETTING);
  if (wanted === 'paper') ctx.go(to.unitSheet(unit, 'slip'));
  if (wanted === 'printer') await onPrinter(ctx, unit);
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} unit
 */
export async function onPrinter({ services: { sync }, form, redraw }, unit) {
  let state = 'failed';
  try {
    // The server makes the slip from what is on record there.
    await sync.now();
    const { trouble } = await sync.api.post('/api/slips', { unit });
    state = trouble ? 'waits' : 'sent';
  } catch {
    // Said by the state; the slip can be asked for again.
  }
  if (form.done?.unit !== unit) return;
  form.done.slip = state;
  redraw();
}
