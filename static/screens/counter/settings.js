// @ts-check
/**
 * What this counter has beside the phone: how its hand scanner types.
 */

import { html } from 'lit-html';

import { textField } from '../frame/field.js';
import { PREFIX_SETTING } from './keys-read.js';
import { say } from '../../words/words.js';

/** @param {import('../frame/context.js').Services} services */
export async function counterSettings({ device }) {
  return { prefix: /** @type {string} */ ((await device.setting(PREFIX_SETTING)) ?? '') };
}

/** @param {import('../frame/context.js').Context} ctx */
export function settingsCard(ctx) {
  const keep = async () => {
    await ctx.services.device.saveSetting(PREFIX_SETTING, ctx.form.prefix ?? ctx.data.settings.prefix);
    delete ctx.form.prefix;
    await ctx.reload();
  };
  return html`<details class="more">
    <summary>${say('counter-hand-scanner')}</summary>
    <p class="soft">${say('counter-hand-scanner-is')}</p>
    ${textField(ctx, 'prefix', say('counter-prefix'), { note: say('counter-prefix-note'), most: 10, initial: ctx.data.settings.prefix })}
    <button class="small-button" type="button" @click=${keep}>${say('counter-prefix-keep')}</button>
  </details>`;
}
