"""The circuit of a position is drawn at its checks and its find; with no network it leads to the close."""

from tests.browser.screens import Screens
from tests.browser.seeded_job import job_driver
from tests.browser.test_exchange_screens import after_the_swap
from tests.browser.test_job_screens import last
from tests.browser_support import wait_until
from tests.core.driver import JOB
from tests.static.builds import wait_for_offline_use

OUTER = "rear-right-outer"
# Of a segment by its number: what the drawing claims of it.
STATES = """() => Object.fromEntries([...document.querySelectorAll('.harness [data-segment]')]
  .map((each) => [each.dataset.segment, each.dataset.state]))"""
CHANGED = "(before) => document.querySelector('main')?.innerText !== before"
SIZES = ((390, 844, 100), (320, 640, 100), (320, 640, 200))


def measuring(*answers: int):
    """Return a driver at a check of the wiring, those before it answered: 0 good, 1 bad, 2 unclear."""
    driver = job_driver().begin()
    driver.test(OUTER)
    driver.fact("move_started", move="meter", fitted={}, position=OUTER, reason="to see")
    for answer in answers:
        driver.choose(answer)
    return driver


def at_check(name: str):
    """Return a driver whose job is at this check, all before it good but for one that could not be told."""
    driver = measuring()
    while (check := driver.step()["expects"]["check"]) != name:
        driver.choose(2 if check == "wire" else 0)
    return driver


def at_job(phone: Screens, driver):
    """Show the driver's job on a phone and wait until its circuit is drawn."""
    page = phone.holds(driver).show(f"/#/job/{JOB}")
    page.locator(".harness").wait_for()
    return page


def has_room(phone: Screens, which: str) -> None:
    """Hold the screen to its room with its circuit unfolded, by day and by night."""
    folded = phone.page.locator("details[data-circuit]:not([open]) > summary")
    while folded.count():
        folded.first.click()
    for theme in ("light", "dark"):
        phone.page.emulate_media(color_scheme=theme)
        assert phone.lacking(*SIZES) == {}, (which, theme)
    phone.lacking((390, 844, 100))


# How many probes and magnifying glasses are drawn at these checks.
DRAWN = {
    "pins": (0, 1),  # a look
    "wire": (2, 0),  # the wire alone
    "half": (2, 0),  # along the wire
    "loom": (2, 0),  # on from the bumper plug
    "ground-drop": (2, 0),  # to bare metal
    "neighbour": (2, 0),  # to the wire beside it
}


def test_the_circuit_is_drawn_with_room_and_says_where_the_probes_go(take_screens):
    phone = take_screens()
    driver = measuring()
    page = at_job(phone, driver)
    looked_at = []
    while (check := driver.step()["expects"].get("check")) is not None:
        if check in DRAWN:
            probes, glasses = DRAWN[check]
            assert page.locator(".harness-probe").count() == probes, check
            assert page.locator(".harness-glass").count() == glasses, check
            assert len(page.evaluate(STATES)) == 8, check
            if probes:
                assert page.locator(".lead").inner_text().startswith("Wanted: "), check
                page.locator(".circuit-place").get_by_text("robe").wait_for()
            if check == "wire":  # that is measured alone is named once
                told = page.locator(".circuit-place").inner_text()
                assert told == "Probes on both ends of the signal wire: the wire to the bumper plug."
            has_room(phone, check)
            looked_at.append(check)
        if len(looked_at) == len(DRAWN):
            break
        how = 2 if check == "wire" else 0
        driver.choose(how)
        reads(page, ("good", "bad", "unclear")[how])
    assert set(looked_at) == set(DRAWN)


