// @ts-check
/**
 * A buzz and a short falling tone when the wrong sensor was stopped: an extra, for eyes that look elsewhere.
 */

const BUZZ_MS = [180, 90, 180];
const TONES = [
  { hertz: 880, from: 0 },
  { hertz: 587, from: 0.16 },
];
const TONE_SECONDS = 0.15;

/** Sound it, where the phone has sound and buzz; otherwise do nothing. */
export function alarm() {
  // Browsers refuse both, and complain, before anyone has touched the page.
  if (navigator.userActivation && !navigator.userActivation.hasBeenActive) return;
  navigator.vibrate?.(BUZZ_MS);
  try {
    sound();
  } catch {
    // The panel on the screen says it all.
  }
}

function sound() {
  const context = new AudioContext();
  const loudness = context.createGain();
  loudness.gain.value = 0.4;
  loudness.connect(context.destination);
  const tones = TONES.map(({ hertz, from }) => {
    const tone = context.createOscillator();
    tone.type = 'square';
    tone.frequency.value = hertz;
    tone.connect(loudness);
    tone.start(context.currentTime + from);
    tone.stop(context.currentTime + from + TONE_SECONDS);
    return tone;
  });
  tones[tones.length - 1].onended = () => context.close();
}
