"""The right sensor and the wrong one sound so different that nobody has to look which it was."""

from itertools import pairwise

import pytest

# What a phone would play and how it would buzz.
LISTEN = """async (what) => {
  const heard = { tones: [], buzz: [] };
  class Gain { gain = { value: 0 }; connect() {} }
  class Tone {
    frequency = { value: 0 };
    connect(level) { this.level = level; }
    start(at) { this.from = at; }
    stop(at) {
      const { type, frequency, level, from } = this;
      heard.tones.push({ shape: type, hertz: frequency.value, loudness: level.gain.value, from, to: at });
    }
  }
  globalThis.AudioContext = class {
    state = 'running';
    currentTime = 0;
    destination = {};
    createGain() { return new Gain(); }
    createOscillator() { return new Tone(); }
  };
  Object.defineProperty(navigator, 'userActivation', { value: { hasBeenActive: true } });
  navigator.vibrate = (pattern) => heard.buzz.push(...[pattern].flat());
  const parts = await import('/app/parts.js');
  if (what.quiet) parts.wantTone(false);
  parts[what.sound]();
  return heard;
}"""


@pytest.fixture
def listen(bare_page):
    """Give what is heard of a sound; one sound a page."""
    return lambda sound, quiet=False: bare_page.evaluate(LISTEN, {"sound": sound, "quiet": quiet})


def lasts(heard):
    return max(tone["to"] for tone in heard["tones"])


def steps(heard):
    """Return what lies between each tone and the next, in hertz."""
    tones = sorted(heard["tones"], key=lambda tone: tone["from"])
    return [later["hertz"] - earlier["hertz"] for earlier, later in pairwise(tones)]


def test_the_right_sensor_sounds_soft_and_rising(listen):
    heard = listen("confirmRead")

    assert len(heard["tones"]) == 2
    assert all(step > 0 for step in steps(heard))
    assert {tone["shape"] for tone in heard["tones"]} == {"sine"}
    assert {tone["loudness"] for tone in heard["tones"]} == {0.15}
    assert lasts(heard) < 0.25
    assert heard["buzz"] == [60]


def test_the_wrong_sensor_sounds_harsh_and_falling_longer_and_lower(listen):
    heard = listen("alarm")

    assert len(heard["tones"]) == 3
    assert all(step < 0 for step in steps(heard))
    assert {tone["shape"] for tone in heard["tones"]} == {"sawtooth"}
    assert {tone["loudness"] for tone in heard["tones"]} == {0.5}
    assert lasts(heard) > 0.5
    # below all that the other one sounds
    assert max(tone["hertz"] for tone in heard["tones"]) < 880
    assert len(heard["buzz"]) == 5
    assert min(heard["buzz"][::2]) > 3 * 60


def test_without_the_tone_of_a_right_sensor_it_still_buzzes(listen):
    assert listen("confirmRead", quiet=True) == {"tones": [], "buzz": [60]}


def test_the_alarm_sounds_even_where_no_tone_of_a_right_sensor_is_wanted(listen):
    assert len(listen("alarm", quiet=True)["tones"]) == 3
