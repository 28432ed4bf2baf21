"""The phone helps to hear the ticks: it tells what it hears, and the person answers."""

import contextlib
import re

import pytest

from tests.browser.screens import screens
from tests.browser.seeded_job import job_driver
from tests.browser.test_job_screens import facts
from tests.browser.test_job_screens import last
from tests.browser_support import launch
from tests.core.driver import JOB
from tests.sounds import microphone
from tests.sounds import sound_file
from tests.sounds import ticking

# As long as a whole number of periods: the browser plays it over and over.
SECONDS = 6
HEARD = "[data-hears=ticks], [data-hears=nothing]"


@pytest.fixture
def take_ear(screen_app, tmp_path):
    """Give a maker of phones whose microphone hears these samples; without any they have none.

    `lacks` is a script that takes something away from their browser before the app is there.
    """
    with contextlib.ExitStack() as open_ones:

        def take(samples=None, allowed=True, lacks="", **options):
            args = microphone(sound_file(tmp_path / "heard.wav", samples)) if samples else []
            browser = launch(args=args if allowed else args[1:])
            open_ones.callback(browser.close)
            phone = open_ones.enter_context(screens(browser, screen_app.base, **options))
            if allowed:
                phone.context.grant_permissions(["microphone"])
            phone.context.add_init_script(lacks)
            return listening(phone)

        yield take


def listening(phone):
    """Open the screen on which one listens, and let the phone listen at the first position."""
    phone.holds(job_driver().begin()).show(f"/#/job/{JOB}/listen")
    phone.page.locator("[data-hear]").first.click()
    return phone


def test_a_steady_tick_is_counted_and_only_the_person_answers(take_ear):
    phone = take_ear(ticking(1, SECONDS, rate=14, loud=8), width=320)
    page = phone.page
    told = page.locator("[data-hears=ticks]").inner_text()
    assert 13 <= int(re.fullmatch(r"Ticks (\d+) times a second", told)[1]) <= 15
    assert page.locator(".hear-picture path").get_attribute("d").count("M") > 100
    assert phone.lacks_room() == []
    assert page.get_by_role("button", name="Tap what you hear").is_disabled()
    assert "listened" not in [fact["kind"] for fact in facts(page)]

    page.get_by_label("It ticks").first.check()
    phone.tap("Save what you heard")
    page.wait_for_url(re.compile(f"{JOB}$"))
    assert last(page, "listened")["ticks"] == ["rear-left-outer"]


def test_noise_without_a_beat_is_said_to_be_nothing_regular(take_ear):
    page = take_ear(ticking(2, SECONDS)).page
    page.locator(HEARD).wait_for()
    assert page.locator(".hear-words").inner_text() == "Nothing regular"

    page.get_by_role("button", name="Stop listening").click()
    page.get_by_role("button", name="Stop listening").wait_for(state="detached")
    assert not page.locator(".hear").count()


def test_a_microphone_that_is_not_allowed_is_said_with_what_to_do(take_ear):
    page = take_ear(ticking(3, 1), allowed=False).page
    page.get_by_role("alert").get_by_text("Allow it in the browser").wait_for()


def test_a_device_without_a_microphone_says_so(take_ear):
    page = take_ear().page
    page.get_by_role("alert").get_by_text("This device has no microphone. Listen by ear.").wait_for()


# An old browser has no such things at all, and a page that is not secure no devices.
LACKS = {
    "no sound": "delete globalThis.AudioContext;",
    "no worklet": "delete BaseAudioContext.prototype.audioWorklet;",
    "no devices": "Object.defineProperty(navigator, 'mediaDevices', { value: undefined });",
    "no microphone": "delete MediaDevices.prototype.getUserMedia;",
}


@pytest.mark.parametrize("lacks", LACKS.values(), ids=LACKS)
def test_a_browser_that_lets_no_page_listen_says_so_and_the_ear_is_left(take_ear, lacks):
    page = take_ear(ticking(4, 1), lacks=lacks).page
    page.get_by_role("alert").get_by_text("This browser lets no page listen here. Listen by ear.").wait_for()

    page.get_by_label("It ticks").first.check()
    page.get_by_role("button", name="Save what you heard").click()
    page.wait_for_url(re.compile(f"{JOB}$"))
    assert last(page, "listened")["ticks"] == ["rear-left-outer"]


# A phone that keeps sound back until somebody taps: what is asked for before stays open without an end.
HELD_BACK = """globalThis.AudioContext = class extends AudioContext {
  constructor() {
    super();
    globalThis.sound = this;
    this.suspend();
  }
  resume() {
    return globalThis.tapped ? super.resume() : new Promise(() => {});
  }
};"""


def test_a_phone_that_holds_the_sound_back_asks_for_a_tap_and_so_after_a_call(take_ear):
    phone = take_ear(ticking(1, SECONDS, rate=14, loud=8), lacks=HELD_BACK, width=320)
    page = phone.page
    go = page.get_by_role("button", name="Listen now")
    go.wait_for()
    assert page.get_by_text("The phone holds the sound back.").is_visible()
    assert phone.lacks_room() == []

    page.evaluate("() => { globalThis.tapped = true; }")
    go.click()
    page.locator("[data-hears=ticks]").wait_for()

    page.evaluate("() => globalThis.sound.suspend()")  # as a call that comes in
    go.wait_for()
    assert not page.locator("[data-hears]").count()
    go.click()
    page.locator("[data-hears=ticks]").wait_for()
