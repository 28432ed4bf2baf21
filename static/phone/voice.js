// @ts-check
/**
 * The phone's own voice, for hands that are busy: off until wanted, and an extra. Only a voice that is on the phone
 * itself is used, so that nothing of what is said leaves it.
 */

import { ownName } from '../place.js';
import { language } from '../words/words.js';
import { touched } from './tones.js';

const KEY = ownName('swaptrail.voice');
/** Not every browser has it. @type {SpeechSynthesis | undefined} */
const engine = globalThis.speechSynthesis;

if (voiceWanted()) {
  // The first question for the voices is answered late, and some phones let a page speak only once a tap has asked.
  engine?.getVoices();
  addEventListener('click', () => speak(''), { once: true, capture: true });
}

/** Whether the steps are to be said. */
export function voiceWanted() {
  try {
    return localStorage.getItem(KEY) === 'on';
  } catch {
    return false;
  }
}

/** Choose whether the steps are said. @param {boolean} wanted */
export function wantVoice(wanted) {
  try {
    if (wanted) localStorage.setItem(KEY, 'on');
    else localStorage.removeItem(KEY);
  } catch {
    // Without storage it stays off.
  }
  if (!wanted) engine?.cancel();
}

/** The voice of this phone in the language in use; none where there is only one from the network. */
export function ownVoice() {
  const voices = engine?.getVoices().filter(({ lang, localService }) => localService && lang.split(/[-_]/)[0].toLowerCase() === language());
  return voices?.find((voice) => voice.default) ?? voices?.[0];
}

/** Some browsers learn late which voices there are. @param {() => void} then */
export function whenVoicesCome(then) {
  if (engine) engine.onvoiceschanged = then;
}

/**
 * Say it now, in place of what is being said; nothing where no voice is wanted or there, or nobody has touched the page.
 * @param {string} text
 * @returns {boolean}  whether it is said
 */
export function speak(text) {
  const voice = voiceWanted() && touched() && ownVoice();
  if (!engine || !voice) return false;
  if (engine.speaking || engine.pending) engine.cancel();
  const said = new SpeechSynthesisUtterance(text);
  said.voice = voice;
  said.lang = voice.lang;
  engine.speak(said);
  return true;
}
