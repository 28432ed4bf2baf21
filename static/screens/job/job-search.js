// @ts-check
/**
 * What is above a list of jobs that is too long to look through: a field to search in, and how they stand.
 */

import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { keepPlace, placeKept } from '../frame/place-kept.js';
import { PAGE } from './job-data.js';

/** So many jobs can be seen without a search. */
const FEW = 5;

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../../core/views.js').JobListView['counts']} counts
 */
export function jobSearch(ctx, counts) {
  const { text = '', stands = '' } = placeKept();
  if (!ctx.services.core.available) return nothing;
  if (!text && !stands && counts.open + counts.waiting + counts.closed <= FEW) return nothing;
  return html`<search class="job-search">
    <label class="field-name" for="job-search">${say('job-search')}</label>
    <div class="field job-search-field">
      <input
        id="job-search"
        type="text"
        enterkeyhint="search"
        maxlength="100"
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        placeholder=${say('job-search-by')}
        .value=${live(text)}
        @input=${(/** @type {{target: HTMLInputElement}} */ { target }) => ask(ctx, { text: target.value })}
        @keydown=${(/** @type {{key: string, target: HTMLInputElement}} */ { key, target }) => key === 'Enter' && target.blur()}
      />
      ${text
        ? html`<button class="job-search-clear" type="button" aria-label=${say('job-search-clear')} @click=${() => clear(ctx)}>
            ${icon('cross')}
          </button>`
        : nothing}
    </div>
    <div class="job-filter" role="group" aria-label=${say('job-search-stands')}>
      ${['', 'open', 'waiting', 'closed'].map((each) => filter(ctx, each, stands, counts))}
    </div>
  </search>`;
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} which
 * @param {string} chosen
 * @param {any} counts
 */
function filter(ctx, which, chosen, counts) {
  const count = which ? counts[which] : counts.open + counts.waiting + counts.closed;
  return html`<button class="filter-button" type="button" aria-pressed=${which === chosen} @click=${() => ask(ctx, { stands: which })}>
    <span class="filter-count">${count}</span> <span>${say('job-search-filter', { which: which || 'all' })}</span>
  </button>`;
}

/**
 * Show another part of the list.
 * @param {import('../frame/context.js').Context} ctx
 * @param {import('../frame/place-kept.js').Place} change
 */
export function ask(ctx, change) {
  keepPlace({ most: PAGE, ...change });
  // Another list begins at its top; further rows stand below those that are there.
  if (!change.most) document.querySelector('main')?.scrollTo(0, 0);
  ctx.reload();
}

/** @param {import('../frame/context.js').Context} ctx */
function clear(ctx) {
  ask(ctx, { text: '' });
  document.getElementById('job-search')?.focus();
}
