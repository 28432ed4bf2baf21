// @ts-check
/**
 * An entry entered anew in its place: a form filled with what is on record, what the change would make of the
 * verdict, and one button that records it.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { textField } from '../frame/field.js';
import { oneOf } from '../frame/one-of.js';
import { SLIP } from '../frame/recorder.js';
import { sentence } from '../frame/sentence.js';
import { codeNote, isCode, isOfCodes, placeCodes } from './right-codes.js';
import { isOfPosition, keepApart, placeAtPositions, placeWalk } from './right-positions.js';

/** @typedef {import('../../core/views.js').EntryField} EntryField */
/** @typedef {import('../../core/views.js').HistoryEntry} HistoryEntry */
/** @typedef {import('../frame/context.js').Context} Context */

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
    const key = textKey(name);
    return textField(ctx, key, words, isCode(name) ? { most: 15, capitals: true, answer: codeNote(ctx, ctx.form[key].trim()) } : { most: 2000 });
  }
  const value = ctx.form.values[name] ?? field.value;
  const set = (/** @type {unknown} */ fresh) => {
    ctx.form.values[name] = fresh;
    keepApart(ctx.form.entry.fields, ctx.form.values, name);
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
          two: !isLong(field),
        })
      : html`<div class=${isLong(field) ? 'choices' : 'choices choices-two'} role="group" aria-label=${words}>
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

/** Whether words to choose from are too long for two beside each other. @param {EntryField} field */
const isLong = ({ name, options }) =>
  isOfPosition(name) || ['result', 'cause', 'why', 'check'].includes(name) || options.some(({ sets }) => sets);

/** The code of a label, which is typed as it stands there: with its hyphen, or without. */
const LABEL = 'code';

/** @param {string} typed */
const asLabel = (typed) => typed.toUpperCase().replace(/[\s-]/g, '');

/** @param {string} name */
const textKey = (name) => `right-${name}`;

/**
 * Set a field, or the one inside another that `vehicle.plate` names.
 * @param {Record<string, any>} data
 * @param {string} name
 * @param {string} value
 */
function place(data, name, value) {
  const [outer, inner] = name.split('.');
  data[outer] = inner ? { ...data[outer], [inner]: value } : value;
}

/**
 * The data that the form comes to; a text that nobody changed stays as it is, also where an older entry lacks it.
 * A scan of another sensor or label was none of this one.
 * @param {Context} ctx
 */
function dataOf(ctx) {
  const { form } = ctx;
  const { entry, values } = form;
  const data = { ...entry.data };
  for (const { name, form: kind, value, options } of /** @type {EntryField[]} */ (entry.fields)) {
    if (isOfCodes(name) || isOfPosition(name)) continue;
    if (kind === 'text' && form[textKey(name)] !== value) place(data, name, name === LABEL ? asLabel(form[textKey(name)]) : form[textKey(name)]);
    else if (name in values) Object.assign(data, options.find((option) => option.value === values[name])?.sets ?? { [name]: values[name] });
  }
  const ofCodes = entry.fields.filter((/** @type {EntryField} */ { name }) => isOfCodes(name));
  if (ofCodes.length) placeCodes(ctx, ofCodes, (name) => form[textKey(name)].trim(), data);
  const ofPositions = entry.fields.filter((/** @type {EntryField} */ { name }) => isOfPosition(name));
  const valueOf = (/** @type {EntryField} */ field) => (field.form === 'text' ? form[textKey(field.name)].trim() : (values[field.name] ?? field.value));
  if (ofPositions.length) placeAtPositions(ofPositions, valueOf, data);
  placeWalk(entry, data);
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
  return { kind: 'put_right', data: { device, seq, entry, reason: SLIP, over: ctx.form.entry.over } };
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
  await ctx.act([draft, ...told.besides], {
    after: () => {
      Object.assign(ctx.form, { told });
      closeForm(ctx);
    },
  });
}
