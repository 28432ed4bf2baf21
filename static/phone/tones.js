// @ts-check
/**
 * Short tones and buzzes: an extra, for eyes that look elsewhere. Never the only sign of anything.
 */

import { ownName } from '../place.js';

const KEY = ownName('swaptrail.tone');

/** @type {AudioContext | null} */
let context = null;

/** Whether a tone is wanted when a code was read. */
export function toneWanted() {
  try {
    return localStorage.getItem(KEY) !== 'off';
  } catch {
    return true;
  }
}

/** Choose whether a tone is heard when a code was read. @param {boolean} wanted */
export function wantTone(wanted) {
  try {
    if (wanted) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, 'off');
  } catch {
    // Without storage it stays as it was.
  }
}

/** Open the way for sound. Call it on a tap, such as the one that opens a camera: some phones allow it only then. */
export function prepareTones() {
  try {
    context ??= new AudioContext();
    if (context.state === 'suspended') context.resume().catch(() => undefined);
  } catch {
    // A phone without sound shows everything all the same.
  }
}

/** A code was read, or a typed one is right: a short buzz, and two soft tones that rise where they are wanted. The alarm is all that this is not. */
export function confirmRead() {
  buzz(60);
  if (toneWanted()) play([{ hertz: 880, from: 0 }, { hertz: 1320, from: 0.09 }], { seconds: 0.09, loudness: 0.15, shape: 'sine' });
}

/** Let the phone shake, where somebody has touched the page. @param {number | number[]} pattern  milliseconds */
export function buzz(pattern) {
  if (touched()) navigator.vibrate?.(pattern);
}

/**
 * Play tones one after the other.
 * @param {Array<{hertz: number, from: number}>} tones  `from` in seconds
 * @param {{seconds: number, loudness: number, shape: OscillatorType}} how
 */
export function play(tones, { seconds, loudness, shape }) {
  if (!touched()) return;
  prepareTones();
  if (!context) return;
  const level = context.createGain();
  level.gain.value = loudness;
  level.connect(context.destination);
  for (const { hertz, from } of tones) {
    const tone = context.createOscillator();
    tone.type = shape;
    tone.frequency.value = hertz;
    tone.connect(level);
    tone.start(context.currentTime + from);
    tone.stop(context.currentTime + from + seconds);
  }
}

/** Browsers refuse sound and buzz, and complain, before anyone has touched the page. */
export function touched() {
  return !navigator.userActivation || navigator.userActivation.hasBeenActive;
}
