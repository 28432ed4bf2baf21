// @ts-check
/**
 * Who prints: the server, or, where there is none, this phone. The screens of labels ask either the same way.
 */

import { HAS_SERVER } from '../../place.js';
import { phonePress } from './phone-press.js';
import { serverPress } from './server-press.js';

/**
 * @typedef {{fault: string, may_force?: boolean, summary?: string, warnings?: string[], rule?: string, a_page?: number, most?: number}} Planned
 * @typedef {{summary: string, warnings: string[], rule: string, a_page: number, most: number, [more: string]: any}} Plan
 * @typedef {Record<string, string>} Options  a layout as typed, `distance`, and `force` to print what nobody will read
 *
 * @typedef {object} Press
 * @property {readonly (readonly [string, string])[]} formats  of files to choose from, each with its message; none to ask about
 * @property {(services: import('../frame/context.js').Services) => Promise<any>} batches
 * @property {(services: import('../frame/context.js').Services, batch: number) => Promise<any>} batch
 * @property {(services: import('../frame/context.js').Services, options: Options) => Promise<any>} plan
 * @property {(options: Options, plan: Plan) => {one: unknown, page: unknown}} preview
 * @property {(ctx: import('../frame/context.js').Context, count: number, options: Options, format: string)
 *   => Promise<{batch?: number, problem?: string}>} make   new labels, on record before they are shown
 * @property {(ctx: import('../frame/context.js').Context) => Promise<{problem?: string}>} again
 *   what a batch has on no sensor, once more; `ctx.data` is the batch
 * @property {(ctx: import('../frame/context.js').Context, codes: string[], reason: string)
 *   => Promise<{problem?: string}>} takeOut  out of use, with none named all that are on paper
 * @property {(ctx: import('../frame/context.js').Context, batch: number)
 *   => {told: unknown, main: {words: string, run: () => void} | null}} made  what was just made of a batch
 */

/** @type {Press} */
export const press = HAS_SERVER ? serverPress : phonePress;