def test_a_find_shows_in_drawing_and_words_is_doubted_and_its_repair_has_its_place_filled_in(take_screens):
    phone = take_screens()
    page = at_job(phone, measuring(1))

    assert page.evaluate(STATES) == {"1": "named", **{str(n): "sound" for n in range(2, 9)}}
    assert page.locator(".harness-probe").count() == page.locator(".harness-glass").count() == 0
    page.locator(".circuit-where").get_by_text("The fault is in the pins of the sensor's plug.").wait_for()
    assert not page.get_by_role("radio", name="Sensor pins").is_visible()
    assert page.locator("[data-picture]").count() == 2
    page.get_by_text("Parts and readings").click()
    named = page.locator(".harness-parts li[data-state='named']")
    assert "The pins of the sensor's plug" in named.inner_text()
    assert "The fault, " in named.inner_text()
    page.get_by_text("Bent, pushed back or corroded").wait_for()
    has_room(phone, "named")

    page.get_by_role("button", name="I doubt it").click()
    page.get_by_text("Wanted: ").first.wait_for()
    assert page.get_by_text("Leave airbag wiring").is_visible()
    page.get_by_role("button", name="Back to the find").click()
    page.get_by_role("button", name="I doubt it").click()
    page.locator("[data-reads='good']").click()
    page.get_by_role("button", name="I have repaired it").wait_for()
    assert last(page, "circuit_measured")["reads"] == "good"
    unfolded = page.locator(".harness-parts").last.get_by_text("Within 0.5 V of the working one")
    if not unfolded.is_visible():
        page.get_by_text("Parts and readings").click()
    unfolded.wait_for()

    page.get_by_role("textbox").first.fill("Pin 2 pushed back in")
    phone.tap("I have repaired it")
    page.get_by_role("heading", name="look at the pins").wait_for()
    repaired = last(page, "circuit_repaired")
    assert (repaired["what"], repaired["segment"]) == ("Pin 2 pushed back in", "pins")


def test_colours_are_kept_where_nobody_measured_the_wire_and_a_wire_that_is_typed_sets_the_limit(
    take_screens,
):
    phone = take_screens(width=320)
    page = at_job(phone, at_check("continuity"))
    page.get_by_role("button", name="Bad More than 2 Ω, or open").wait_for()
    page.get_by_text("Wire and pins", exact=True).click()
    keep = page.get_by_role("button", name="Keep the wire")
    assert keep.is_disabled()
    page.get_by_label("Colour, signal").fill("white and blue")
    assert page.locator("[data-circuit='wire'] [role='alert']").count() == 0
    keep.click()

    page.locator(".wire-colours li").get_by_text("Signal: white and blue").wait_for()
    page.get_by_role("button", name="Bad More than 2 Ω, or open").wait_for()
    assert last(page, "wires_marked") == {
        "position": OUTER, "signal_colour": "white and blue", "supply_colour": "", "ground_colour": "",
        "pins": "",
    }  # fmt: skip
    page.get_by_text("Wire and pins", exact=True).click()
    page.get_by_label("Colour, signal").fill("")
    keep.click()
    page.locator(".wire-colours").wait_for(state="detached")
    assert phone.lacking(*SIZES) == {}

    phone.lacking((320, 844, 100))
    page.get_by_text("Wire and pins", exact=True).click()
    wanted = "“Length, cm”: {} does not fit. Wanted: a whole number from 1 to 10000."
    for typed, found in (("4,5 m", '"4,5 m"'), ("50000", "50000"), ("0", "0"), ("-5", "-5"), ("🚗", '"🚗"')):
        page.get_by_label("Length, cm").fill(typed)
        page.get_by_role("alert").get_by_text(wanted.format(found), exact=True).wait_for()
        assert keep.is_disabled()
    page.get_by_label("Length, cm").fill("450")
    page.get_by_label("Size of the wire").select_option("0.5")
    page.get_by_label("Colour, signal").fill("white and blue")
    page.get_by_label("Colour, ground").fill(" brown")
    page.get_by_label("Pins, such as").fill("1 signal, 2 supply, 3 ground")
    keep.click()

    page.get_by_role("button", name="Bad More than 0.68 Ω, or open").wait_for()
    rows = page.locator(".circuit .wire-colours li")
    rows.first.wait_for()
    assert [row.inner_text().strip() for row in rows.all()] == ["Signal: white and blue", "Ground: brown"]
    page.locator(".circuit-place").get_by_text("signal (white and blue)").wait_for()
    assert page.locator(".harness-pin-number").all_text_contents() == ["1", "2", "3"]
    noted = last(page, "wire_noted")
    assert noted == {
        "position": OUTER, "size": "0.5", "centimetres": 450, "celsius": 20,
        "colour": "", "signal_colour": "white and blue", "supply_colour": "", "ground_colour": "brown",
        "pins": "1 signal, 2 supply, 3 ground",
    }  # fmt: skip
    page.get_by_text("Wire and pins", exact=True).click()
    assert page.get_by_label("Colour, signal").input_value() == "white and blue"
    assert phone.lacking(*SIZES) == {}


