// @ts-check
/**
 * Whether this phone says the steps aloud; without a voice of its own it says why it cannot.
 */

import { html } from 'lit-html';

import { ownVoice, speak, voiceWanted, wantVoice, whenVoicesCome } from '../../phone/voice.js';
import { say } from '../../words/words.js';

/** @param {import('../frame/context.js').Context} ctx */
export function voiceChoice(ctx) {
  whenVoicesCome(ctx.redraw);
  const can = ownVoice() !== undefined;
  const change = (/** @type {{target: HTMLInputElement}} */ { target }) => {
    wantVoice(target.checked);
    speak(say('you-voice-like-this'));
    ctx.redraw();
  };
  return html`<fieldset class="asked">
    <legend class="asked-words">${say('you-voice')}</legend>
    <label class="choice">
      <input type="checkbox" .checked=${can && voiceWanted()} ?disabled=${!can} @change=${change} />
      <span class="choice-word">${say('you-voice-say')}</span>
    </label>
    <p class="field-note">${say(can ? 'you-voice-note' : 'you-voice-none')}</p>
  </fieldset>`;
}
