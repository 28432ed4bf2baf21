// @ts-check
/** The name of the shop, which stands at the head of everything that is printed. */

import { textField } from './field.js';
import { say } from '../../words/words.js';

/** The setting of this phone that keeps it. */
export const SHOP_SETTING = 'paper.shop';

/**
 * @param {import('./context.js').Context} ctx
 * @param {string} initial
 */
export const shopField = (ctx, initial) =>
  textField(ctx, 'shop', say('paper-shop-name'), { initial, most: 80, autocomplete: 'organization' });
