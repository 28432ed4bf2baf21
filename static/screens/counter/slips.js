// @ts-check
/**
 * The slip that goes with a decision, where this counter wants one: from the printer at the server, or on paper from here.
 * The decision is on record before; a printer that is off neither loses nor delays one.
 */

import { html, nothing } from 'lit-html';

import { mark } from '../../shapes/marks.js';
import { SHOP_SETTING } from '../frame/shop.js';
import { printAtOnce } from '../frame/print-at-once.js';
import { routeOf, to } from '../frame/router.js';
import { ago } from '../frame/when.js';
import { say } from '../../words/words.js';

/**
 * @typedef {{heading: string, shown: string, at: number, begun: boolean}} Aside  a slip that waits for a person's word
 */

/**
 * The setting that says how slips are printed: '' not at all, by the 'printer' at the server, or here: shown as 'paper' with
 * a button that prints it, or at once ('print').
 */
export const SLIP_SETTING = 'counter.slip';

/**
 * Have the slip of the decision made last printed, if the counter wants it.
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} unit
 */
export async function slipOf(ctx, unit) {
  const wanted = await ctx.services.device.setting(SLIP_SETTING);
  if (wanted === 'print') {
    const sheet = routeOf({ pathname: location.pathname, hash: to.unitSheet(unit, 'slip') }).path;
    // Whoever has gone on meanwhile stays there.
    printAtOnce(unit, sheet, () => routeOf(location).path === sheet && ctx.go(to.jobs()));
  }
  if (wanted === 'paper' || wanted === 'print') ctx.go(to.unitSheet(unit, 'slip'));
  if (wanted === 'printer') await onPrinter(ctx, unit);
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} unit
 */
export async function onPrinter({ services: { sync, device }, form, redraw }, unit) {
  let state = 'failed';
  try {
    // The server makes the slip from what is on record there.
    await sync.now();
    const shop = (await device.setting(SHOP_SETTING)) ?? '';
    const { trouble } = await sync.api.post('/api/slips', { unit, shop });
    state = trouble ? 'waits' : 'sent';
  } catch {
    // Said by the state; the slip can be asked for again.
  }
  if (form.done?.unit !== unit) return;
  form.done.slip = state;
  redraw();
}

/** Which loads of the first screen have been asked for. @type {WeakSet<object>} */
const askedFor = new WeakSet();

/**
 * Slips that the printer at the server does not print by itself any more, and the two ways on.
 * @param {import('../frame/context.js').Context} ctx
 */
export function slipsAside({ services: { sync }, data, form, redraw }) {
  if (data.settings.slip !== 'printer') return nothing;
  const hear = (/** @type {Promise<any>} */ answer) =>
    answer.then(({ aside }) => {
      form.slipsAside = aside;
      redraw();
    }, () => undefined); // Without the server nobody knows; it is asked again with the next load.
  if (!askedFor.has(data)) {
    askedFor.add(data);
    void hear(sync.api.get('/api/slips'));
  }
  /** @type {Aside[]} */
  const aside = form.slipsAside ?? [];
  if (!aside.length) return nothing;
  const settle = (/** @type {boolean} */ print) => hear(sync.api.post('/api/slips/aside', { print }));
  return html`<section class="panel panel-ask">
    <h2>${say('counter-slips-aside', { count: aside.length })}</h2>
    <ul class="check-list">
      ${aside.map(
        (each) => html`<li class="check-line">
          ${mark('untested', { word: say('counter-slip-of', { heading: each.heading, code: each.shown, ago: ago(each.at) }) })}
          ${each.begun ? html`<span class="check-sentence">${say('counter-slip-begun')}</span>` : nothing}
        </li>`,
      )}
    </ul>
    <div class="answers">
      <button class="answer" type="button" @click=${() => settle(true)}><span>${say('counter-slips-print')}</span></button>
      <button class="answer" type="button" @click=${() => settle(false)}><span>${say('counter-slips-leave')}</span></button>
    </div>
  </section>`;
}
