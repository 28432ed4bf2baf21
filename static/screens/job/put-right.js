// @ts-check
/**
 * An entry entered anew in its place: a form filled with what is on record, what the change would make of the
 * verdict, and one button that records it.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { ask } from '../frame/ask.js';
import { textField } from '../frame/field.js';
import { oneOf } from '../frame/one-of.js';
import { SLIP } from '../frame/recorder.js';
import { sentence } from '../frame/sentence.js';

/** @typedef {import('../../core/views.js').EntryField} EntryField */
/** @typedef {import('../../core/views.js').HistoryEntry} HistoryEntry */
/** @typedef {import('../frame/context.js').Context} Context */

/** How the fields of a test's codes begin: a position, or the code that something was said of. */
const CODES = 'codes.';
const MEANS = 'means.';

/** @param {string} name */
const isOfCodes = (name) => name.startsWith(CODES) || name.startsWith(MEANS);

/**
 * Open the form of an entry, filled with what is on record.
 * @param {Context} ctx
 * @param {HistoryEntry} entry
 */
export async function openForm(ctx, { device, seq }) {
  fill(ctx.form, `${device}/${seq}`, await ctx.services.core.call('entry', { job: ctx.data.id, device, seq }));
  ctx.redraw();
}

/** @param {Context['form']} form @param {string} righting  which entry @param {import('../../core/views.js').EntryView} asked */
export function fill(form, righting, asked) {
  const typed = asked.fields.filter(({ form }) => form === 'text').map(({ name, value }) => [textKey(name), value]);
  Object.assign(form, { righting, entry: asked, values: {}, would: null, told: null }, Object.fromEntries(typed));
}

/** @param {Context} ctx */
export function closeForm(ctx) {
  Object.assign(ctx.form, { righting: '', entry: null, values: {}, would: null });
  ctx.redraw();
}

/**
 * @param {Context} ctx
 * @param {HistoryEntry} entry
 */
export function rightForm(ctx, entry) {
  const { form, busy } = ctx;
  const changed = JSON.stringify(dataOf(ctx)) !== JSON.stringify(form.entry.data);
  return html`<div class="card screen-stack put-right">
    <p class="field-note">${say('job-right-note')}</p>
    ${form.entry.fields.map((/** @type {EntryField} */ field) => control(ctx, entry, field))}
    ${form.would ? would(form.would) : nothing}
    <div class="card-actions">
      ${form.would && !form.would.refusal
        ? html`<button class="small-button" type="button" data-do="right" ?disabled=${busy} @click=${() => save(ctx, entry)}>
            ${icon('tick')} ${say('job-right-save')}
          </button>`
        : html`<button class="small-button" type="button" data-do="look" ?disabled=${!changed || busy} @click=${() => look(ctx, entry)}>
            ${say('job-right-look')}
          </button>`}
      <button class="link-button" type="button" @click=${() => closeForm(ctx)}>${say('job-right-leave')}</button>
    </div>
  </div>`;
}

/**
 * What a correction makes of the verdict, and which later entries it leaves.
 * @param {import('../../core/views.js').RightedView} told
 */
export function would({ refusal, sentence: words, unfit }) {
  if (refusal) {
    return html`<div class="panel panel-stop" role="alert">
      <h3>${sentence(refusal.title)}</h3>
      <p>${sentence(refusal.sentence)}</p>
      <p>${sentence(refusal.do)}</p>
    </div>`;
  }
  return html`<div class="panel" role="status" data-told="changes">
    <p>${sentence(words)}</p>
    ${unfit.length
      ? html`<p>${say('job-right-unfit')}</p>
          <ul>
            ${unfit.map((entry) => html`<li>${sentence(entry.sentence)}</li>`)}
          </ul>`
      : nothing}
  </div>`;
}

/**
 * @param {Context} ctx
 * @param {HistoryEntry} entry
 * @param {EntryField} field
 */
function control(ctx, entry, field) {
  const { name, words, form, options } = field;
  if (form === 'text') {
    return textField(ctx, textKey(name), words, name.startsWith(CODES) ? { most: 15, capitals: true, answer: codeNote(ctx, name) } : { most: 2000 });
  }
  const value = ctx.form.values[name] ?? field.value;
  const set = (/** @type {unknown} */ fresh) => {
    ctx.form.values[name] = fresh;
    ctx.form.would = null;
    ctx.redraw();
  };
  const list =
    form === 'one'
      ? oneOf({
          name: `${name}-${entry.seq}`,
          label: words,
          options: options.map((option, place) => ({ id: String(place), words: option.words })),
          chosen: String(options.findIndex((option) => option.value === value)),
          pick: (place) => set(options[Number(place)].value),
          two: true,
        })
      : html`<div class="choices choices-two" role="group" aria-label=${words}>
          ${options.map(
            (option) => html`<label class="choice">
              <input
                type="checkbox"
                .checked=${value.includes(option.value)}
                @change=${() => set(flipped(options, value, option.value))}
              />
              <span class="choice-word">${sentence(option.words)}</span>
            </label>`,
          )}
        </div>`;
  return html`<div class="field"><p class="field-name">${words}</p>${list}</div>`;
}

