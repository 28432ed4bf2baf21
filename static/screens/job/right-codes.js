// @ts-check
/**
 * The trouble codes of a test that is entered anew, and what was said that they mean.
 */

import { html, nothing } from 'lit-html';

import { ask } from '../frame/ask.js';
import { sentence } from '../frame/sentence.js';

/** @typedef {import('../../core/views.js').EntryField} EntryField */
/** @typedef {import('../frame/context.js').Context} Context */

/** How the fields of a test's codes begin: a position, or the code that something was said of. */
const CODES = 'codes.';
const MEANS = 'means.';

/** @param {string} name */
export const isCode = (name) => name.startsWith(CODES);

/** @param {string} name */
export const isOfCodes = (name) => isCode(name) || name.startsWith(MEANS);

/**
 * What the core reads a code as; null until it has answered.
 * @param {Context} ctx
 * @param {string} code
 * @returns {import('../../core/views.js').CodeTyped | null}
 */
function read(ctx, code) {
  const open_list = Boolean(ctx.form.entry.data.open_list);
  return ask(ctx, 'code_typed', { job: ctx.data.id, code, failure_type: '', open_list })?.value ?? null;
}

/**
 * What the core says of a code as it is typed.
 * @param {Context} ctx
 * @param {string} code
 */
export function codeNote(ctx, code) {
  const answer = code && read(ctx, code);
  return answer ? html`<p class=${answer.ok ? 'field-note' : 'field-fault'} role="status">${sentence(answer.sentence)}</p>` : nothing;
}

/**
 * Enter the codes of a test anew; what was said of a code goes with it.
 * @param {Context} ctx
 * @param {EntryField[]} fields  the codes and meanings of the entry
 * @param {(name: string) => string} typed
 * @param {Record<string, any>} data
 */
export function placeCodes(ctx, fields, typed, data) {
  if (fields.every(({ name, value }) => typed(name) === value)) return;
  const renamed = new Map();
  const codes = [];
  for (const { name, value } of fields.filter((field) => isCode(field.name))) {
    const position = name.slice(CODES.length);
    const before = data.codes.find((/** @type {{position: string}} */ each) => each.position === position);
    if (typed(name) === value && before) codes.push(before);
    else if (typed(name)) {
      const { code, failure_type } = read(ctx, typed(name)) ?? { code: typed(name).toUpperCase(), failure_type: '' };
      codes.push({ position, code, failure_type });
    }
    if (before) renamed.set(before.code, codes.at(-1)?.position === position ? codes.at(-1).code : '');
  }
  const means = new Map();
  for (const { code, means: meant } of data.means ?? []) {
    const now = codes.some((each) => each.code === code) ? code : (renamed.get(code) ?? code);
    if (now && typed(MEANS + code) && !means.has(now)) means.set(now, typed(MEANS + code));
  }
  Object.assign(data, { codes, open_list: data.open_list ?? false });
  if (data.means) data.means = [...means].map(([code, meant]) => ({ code, means: meant }));
}
