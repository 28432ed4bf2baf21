// @ts-check
/**
 * Labels that the server prints: it draws the codes, keeps the batches and makes the files. What a press is,
 * press.js says.
 */

import { html, nothing } from 'lit-html';

import { apiAddress, ApiError } from '../../sync/request.js';
import { say } from '../../words/words.js';
import { filesMade, keepFiles } from './files.js';

/** @type {import('./press.js').Press} */
export const serverPress = {
  formats: [
    ['pdf', 'labels-format-pdf'],
    ['svg', 'labels-format-svg'],
  ],

  batches: ({ sync }) => sync.api.get('/api/labels'),

  batch: ({ sync }, batch) => sync.api.get(`/api/labels/${batch}`),

  async plan({ sync }, options) {
    const query = new URLSearchParams(options).toString();
    try {
      return await sync.api.get(`/api/labels/plan?${query}`);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      return { fault: error.sentence };
    }
  },

  preview(options, plan) {
    const query = new URLSearchParams(options).toString();
    const shown = (/** @type {string} */ more, /** @type {string} */ words) =>
      html`<img src=${apiAddress(`/api/labels/preview.svg?${query}${more}`)} alt=${words} />`;
    return {
      one: shown('&one=1', say('labels-preview-one')),
      page: plan.a_page > 1 ? shown('', say('labels-preview-sheet', { count: plan.a_page })) : nothing,
    };
  },

  async make(ctx, count, { distance, ...layout }, format) {
    const answer = await asked(ctx, '/api/labels', { ...layout, count, distance: Number(distance), format });
    if (answer.problem) return answer;
    keepFiles(answer);
    return { batch: answer.batch };
  },

  async again(ctx) {
    const answer = await asked(ctx, `/api/labels/${ctx.data.id}/again`, { format: 'pdf' });
    if (answer.problem) return answer;
    keepFiles(answer);
    return {};
  },

  takeOut: (ctx, codes, reason) => asked(ctx, `/api/labels/${ctx.data.id}/void`, { codes, reason }),

  made: (ctx, batch) => filesMade(batch),
};

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} path
 * @param {object} body
 */
async function asked(ctx, path, body) {
  const { api } = ctx.services.sync;
  try {
    await api.session();
    return await api.post(path, body);
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    return { problem: error.sentence };
  }
}
