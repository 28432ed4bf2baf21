"""Sounds of our own making: ticks in noise, as a phone beside a sensor may hear them; mono at 48 kHz."""

import array
import math
import random
import sys
import wave
from pathlib import Path

RATE = 48_000
# A tick: a short burst of 6 kHz that dies away. How a sensor sounds is common practice, no source.
_TICK = [math.sin(2 * math.pi * 6_000 * n / RATE) * math.exp(-n / 16) for n in range(64)]
LOUD = 1_000  # of one standard deviation of the noise, of 32,767


def ticking(seed: int, seconds: float, *, rate: float = 0, loud: float = 0, wavers: float = 0) -> list[float]:
    """Return samples in standard deviations of their noise.

    Ticks come `rate` times a second, `loud` at their peak; each `wavers` by so many milliseconds.
    """
    dice = random.Random(seed)
    samples = [dice.gauss(0, 1) for _ in range(round(seconds * RATE))]
    at = dice.random() / rate if rate else seconds
    while at < seconds:
        first = max(0, round((at + dice.gauss(0, wavers) / 1000) * RATE))
        for n, sample in enumerate(_TICK):
            if first + n < len(samples):
                samples[first + n] += loud * sample
        at += 1 / rate
    return samples


def sound_file(path: Path, samples: list[float]) -> Path:
    """Write samples as a file that a browser takes for its microphone."""
    whole = array.array("h", (max(-32_768, min(32_767, round(each * LOUD))) for each in samples))
    if sys.byteorder == "big":
        whole.byteswap()
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes(whole.tobytes())
    return path


def microphone(path: Path) -> list[str]:
    """Return the browser's arguments that play this file, over and over, into its microphone."""
    return [
        "--use-fake-ui-for-media-stream",
        "--use-fake-device-for-media-stream",
        f"--use-file-for-fake-audio-capture={path}",
    ]
