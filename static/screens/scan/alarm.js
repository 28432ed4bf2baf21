// @ts-check
/**
 * A long buzz and harsh falling tones when the wrong sensor was stopped: an extra, for eyes that look elsewhere.
 * Nobody takes it for the tone of a label that was right.
 */

import { buzz, play } from '../../phone/tones.js';

const BUZZ_MS = [220, 80, 220, 80, 220];
const TONES = [
  { hertz: 620, from: 0 },
  { hertz: 440, from: 0.2 },
  { hertz: 260, from: 0.4 },
];

/** Sound it, where the phone has sound and buzz; otherwise do nothing. */
export function alarm() {
  buzz(BUZZ_MS);
  play(TONES, { seconds: 0.19, loudness: 0.5, shape: 'sawtooth' });
}