/**
 * The values chosen of a list, in its order, with one more or one less.
 * @param {EntryField['options']} options
 * @param {unknown[]} chosen
 * @param {unknown} value
 */
function flipped(options, chosen, value) {
  return options
    .map((option) => option.value)
    .filter((each) => (each === value ? !chosen.includes(each) : chosen.includes(each)));
}

/**
 * What the core says of a code as it is typed.
 * @param {Context} ctx
 * @param {string} name
 */
function codeNote(ctx, name) {
  const code = ctx.form[textKey(name)].trim();
  const open_list = Boolean(ctx.form.entry.data.open_list);
  const answer = code && ask(ctx, 'code_typed', { job: ctx.data.id, code, failure_type: '', open_list })?.value;
  return answer ? html`<p class=${answer.ok ? 'field-note' : 'field-fault'} role="status">${sentence(answer.sentence)}</p>` : nothing;
}

/**
 * Enter the codes of a test anew; what was said of a code goes with it.
 * @param {Context['form']} form
 * @param {EntryField[]} fields  the codes and meanings of the entry
 * @param {Record<string, any>} data
 */
function placeCodes(form, fields, data) {
  const typed = (/** @type {string} */ name) => form[textKey(name)].trim();
  if (fields.every(({ name, value }) => typed(name) === value)) return;
  const renamed = new Map();
  const codes = [];
  for (const { name, value } of fields.filter((field) => field.name.startsWith(CODES))) {
    const position = name.slice(CODES.length);
    const before = data.codes.find((/** @type {{position: string}} */ each) => each.position === position);
    const [code, failure_type = ''] = typed(name).toUpperCase().split('-');
    if (typed(name) === value && before) codes.push(before);
    else if (typed(name)) codes.push({ position, code, failure_type });
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

/** @param {string} name */
const textKey = (name) => `right-${name}`;

/**
 * Set a field, or the one inside another that `vehicle.plate` names; what older entries lack stays out while empty.
 * @param {Record<string, any>} data
 * @param {string} name
 * @param {string} value
 */
function place(data, name, value) {
  const [outer, inner] = name.split('.');
  if (!inner) data[outer] = value;
  else if (value !== (data[outer][inner] ?? '')) data[outer] = { ...data[outer], [inner]: value };
}

/**
 * The data that the form comes to. A scan of another sensor or label was none of this one.
 * @param {Context} ctx
 */
function dataOf({ form }) {
  const { entry, values } = form;
  const data = { ...entry.data };
  for (const { name, form: kind } of entry.fields) {
    if (isOfCodes(name)) continue;
    if (kind === 'text') place(data, name, form[textKey(name)]);
    else if (name in values) data[name] = values[name];
  }
  const ofCodes = entry.fields.filter((/** @type {EntryField} */ { name }) => isOfCodes(name));
  if (ofCodes.length) placeCodes(form, ofCodes, data);
  const other = ['unit', 'code'].some((name) => data[name] !== entry.data[name]);
  if (other && 'how' in data) data.how = 'tapped';
  return data;
}

/**
 * @param {Context} ctx
 * @param {HistoryEntry} entry
 */
function draftOf(ctx, { device, seq }) {
  const entry = { kind: ctx.form.entry.kind, data: dataOf(ctx) };
  return { kind: 'put_right', data: { device, seq, entry, reason: SLIP } };
}

/**
 * Have the core say what the change would make of the job.
 * @param {Context} ctx
 * @param {HistoryEntry} entry
 */
async function look(ctx, entry) {
  const event = { ...draftOf(ctx, entry), job: ctx.data.id };
  ctx.form.looked = JSON.stringify(event.data.entry.data);
  ctx.form.would = await ctx.services.core.call('righted', { event });
  ctx.redraw();
}

/**
 * @param {Context} ctx
 * @param {HistoryEntry} entry
 */
async function save(ctx, entry) {
  const draft = draftOf(ctx, entry);
  // What was typed after the look is looked at first.
  if (JSON.stringify(draft.data.entry.data) !== ctx.form.looked) return look(ctx, entry);
  const told = ctx.form.would;
  await ctx.act([draft], {
    after: () => {
      Object.assign(ctx.form, { told });
      closeForm(ctx);
    },
  });
}
