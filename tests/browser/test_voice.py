"""With both hands busy: the phone says each step once and a stop at once, in a voice of its own."""

import pytest

from tests.browser.phone_log import facts
from tests.browser.seeded_job import job_driver
from tests.browser.test_exchange_screens import at_first_fit
from tests.browser.test_exchange_screens import press
from tests.browser.test_exchange_screens import right_and_wrong
from tests.browser.test_exchange_screens import shown
from tests.browser.test_exchange_screens import type_code
from tests.browser_support import wait_until
from tests.core.driver import JOB

# A phone that never comes to the end of what it says.
SPEECH = """
window.said = [];
window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
Object.defineProperty(window, 'speechSynthesis', { value: {
  speaking: false,
  pending: false,
  getVoices: () => VOICES,
  speak(each) {
    // A tap opens the way with nothing to say.
    if (!each.text) return;
    said.push([each.voice.name, each.lang, each.text]);
    this.speaking = true;
  },
  cancel() { said.push('cut off'); this.speaking = false; },
}, configurable: true });
"""
# Until it is tapped. A page that is asked anything from outside counts as touched otherwise.
UNTOUCHED = """
const touch = { hasBeenActive: false };
Object.defineProperty(navigator, 'userActivation', { value: touch });
addEventListener('pointerdown', () => { touch.hasBeenActive = true; }, { capture: true });
"""
NETWORK = "{ name: 'Far', lang: 'en-GB', localService: false, default: true }"
OTHER = "{ name: 'Eva', lang: 'es-ES', localService: true, default: false }"
OWN = "{ name: 'Own', lang: 'en_US', localService: true, default: false }"
WANTED = "localStorage.setItem('swaptrail.voice', 'on');"


@pytest.fixture
def phone_with(take_screens):
    """Give a maker of phones with these voices."""

    def make(*voices, driver=None, wanted=False, **options):
        phone = take_screens(**options)
        if driver:
            phone.holds(driver)
        phone.context.add_init_script(SPEECH.replace("VOICES", f"[{', '.join(voices)}]"))
        if wanted:
            phone.context.add_init_script(WANTED)
        return phone

    return make


def said(page):
    return page.evaluate("said")


def spelt(code):
    return ", ".join(code)


def test_the_switch_is_off_at_first_and_kept_on_this_phone(phone_with):
    phone = phone_with(NETWORK, OTHER, OWN)
    page = phone.show("/#/you")
    switch = page.get_by_role("checkbox", name="Say the steps aloud")
    assert not switch.is_checked()

    switch.check()

    assert said(page) == [["Own", "en_US", "Each step is said like this."]]
    page.reload()
    assert switch.is_checked()

    switch.uncheck()

    page.reload()
    switch.wait_for()
    assert not switch.is_checked()


def test_a_phone_whose_voices_are_elsewhere_says_so_at_the_switch(phone_with):
    phone = phone_with(NETWORK, OTHER, wanted=True)
    page = phone.show("/#/you")

    page.get_by_text("This phone has no voice of its own for this language.").wait_for()
    switch = page.get_by_role("checkbox", name="Say the steps aloud")
    assert switch.is_disabled()
    assert not switch.is_checked()


def test_a_voice_that_comes_late_is_offered(phone_with):
    phone = phone_with()
    page = phone.show("/#/you")
    switch = page.get_by_role("checkbox", name="Say the steps aloud")
    assert switch.is_disabled()

    page.evaluate(f"speechSynthesis.getVoices = () => [{OWN}]; speechSynthesis.onvoiceschanged();")

    assert switch.is_enabled()


def test_a_step_is_said_once_and_a_stop_cuts_it_off(phone_with):
    driver = at_first_fit()
    right, wrong = right_and_wrong(driver)
    phone = phone_with(NETWORK, OWN, driver=driver, wanted=True)
    page = phone.show()

    page.get_by_role("link", name="Blue estate").click()
    wait_until(page, "said.length === 1")
    voice, _, step = said(page)[0]
    assert voice == "Own"
    assert spelt(right) in step
    type_code(page, wrong)
    page.get_by_text("STOP: wrong sensor in your hand").wait_for()
    wait_until(page, "said.length === 3")

    cut, (_, _, stop) = said(page)[1:]
    assert cut == "cut off"
    assert stop.startswith("STOP: wrong sensor in your hand. ")
    assert spelt(wrong) in stop
    assert shown(wrong) not in stop
    # the stop is on record by now, and the step is drawn again: it is not said again
    type_code(page, right)
    wait_until(page, "said.length === 5")
    assert said(page)[3] == "cut off"
    assert said(page)[4][2].startswith(f"Fit {spelt(wrong)} at ")

    # An app that was started anew may not speak before a tap: the step is said then.
    page.add_init_script(UNTOUCHED)
    page.reload()
    page.locator("[data-step=fit]").wait_for()
    assert said(page) == []
    page.get_by_role("button", name="Type the code").click()
    wait_until(page, "said.length === 1")
    assert said(page)[0][2].startswith(f"Fit {spelt(wrong)} at ")


