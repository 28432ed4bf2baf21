// @ts-check
/**
 * A buzz and a short falling tone when the wrong sensor was stopped: an extra, for eyes that look elsewhere.
 */

import { buzz, play } from '../../phone/tones.js';

const BUZZ_MS = [180, 90, 180];
const TONES = [
  { hertz: 880, from: 0 },
  { hertz: 587, from: 0.16 },
];

/** Sound it, where the phone has sound and buzz; otherwise do nothing. */
export function alarm() {
  buzz(BUZZ_MS);
  play(TONES, { seconds: 0.15, loudness: 0.4, shape: 'square' });
}
