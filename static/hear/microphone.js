// @ts-check
/**
 * The phone's microphone as levels: nothing of the sound is kept or sent. What phones do to a voice takes faint
 * ticks away (measured: about half), so they are asked to leave the sound as it is, and asked whether they did.
 */

import { APP } from '../place.js';
import { say } from '../words/words.js';

const WORKLET = new URL('hear/ticks-worklet.js', APP);
const UNTOUCHED = { echoCancellation: false, noiseSuppression: false, autoGainControl: false, voiceIsolation: false };

/** What is wrong, and what to do, by the name of the error. @type {Record<string, string>} */
const TROUBLES = {
  NotAllowedError: 'ways-hear-not-allowed',
  SecurityError: 'ways-hear-not-offered',
  NotFoundError: 'ways-hear-none',
  NotReadableError: 'ways-hear-busy',
  TypeError: 'ways-hear-not-offered',
};

/** @param {unknown} error */
function trouble(error) {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  return say(TROUBLES[name] ?? 'ways-hear-not-offered');
}

/**
 * Listen until it is stopped.
 * @param {object} to
 * @param {(levels: number[]) => void} to.levels    one a millisecond
 * @param {() => void} to.altered                   the phone works on the sound all the same
 * @param {(held: boolean) => void} to.held         whether the phone holds the sound back, until `go` on a tap
 * @param {(sentence: string) => void} to.trouble   nothing can be heard
 * @returns {{stop: () => void, go: () => void}}
 */
export function listen(to) {
  /** @type {AudioContext | null} */
  let context = null;
  /** @type {MediaStream | null} */
  let stream = null;
  let stopped = false;
  const stop = () => {
    stopped = true;
    for (const track of stream?.getTracks() ?? []) track.stop();
    if (context && context.state !== 'closed') context.close().catch(() => undefined);
  };
  const go = () => {
    context?.resume().catch(() => undefined);
  };
  const start = async () => {
    // A browser that has no such thing throws, here or below: that is told like any other trouble.
    const sound = new AudioContext();
    context = sound;
    const tell = () => stopped || to.held(sound.state !== 'running');
    // Not waited for: a phone that wants a tap for it, or a call that comes in, leaves it open without an end.
    go();
    stream = await navigator.mediaDevices.getUserMedia({ video: false, audio: UNTOUCHED });
    // The person may have moved on while the browser asked.
    if (stopped) return stop();
    const [track] = stream.getAudioTracks();
    const settings = /** @type {Record<string, unknown>} */ (track.getSettings());
    if (Object.keys(UNTOUCHED).some((name) => settings[name] === true)) to.altered();
    track.addEventListener('ended', () => stopped || to.trouble(say('ways-hear-busy')));
    await sound.audioWorklet.addModule(WORKLET);
    if (stopped) return stop();
    const ticks = new AudioWorkletNode(sound, 'ticks');
    ticks.port.onmessage = ({ data }) => to.levels(data);
    sound.createMediaStreamSource(stream).connect(ticks);
    sound.addEventListener('statechange', tell);
    tell();
  };
  start().catch((error) => {
    const moved = stopped;
    stop();
    if (!moved) to.trouble(trouble(error));
  });
  return { stop, go };
}
