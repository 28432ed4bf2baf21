// @ts-check
/**
 * The phone listens at one position: a picture of the sound, and whether it ticks at a steady rate. It answers
 * nothing by itself: what is recorded is what the person taps.
 */

import { html, nothing, render } from 'lit-html';

import { listen } from '../../hear/microphone.js';
import { LEVELS_PER_SECOND, LOOKED_AT, rhythm } from '../../hear/rhythm.js';
import { say } from '../../words/words.js';
import { mounted } from '../frame/mount.js';

/** @typedef {{trouble: string, altered: boolean, held: boolean, found: import('../../hear/rhythm.js').Rhythm | null}} Heard */

/** How often it is looked at and drawn, in levels. */
const EACH = LEVELS_PER_SECOND / 2;
const DRAWN = 1500;
/** So many levels are one line of the picture: as wide as a phone has points. */
const COLUMN = 5;
const HEIGHT = 60;

/** At which position the phone listens, by form; never written down, so that no reload opens a microphone. @type {WeakMap<object, string>} */
const hearing = new WeakMap();

/**
 * The part of a position's card in which the phone listens.
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} position
 */
export function hearPanel(ctx, position) {
  const { form } = ctx;
  const on = hearing.get(form) === position;
  const end = () => {
    // Another position may have been opened meanwhile.
    if (hearing.get(form) === position) hearing.delete(form);
  };
  return html`<button
      class="small-button"
      type="button"
      data-hear=${position}
      @click=${() => {
        if (on) end();
        else hearing.set(form, position);
        ctx.redraw();
      }}
    >
      ${say(on ? 'ways-hear-stop' : 'ways-hear')}
    </button>
    ${on ? html`<div class="hear" ${mounted(`hear ${position}`, (host) => hear(host, end, ctx.redraw))}></div>` : nothing}`;
}

/**
 * Listen and draw into an element until it leaves, or the page is no longer seen.
 * @param {HTMLElement} host
 * @param {() => void} end  what notes that it is over
 * @param {() => void} redraw
 */
function hear(host, end, redraw) {
  /** @type {number[]} */
  let levels = [];
  let fresh = 0;
  /** @type {Heard} */
  const shown = { trouble: '', altered: false, held: false, found: null };
  const draw = () => render(picture(levels, shown, () => microphone.go()), host);
  const microphone = listen({
    levels(more) {
      levels = [...levels, ...more].slice(-LOOKED_AT);
      fresh += more.length;
      if (fresh < EACH) return;
      fresh = 0;
      shown.found = levels.length < LOOKED_AT ? null : rhythm(levels);
      draw();
    },
    altered() {
      shown.altered = true;
      draw();
    },
    held(now) {
      shown.held = now;
      // What was heard before the pause says nothing of now.
      levels = [];
      shown.found = null;
      draw();
    },
    trouble(sentence) {
      shown.trouble = sentence;
      draw();
    },
  });
  draw();
  const unseen = () => {
    if (document.visibilityState !== 'hidden') return;
    end();
    redraw();
  };
  document.addEventListener('visibilitychange', unseen);
  return () => {
    document.removeEventListener('visibilitychange', unseen);
    microphone.stop();
    end();
  };
}

/**
 * @param {number[]} levels
 * @param {Heard} shown
 * @param {() => void} go
 */
function picture(levels, { trouble, altered, held, found }, go) {
  if (trouble) return html`<p class="field-fault" role="alert">${trouble}</p>`;
  if (held) {
    return html`<p class="field-note" role="status">${say('ways-hear-held')}</p>
      <button class="small-button" type="button" @click=${go}>${say('ways-hear-go')}</button>`;
  }
  const words = !found
    ? say('ways-hear-listening')
    : found.perSecond
      ? say('ways-hear-ticks', { count: Math.round(found.perSecond) })
      : say('ways-hear-nothing');
  return html`<svg class="hear-picture" viewBox="0 0 ${DRAWN / COLUMN} ${HEIGHT}" preserveAspectRatio="none" aria-hidden="true">
      <path d=${lines(levels.slice(-DRAWN))} />
    </svg>
    <p class="hear-words" role="status" data-hears=${found ? (found.perSecond ? 'ticks' : 'nothing') : 'waits'}>${words}</p>
    <p class="field-note">${say(altered ? 'ways-hear-altered' : 'ways-hear-yours')}</p>`;
}

/** One upright line for each few levels, the loudest as high as the picture. @param {number[]} levels */
function lines(levels) {
  const highest = Math.max(...levels, Number.EPSILON);
  let path = '';
  for (let at = 0; at < levels.length; at += COLUMN) {
    const high = Math.max(...levels.slice(at, at + COLUMN)) / highest;
    path += `M${at / COLUMN} ${HEIGHT}v${-Math.max(1, Math.round(high * (HEIGHT - 2)))}`;
  }
  return path;
}
