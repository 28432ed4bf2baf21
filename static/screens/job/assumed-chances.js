// @ts-check
/** One chance with its plain meaning and its default, changed in per cent and set back; how sure a verdict has to be, too. */

import { html, nothing } from 'lit-html';

import { render, say } from '../../words/words.js';
import { textField } from '../frame/field.js';
import { sentence } from '../frame/sentence.js';
import { recordButton } from './record-button.js';

/** @typedef {import('../../core/views.js').AssumptionsView} AssumptionsView */
/** @typedef {import('../../core/views.js').RateView} RateView */

/** What stands for the confidence where a chance has its id. */
export const CONFIDENCE = 'confidence';

/**
 * One chance; a tap opens its field.
 * @param {import('../frame/context.js').Context} ctx
 * @param {RateView} rate
 */
export function chanceRow(ctx, rate) {
  const { form } = ctx;
  const isOpen = form.open === rate.id;
  const told = html`<span class="list-main">
      <span class="list-title">${rate.words}</span>
      <span class="list-note"
        >${rate.changed ? sentence(say('job-assumptions-changed', { value: rate.default_words })) : rate.source}</span
      >
    </span>
    <span class="list-end assumed-value">${sentence(rate.value_words)}</span>`;
  if (ctx.data.told.closed) return html`<li class="list-row">${told}</li>`;
  return html`<li>
    <button
      class="list-row"
      type="button"
      aria-expanded=${isOpen}
      @click=${() => {
        form.open = isOpen ? '' : rate.id;
        delete form.percent;
        delete form.asked;
        ctx.redraw();
      }}
    >
      ${told}
    </button>
    ${isOpen ? editor(ctx, rate) : nothing}
  </li>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {RateView} rate
 */
function editor(ctx, rate) {
  const { form } = ctx;
  const set = () => {
    const ppm = partsPerMillion(form.percent ?? '');
    form.asked = ppm === null;
    if (ppm === null) return ctx.redraw();
    return ctx.act([changed(ctx.data.told, rate.id, ppm)], { after: ctx.forget });
  };
  return html`<div class="card screen-stack take-back">
    ${textField(ctx, 'percent', say('job-assumptions-percent'), {
      most: 9,
      initial: inPercent(rate.value_ppm),
      fault: form.asked ? say('job-assumptions-percent-fault') : '',
    })}
    <div class="card-actions">
      <button class="small-button" type="button" ?disabled=${ctx.busy} @click=${set}>${say('job-assumptions-set')}</button>
      ${rate.changed ? recordButton(ctx, say('job-assumptions-reset', { value: rate.default_words }), rate.reset) : nothing}
    </div>
  </div>`;
}

/** As it would be typed, to the last digit. @param {number} ppm */
function inPercent(ppm) {
  let [units, places] = [ppm, 4];
  for (; places && units % 10 === 0; places -= 1) units /= 10;
  return render({ figure: 'decimal', of: [units, places] });
}

/**
 * The fact that sets one chance and keeps the others.
 * @param {AssumptionsView} told
 * @param {string} id
 * @param {number} ppm
 */
function changed({ rates_ppm: rates }, id, ppm) {
  const data = id === CONFIDENCE ? { rates_ppm: rates, confidence_ppm: ppm } : { rates_ppm: { ...rates, [id]: ppm }, confidence_ppm: 0 };
  return { kind: 'rates_set', data };
}

/**
 * @param {string} typed
 * @returns {number | null}  parts per million, null when it is no percentage
 */
function partsPerMillion(typed) {
  const plain = typed.replace('%', '').replace(',', '.').trim();
  return /^\d{1,3}(\.\d{1,4})?$/.test(plain) ? Math.round(Number(plain) * 10_000) : null;
}
