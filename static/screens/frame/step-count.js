// @ts-check
/**
 * Where a step stands among its like: 'Exchange · 3 of 6'.
 */

import { html, nothing } from 'lit-html';
import { say } from '../../words/words.js';

/** @param {{now: number, total: number, word?: string} | null} progress */
export function stepCount(progress) {
  if (!progress) return nothing;
  const { now, total, word } = progress;
  return html`<p class="kicker">${word ? `${word} · ` : ''}${say('frame-step-count', { now, total })}</p>`;
}
