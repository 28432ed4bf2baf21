"""Whether a sound ticks at a steady rate; hit rates over noise are figures of `tests.bench.hearing`."""

import pytest

from tests.sounds import RATE
from tests.sounds import ticking

SECONDS = 4.1
HEAR = """async ([samples, rate]) => {
  const { Levels, rhythm } = await import('/app/parts.js');
  return rhythm(new Levels(rate).of(new Float32Array(samples)));
}"""


def heard(page, samples):
    return page.evaluate(HEAR, [[round(each, 2) for each in samples], RATE])


@pytest.mark.parametrize(("rate", "wavers"), [(5, 0), (14, 0), (14, 2), (20, 0), (40, 0)])
def test_a_steady_tick_is_counted(asked_page, rate, wavers):
    """From 4 to 60 a second is looked for; no measured rate of a vehicle was found (facts of ours, c 3)."""
    found = heard(asked_page, ticking(rate, SECONDS, rate=rate, loud=8, wavers=wavers))
    assert found["perSecond"] == pytest.approx(rate, rel=0.03)


@pytest.mark.parametrize("seed", range(3))
def test_noise_has_no_rate(asked_page, seed):
    assert heard(asked_page, ticking(seed, SECONDS))["perSecond"] == 0


def test_bangs_at_odd_moments_and_silence_have_no_rate(asked_page):
    bangs = ticking(9, SECONDS)
    for at in (0.31, 0.9, 1.07, 2.2, 3.61):
        first = round(at * RATE)
        bangs[first : first + 2000] = [60 * each for each in bangs[first : first + 2000]]
    assert heard(asked_page, bangs)["perSecond"] == 0
    assert heard(asked_page, [0.0] * len(bangs))["perSecond"] == 0