def test_what_a_rule_says_against_an_entry_is_said(phone_with):
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    driver.photograph()
    driver.exchange(rear_right_outer="v1.rear-right-inner", rear_right_inner="v1.rear-right-outer")
    page = phone_with(OWN, driver=driver, wanted=True).show(f"/#/job/{JOB}/history")
    page.get_by_role("button", name="pulled from").last.click()
    page.get_by_label("Why was it wrong?").fill("Tapped too fast")
    press(page, "Take it back")
    page.get_by_role("alert").get_by_text("Later entries rest on this one.").wait_for()

    assert ["Later entries rest on this one." in text for _, _, text in said(page)] == [True]


def test_nothing_is_said_where_it_is_not_wanted(phone_with):
    driver = at_first_fit()
    _, wrong = right_and_wrong(driver)
    phone = phone_with(OWN, driver=driver)
    page = phone.show()

    page.get_by_role("link", name="Blue estate").click()
    type_code(page, wrong)
    page.get_by_text("STOP: wrong sensor in your hand").wait_for()

    assert said(page) == []


def test_a_stop_leads_to_saying_that_they_got_mixed_up(phone_with):
    driver = at_first_fit()
    _, wrong = right_and_wrong(driver)
    page = phone_with(driver=driver).show(f"/#/job/{JOB}")
    type_code(page, wrong)

    press(page, "I mixed them up")
    page.get_by_role("heading", name="Which ones got mixed up?").wait_for()
    press(page, "These 2 got mixed up")

    page.get_by_text("2 sensors got mixed up").first.wait_for()
    mixed = [fact["data"]["units"] for fact in facts(page) if fact["kind"] == "units_mixed"]
    assert [sorted(units) for units in mixed] == [sorted(driver.labels)]


# Keeps what the page would play: the shape of each tone.
TONES = """
window.heard = [];
window.AudioContext = class {
  state = 'running';
  currentTime = 0;
  destination = {};
  createGain() { return { gain: { value: 0 }, connect() {} }; }
  createOscillator() {
    return { frequency: {}, connect() {}, stop() {}, start() { heard.push(this.type); } };
  }
};
"""

WITHOUT = """
for (const each of ['speechSynthesis', 'SpeechSynthesisUtterance', 'AudioContext']) {
  Object.defineProperty(window, each, { value: undefined });
}
"""


@pytest.fixture
def at_a_fit(phone_with):
    """Give a maker of phones in a language at the first fit, with the right and the wrong code."""

    def make(*voices, locale="en-GB", before="", wanted=True):
        driver = at_first_fit()
        phone = phone_with(*voices, driver=driver, wanted=wanted, locale=locale)
        phone.context.add_init_script(before)
        page = phone.show()
        page.get_by_role("link", name="Blue estate").click()
        page.locator("[data-step=fit]").wait_for()
        return page, *right_and_wrong(driver)

    return make


def types(page, code):
    """Type a code, whatever the language of the screen."""
    page.locator(".other-button").click()
    page.locator(".field-code").fill(code)
    page.locator(".main-button").click()


def test_step_and_stop_are_said_in_the_language_of_the_screen_by_a_voice_that_has_it(at_a_fit):
    page, right, wrong = at_a_fit(OWN, OTHER, locale="es-ES")
    wait_until(page, "said.length === 1")
    voice, language, step = said(page)[0]
    assert (voice, language) == ("Eva", "es-ES")
    assert step.startswith(f"Monta {spelt(right)} en ")

    types(page, wrong)
    page.locator(".stop").wait_for()
    wait_until(page, "said.length === 3")
    assert said(page)[2][:2] == ["Eva", "es-ES"]
    assert said(page)[2][2].startswith("ALTO: ")


@pytest.mark.parametrize("wanted", [True, False], ids=["tones", "no tones"])
def test_a_typed_code_sounds_right_where_tones_are_wanted_and_a_wrong_one_its_alarm_anyhow(at_a_fit, wanted):
    before = TONES if wanted else TONES + "localStorage.setItem('swaptrail.tone', 'off');"
    page, right, wrong = at_a_fit(OWN, before=before, wanted=not wanted)
    types(page, wrong)
    page.locator(".stop").wait_for()
    wait_until(page, "heard.length === 3")
    types(page, right)
    page.locator(".field-code").wait_for(state="detached")

    assert page.evaluate("heard") == ["sawtooth"] * 3 + ["sine"] * 2 * wanted


def test_a_phone_without_any_voice_or_sound_shows_everything_all_the_same(at_a_fit):
    page, right, wrong = at_a_fit(before=WITHOUT)
    types(page, wrong)
    page.locator(".stop").wait_for()
    types(page, right)
    page.locator(".stop").wait_for(state="detached")
    page.goto(page.url.partition("#")[0] + "#/you")
    page.get_by_text("This phone has no voice of its own for this language.").wait_for()
