"""How often ticks in noise are heard, and how often noise is taken for ticks: figures, never asserted.

    python -m tests.bench.hearing [--seeds 40]

Ticks are short bursts of 6 kHz in white noise, at their peak so many standard deviations of the noise; each
sound is four seconds. A rate counts as right within five per cent. Real sensors were not measured.
"""

import argparse
import base64
import json
import subprocess
from pathlib import Path

import numpy

from tests.sounds import RATE

HEAR = Path(__file__).resolve().parents[2] / "static/hear"
SECONDS = 4.1
LOUD = (8, 6, 5, 4, 3)
RATES = (5, 14, 20, 40)

# Each line of its input is one sound, each of its output what was found in it.
_PROGRAM = """
import { createInterface } from 'node:readline';
import { Levels } from '%(folder)s/levels.js';
import { rhythm } from '%(folder)s/rhythm.js';
for await (const line of createInterface({ input: process.stdin })) {
  const bytes = Buffer.from(line, 'base64');
  const samples = new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
  console.log(JSON.stringify(rhythm(new Levels(%(rate)d).of(samples))));
}
"""


def sound(seed: int, rate: float = 0, loud: float = 0, wavers: float = 0) -> bytes:
    """Returns one sound as bytes of 32-bit floats."""
    dice = numpy.random.default_rng(seed)
    samples = dice.normal(0, 1, round(SECONDS * RATE))
    at = dice.random() / rate if rate else SECONDS
    n = numpy.arange(64)
    tick = loud * numpy.sin(2 * numpy.pi * 6_000 * n / RATE) * numpy.exp(-n / 16)
    while at < SECONDS:
        first = round((at + dice.normal(0, 1) * wavers / 1000) * RATE)
        if 0 <= first < len(samples) - len(tick):
            samples[first : first + len(tick)] += tick
        at += 1 / rate
    return samples.astype("<f4").tobytes()


def heard(sounds: list[bytes]) -> list[float]:
    """Returns ticks a second as the app finds them in each sound, 0 for nothing regular."""
    program = _PROGRAM % {"folder": HEAR.as_posix(), "rate": RATE}
    lines = "\n".join(base64.b64encode(each).decode() for each in sounds)
    command = ["node", "--input-type=module", "--eval", program]
    done = subprocess.run(command, input=lines, capture_output=True, text=True, check=True)
    return [json.loads(line)["perSecond"] for line in done.stdout.splitlines()]


def main() -> None:
    """Prints the table."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--seeds", type=int, default=40)
    seeds = parser.parse_args().seeds
    noise = heard([sound(seed) for seed in range(5 * seeds)])
    print(f"noise alone: a rate in {sum(found > 0 for found in noise)} of {len(noise)}")
    for rate in RATES:
        for wavers in (0, 2):
            row = []
            for loud in LOUD:
                found = heard([sound(1000 + seed, rate, loud, wavers) for seed in range(seeds)])
                right = sum(abs(each - rate) < 0.05 * rate for each in found)
                row.append(f"{loud}: {right} right, {sum(each > 0 for each in found) - right} wrong")
            print(f"{rate} a second, wavering {wavers} ms, of {seeds}; by loudness: " + "; ".join(row))


if __name__ == "__main__":
    main()
