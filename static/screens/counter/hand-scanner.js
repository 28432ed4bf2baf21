// @ts-check
/**
 * A hand scanner that types, on every screen of a phone or computer at the counter, with no field to tap first.
 *
 * What comes in faster than people type, or holds what nobody types, is taken as read. Within a code no key does
 * anything else: an Enter at its end presses no button, and a letter of it is no shortcut.
 */

import { html, nothing, render } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { isPrinting } from '../frame/print-at-once.js';
import { routeOf } from '../frame/router.js';
import { say } from '../../words/words.js';
import { visible } from '../../words/visible.js';
import { KeyPresses } from './key-presses.js';

/**
 * @typedef {import('./key-presses.js').Keyed} Keyed
 * @typedef {(keyed: Keyed) => Promise<void>} OnKeyed
 */

/** What takes a code on the screen that is shown. @type {OnKeyed} */
let present = async () => undefined;
/** The path of this screen. */
let shownAt = '';
/** What was read and is not taken yet, the oldest first: a computer may be slower than the hand. @type {Keyed[]} */
const waiting = [];
let isHandingOver = false;
/** Whether the keys are heard already. */
let begun = false;
/** Of a code that is held back its end is shown, which tells it from others. */
const MOST_SHOWN = 24;

/**
 * A part of a screen that takes what the hand scanner reads, there and, from then on, on all others.
 * @param {import('../frame/context.js').Context} ctx
 * @param {OnKeyed} onKeyed
 */
export function handScanner(ctx, onKeyed) {
  present = onKeyed;
  shownAt = routeOf(location).path;
  if (!begun) begin(ctx);
  begun = true;
  if (waiting.length) queueMicrotask(() => handOver(ctx.go));
  return html`<div hidden data-takes-codes></div>`;
}

/** @param {import('../frame/context.js').Context} ctx  of the first screen that asked */
function begin({ services, go }) {
  const keys = new KeyPresses((keyed) => {
    // Its beginning was taken for a code; it is none, if nobody has looked at it yet.
    const isUnseen = keyed.goesOn && waiting.length > Number(isHandingOver);
    if (isUnseen) waiting.pop();
    waiting.push(isUnseen ? { ...keyed, goesOn: false } : keyed);
    void handOver(go);
  }, heldLine());
  const atCounter = () => services.device.role.value === 'counter';
  addEventListener('keydown', (event) => atCounter() && keys.down(event), true);
  addEventListener('keyup', (event) => atCounter() && keys.up(event), true);
  addEventListener('click', (event) => atCounter() && keys.tapped(event), true);
  addEventListener('keypress', (event) => atCounter() && keys.press(event), true);
}

/**
 * A line over whatever screen is shown, that says what is held back and how to end it.
 * @returns {(text: string) => void}
 */
function heldLine() {
  const line = document.createElement('div');
  line.setAttribute('role', 'status');
  document.body.append(line);
  return (text) => {
    line.className = text ? 'checking' : '';
    const shown = visible(text.length > MOST_SHOWN ? `…${text.slice(-MOST_SHOWN)}` : text);
    const words = () => html`<p class="panel-kicker">${icon('clock')}<span>${say('counter-held-back', { text: shown })}</span></p>
      <p>${say('counter-held-end')}</p>`;
    render(text ? words() : nothing, line);
  };
}

/** Whether the screen that takes codes is there, and not about to be left for another. */
const isThere = () => routeOf(location).path === shownAt && document.querySelector('[data-takes-codes]') !== null;

/**
 * Hand over what was read, one code after the other, for the second of two may be of the part that the first one names.
 * What was on its way as its screen was left went with it: the next one takes it anew.
 * @param {import('../frame/context.js').Context['go']} go
 */
async function handOver(go) {
  if (isHandingOver) return;
  isHandingOver = true;
  try {
    while (waiting.length && isThere()) {
      await present(waiting[0]);
      if (isThere()) waiting.shift();
    }
  } finally {
    isHandingOver = false;
  }
  // A slip that is to be printed goes first; the counter is shown again after it.
  if (waiting.length && !isPrinting()) go('#/');
}
