// @ts-check
/**
 * What this counter has beside the phone: how its hand scanner types, and what prints its slips.
 */

import { html, nothing } from 'lit-html';

import { textField } from '../frame/field.js';
import { SHOP_SETTING, shopField } from '../frame/shop.js';
import { PREFIX_SETTING } from './keys-read.js';
import { SLIP_SETTING } from './slips.js';
import { say } from '../../words/words.js';

/** @param {import('../frame/context.js').Services} services */
export async function counterSettings({ device }) {
  const kept = await Promise.all([PREFIX_SETTING, SLIP_SETTING, SHOP_SETTING].map((each) => device.setting(each)));
  const [prefix, slip, shop] = kept.map((each) => /** @type {string} */ (each ?? ''));
  return { prefix, slip, shop };
}

/** @param {import('../frame/context.js').Context} ctx */
export function settingsCard(ctx) {
  const keep = async () => {
    await ctx.services.device.saveSetting(PREFIX_SETTING, ctx.form.prefix ?? ctx.data.settings.prefix);
    delete ctx.form.prefix;
    await ctx.reload();
  };
  const choose = async (/** @type {string} */ slip) => {
    await ctx.services.device.saveSetting(SLIP_SETTING, slip);
    await ctx.reload();
  };
  const named = async () => {
    await ctx.services.device.saveSetting(SHOP_SETTING, (ctx.form.shop ?? ctx.data.settings.shop).trim());
    delete ctx.form.shop;
    await ctx.reload();
  };
  return html`<details class="more">
      <summary>${say('counter-slip')}</summary>
      <div class="choices" role="radiogroup" aria-label=${say('counter-slip')}>
        ${['', 'printer', 'paper', 'print'].map(
          (slip) => html`<label class="choice">
            <input type="radio" name="slip" .checked=${ctx.data.settings.slip === slip} @change=${() => choose(slip)} />
            <span class="choice-word">${say('counter-slip-way', { way: slip || 'none' })}</span>
          </label>`,
        )}
      </div>
      ${ctx.data.settings.slip ? html`<div @change=${named}>${shopField(ctx, ctx.data.settings.shop)}</div>` : nothing}
    </details>
    <details class="more">
    <summary>${say('counter-hand-scanner')}</summary>
    <p class="soft">${say('counter-hand-scanner-is')}</p>
    ${textField(ctx, 'prefix', say('counter-prefix'), { note: say('counter-prefix-note'), most: 10, initial: ctx.data.settings.prefix })}
    <button class="small-button" type="button" @click=${keep}>${say('counter-prefix-keep')}</button>
  </details>`;
}