def test_the_one_colour_of_before_stands_and_goes_along(take_screens):
    driver = at_check("continuity")
    driver.fact(
        "wire_noted", position=OUTER, size="0.5", centimetres=450, celsius=20, colour="violet", pins=""
    )
    page = at_job(take_screens(), driver)
    page.get_by_text("Wire: violet").wait_for()

    page.get_by_text("Wire and pins", exact=True).click()
    page.get_by_label("Colour, supply").fill("red 🔴 " + "and very " * 5)
    page.get_by_role("button", name="Keep the wire").click()

    page.locator(".wire-colours li").get_by_text("Supply: red 🔴").wait_for()
    page.get_by_text("Wire: violet").wait_for()
    noted = last(page, "wire_noted")
    assert (noted["colour"], noted["signal_colour"], noted["supply_colour"][:3]) == ("violet", "", "red")


def offline_at_the_wiring(take_screens, driver):
    """Give a page with no network, at the first check of the driver's job, whose fault stayed."""
    phone = take_screens(worker=True)
    page = at_job(phone, driver)
    wait_for_offline_use(page)
    phone.loses_network()
    page.reload()
    page.locator(".harness").wait_for()
    return page


def asked(page) -> str:
    """Return the heading, on one line."""
    return page.locator("h1").first.inner_text().replace("\n", " ")


def reads(page, how: str) -> None:
    """Answer the check that is asked, and wait for what comes next."""
    heading = asked(page)
    page.locator(f"[data-reads='{how}']").click()
    wait_until(
        page,
        "(before) => document.querySelector('h1').innerText.replaceAll('\\n', ' ') !== before",
        heading,
    )


def read_good_until(page, title: str) -> None:
    """Answer the checks that are asked as good until this is."""
    while title not in asked(page):
        reads(page, "good")


def reads_bad_at(page, title: str) -> None:
    """Answer the checks that are asked as good, the one of this title as bad."""
    read_good_until(page, title)
    reads(page, "bad")


def is_repaired(page) -> None:
    """Say that it is, and wait until the reading that was bad is asked for again."""
    page.get_by_role("button", name="I have repaired it").click()
    page.locator("[data-step='measure.again']").wait_for()


def to_the_close(page) -> list[str]:
    """Tap through what follows a repair, every reading and test being good; return the steps."""
    steps = []
    while True:
        steps.append(page.locator("[data-step]").first.get_attribute("data-step"))
        if steps[-1] == "done":
            return steps
        before = page.locator("main").inner_text()
        goes_on(page, steps[-1])
        wait_until(page, CHANGED, before)


def goes_on(page, step: str) -> None:
    """Do what the step asks for, with nothing wrong."""
    if step.startswith("measure"):
        page.locator("[data-reads='good']").click()
    elif step == "test":
        enters_a_clean_test(page)
    elif step == "home":
        page.get_by_role("button", name="Leave them there").click()
    else:
        page.locator(".main-button").click()


def enters_a_clean_test(page) -> None:
    """Take the answer that is offered for it, else fill in the form."""
    offered = page.locator(".answer", has_text="no fault anywhere")
    form = page.get_by_role("checkbox", name="No fault anywhere")
    again = page.get_by_role("button", name="Enter the new test")
    offered.or_(form).or_(again).first.wait_for()
    if again.count():
        again.click()
        offered.or_(form).first.wait_for()
    if offered.count():
        offered.first.click()
        return
    form.check()
    page.get_by_role("button", name="Sounder heard: record").click()
    # What was filled in has changed the screen before.
    page.locator("[data-step='test'] .panel-act").wait_for(state="detached")


def test_all_is_good_but_the_channel_offline_to_the_close(take_screens):
    page = offline_at_the_wiring(take_screens, after_the_swap(OUTER))

    reads_bad_at(page, "exchange two channels")
    page.get_by_role("heading", name="it is in the channel of the control unit").wait_for()
    assert page.evaluate(STATES)["7"] == "named"
    page.get_by_role("textbox").first.fill("Control unit replaced and set up")
    is_repaired(page)

    steps = to_the_close(page)
    assert {"measure.again", "test"} <= set(steps)
    assert steps[-3:] == ["walk", "home", "done"]
    assert last(page, "circuit_repaired")["segment"] == "channel"


def test_a_contact_that_comes_and_goes_when_it_is_moved_offline_to_the_close(take_screens):
    page = offline_at_the_wiring(take_screens, after_the_swap(OUTER))

    reads_bad_at(page, "move the plug during the test")
    read_good_until(page, "wiring checks at right outer are done")
    page.locator(".circuit-where").get_by_text("the pins of the sensor's plug").wait_for()
    page.get_by_role("radio", name="Sensor pins").check()
    is_repaired(page)

    steps = to_the_close(page)
    assert {"measure.again", "test"} <= set(steps)
    assert steps[-3:] == ["walk", "home", "done"]
