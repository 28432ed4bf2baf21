// @ts-check
/**
 * The reminder to save the file: silent while there is nothing to lose, then a line, then a panel that grows with
 * what is at stake (alone/stake.js). On the list of jobs and on a job that was just closed; never a dialog, never
 * in the middle of a step.
 */

import { html, nothing } from 'lit-html';

import { stageOf } from '../../alone/stake.js';
import { isInstalled } from '../../log/device.js';
import { icon } from '../../shapes/icons.js';
import { newVersion } from './change-over.js';
import { countWords } from './phone-notices.js';
import { linkTo, to } from '../frame/router.js';
import { ago, span } from '../frame/when.js';
import { makeFile } from './making-file.js';
import { say } from '../../words/words.js';

const WORTH_NAMING_MS = 60 * 60 * 1000;

/**
 * The mark in the head of every screen.
 * @param {import('../../alone/saved.js').Standing} standing
 * @returns {import('../frame/frame.js').Mark}
 */
export function fileMark({ entries, photos, held }) {
  const count = entries + photos;
  if (count) return { state: 'waiting', words: say('phone-mark-no-file', { count }) };
  return { state: 'sent', words: held.entries ? say('phone-mark-saved') : say('phone-mark-empty') };
}

/** On the list of jobs. @param {import('../frame/context.js').Context} ctx */
export function reminder(ctx) {
  return html`${fileReminder(ctx)}${newVersion(ctx)}`;
}

/** @param {import('../frame/context.js').Context} ctx */
function fileReminder(ctx) {
  const stage = stageNow(ctx.services);
  if (stage === 'none') return nothing;
  if (stage === 'quiet') {
    return html`<a class="notice notice-row" href=${linkTo(to.file())}>
      ${icon('out')} <span><strong>${atStake(ctx.services)}</strong> ${say('phone-in-no-file')}</span>
    </a>`;
  }
  return panel(ctx, stage === 'urgent');
}

/** On a job that is closed: a whole job is worth a file. @param {import('../frame/context.js').Context} ctx */
export function reminderAtClose(ctx) {
  const stage = stageNow(ctx.services);
  return stage === 'none' ? nothing : panel(ctx, stage === 'urgent');
}

/**
 * @param {import('../frame/context.js').Context} ctx
 * @param {boolean} urgent
 */
function panel(ctx, urgent) {
  const { since, last, entries, photos } = /** @type {import('../../alone/saved.js').Saved} */ (ctx.services.saved).standing.value;
  const stake = { stage: urgent ? 'urgent' : 'due', count: entries + photos };
  const waited = since === null ? 0 : Date.now() - since;
  const save = () => {
    makeFile(ctx);
    ctx.go(to.file());
  };
  return html`<section class="panel ${urgent ? 'panel-stop' : 'panel-ask'}" role="status">
    <p class="panel-kicker">${icon(urgent ? 'caution' : 'out')} ${urgent ? say('phone-only-here') : say('phone-save-file')}</p>
    <p>
      <strong>${atStake(ctx.services)}</strong>
      ${waited > WORTH_NAMING_MS ? say('phone-stake-since', { ...stake, span: span(waited) }) : say('phone-stake', stake)}
      ${last ? say('phone-last-file', { ago: ago(last.at) }) : say('phone-no-file')} ${risk(ctx.services)}
    </p>
    <button class="small-button" type="button" @click=${save}>${icon('out')} ${say('phone-save-file')}</button>
  </section>`;
}

/** @param {import('../frame/context.js').Services} services */
function stageNow({ saved, device }) {
  if (!saved) return 'none';
  const phone = { promised: device.kept.value === true, installed: isInstalled() };
  return stageOf(saved.standing.value, phone, Date.now());
}

/** @param {import('../frame/context.js').Services} services */
function atStake({ saved }) {
  const { entries, photos } = /** @type {import('../../alone/saved.js').Saved} */ (saved).standing.value;
  return countWords(entries, photos);
}

/** What makes a loss likely on this phone. @param {import('../frame/context.js').Services} services */
function risk({ device }) {
  if (!isInstalled()) return say('phone-page-cleared');
  return device.kept.value === false ? say('phone-may-remove') : '';
}
