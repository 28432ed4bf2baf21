"""The screens of the exchange, the wiring checks, the replacement and the end, as a hand meets them."""

import pytest

from tests.browser.phone_log import facts
from tests.browser.seeded_job import job_driver
from tests.browser.seeded_job import label
from tests.browser.seeded_job import open_job
from tests.browser_support import Complaints
from tests.static.app_server import AppServer
from tests.static.test_scanner import qr
from tests.waiting import wait_for

# Everything that can be tapped and is smaller than a finger. A box inside a tile is as large as its tile.
TOO_SMALL = """() => [...document.querySelectorAll('button, a, input, textarea, summary')]
  .filter((part) => !part.matches('.check input, .choice input, .aloud'))
  .map((part) => [part.textContent.trim() || part.tagName, part.getBoundingClientRect()])
  .filter(([, box]) => box.width && box.height && (box.width < 47.5 || box.height < 47.5))
  .map(([words, box]) => `${words} ${Math.round(box.width)} x ${Math.round(box.height)}`)"""

# A screen that scrolls sideways, or a part that sticks out of it.
TOO_WIDE = """() => [...document.querySelectorAll('.screen *')]
  .filter((part) => !part.closest('.aloud, .trail-scroll, svg') && part.getBoundingClientRect().width)
  .filter((part) => part.getBoundingClientRect().right > innerWidth + 0.5)
  .map((part) => part.className || part.tagName)
  .concat(document.documentElement.scrollWidth > innerWidth ? ['the page scrolls sideways'] : [])"""


@pytest.fixture(scope="module")
def server(tmp_path_factory):
    """Give the app at an address; nothing is sent to it, the phones are not paired."""
    server = AppServer(tmp_path_factory.mktemp("exchange") / "data")
    yield server
    server.close()


@pytest.fixture
def phone(camera_browser, server, camera):
    """Give a maker of phones that stand at the driver's step; fails on anything the browser objects to."""
    camera.show()
    complaints = Complaints(server.base)
    contexts = []

    def make(driver, part="", **options):
        options.setdefault("viewport", {"width": 390, "height": 844})
        context = camera_browser.new_context(permissions=["camera"], **options)
        contexts.append(context)
        return open_job(context, server.base, driver, complaints, part)

    yield make
    for context in contexts:
        context.close()
    assert complaints.heard == []


def at_first_pull():
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    driver.fact(
        "move_started",
        move="exchange",
        fitted={
            "rear-right-outer": "v1.rear-right-inner",
            "rear-right-inner": "v1.rear-right-outer",
        },
        position="",
        reason="to see",
    )
    return driver


def at_first_fit():
    driver = at_first_pull()
    while driver.step()["id"] == "pull":
        driver.scan_wanted()
    return driver


def after_the_swap(faulted):
    driver = at_first_fit()
    driver.guided()
    driver.test(faulted)
    return driver


def at_the_end(step):
    driver = after_the_swap("rear-right-inner")
    driver.photograph()
    while driver.view()["reasoning"]["verdict"] is None:
        driver.test("rear-right-inner")
    driver.new_unit("rear-right-inner")
    driver.guided()
    driver.test()
    while driver.step()["id"] != step:
        if driver.step()["form"] == "test":
            driver.test()
        else:
            driver.tap()
    return driver


def with_another_in_hand(driver):
    """Let a second sensor be in hand, so that each is told from the other before it is put away."""
    driver.labels["u00000000more"] = driver._fresh()
    driver.fact("unit_added", unit="u00000000more", part="PS-1", serial="", how="scanned", place="out",
                code=driver.labels["u00000000more"])  # fmt: skip
    driver.tap()
    return driver


def to_be_closed():
    """Let the one in hand go to the counter; the job is not closed yet."""
    driver = at_the_end("home")
    *settling, _ = driver.step()["choices"][0]["events"]
    driver.record(*settling)
    return driver


def right_and_wrong(driver):
    """Return the code that belongs at the present step, and the other sensor's."""
    wanted = driver.step()["expects"]["unit"]
    return driver.labels[wanted], next(c for u, c in driver.labels.items() if u != wanted)


def shown(code):
    return f"{code[:3]}-{code[3:]}"


def has_room(page, screen):
    """Hold the screen to the room of a narrow phone, also with doubled text."""
    before = page.viewport_size
    page.set_viewport_size({"width": 320, "height": 640})
    assert page.evaluate(TOO_SMALL) == [], screen
    assert page.evaluate(TOO_WIDE) == [], screen
    page.evaluate("document.documentElement.style.fontSize = '225%'")  # 200 % of the app's own 112.5 %
    assert page.evaluate(TOO_WIDE) == [], screen
    page.evaluate("document.documentElement.style.fontSize = ''")
    page.set_viewport_size(before)


def press(page, name):
    page.get_by_role("button", name=name, exact=True).click()


def told(page, words):
    """Wait until the line under the heading of the exchange says what to do now."""
    page.locator(".instruction").filter(has_text=words).wait_for()


def type_code(page, code):
    other = page.get_by_text("Other ways, serial number")
    if other.count() and not page.get_by_role("button", name="Type the code").is_visible():
        other.click()
    press(page, "Type the code")
    page.get_by_label("Code on the label").fill(code)
    press(page, "Check the code")


def last(page, kind):
    """Wait for a fact of this kind and return the data of the latest."""
    found = []

    def is_recorded():
        found[:] = [fact["data"] for fact in facts(page) if fact["kind"] == kind]
        return found

    wait_for(is_recorded)
    return found[-1]


def test_the_wrong_sensor_that_is_typed_is_stopped_with_both_names_until_the_right_one_is(phone):
    driver = at_first_fit()
    right, wrong = right_and_wrong(driver)
    page = phone(driver)
    has_room(page, "fit")

    # A slip of the finger says what is wrong and keeps what was typed.
    type_code(page, "K7F3A")
    page.get_by_text("the check character does not fit").wait_for()
    assert page.get_by_label("Code on the label").input_value() == "K7F3A"
    has_room(page, "typed")

    page.get_by_label("Code on the label").fill(wrong.lower())
    press(page, "Check the code")
    stop = page.get_by_role("alert")
    stop.get_by_text("STOP: wrong sensor in your hand").wait_for()
    assert shown(wrong) in stop.inner_text()
    assert shown(right) in stop.inner_text()
    assert last(page, "mixup_stopped")["seen"] == wrong
    page.reload()
    page.get_by_text("STOP: wrong sensor in your hand").wait_for()

    # Two characters of a label that suffered are enough, and the wrong one is stopped just so.
    press(page, "Type the code")
    page.get_by_label("Code on the label").fill(wrong[:2].lower())
    page.get_by_role("button", name=shown(wrong)).click()
    stop.get_by_text("STOP: wrong sensor in your hand").wait_for()
    stops = [fact["data"]["seen"] for fact in facts(page) if fact["kind"] == "mixup_stopped"]
    assert stops == [wrong, wrong]

    press(page, "Type the code")
    page.get_by_label("Code on the label").fill(right[2:4])
    page.get_by_text("Tap it only if all you can still read is the same.").wait_for()
    page.get_by_role("button", name=shown(right)).wait_for()
    has_room(page, "half typed")
    page.get_by_role("button", name=shown(right)).click()
    told(page, f"Fit {shown(wrong)}")
    assert last(page, "unit_fitted")["how"] == "typed"

    type_code(page, wrong)
    page.get_by_role("heading", name="Both in, and locked?").wait_for()
    fitted = [fact["data"]["how"] for fact in facts(page) if fact["kind"] == "unit_fitted"]
    assert fitted == ["typed", "typed"]


def test_the_camera_stays_open_from_a_foreign_code_to_the_labels_one_after_the_other(phone, camera, server):
    driver = at_first_fit()
    right, other = right_and_wrong(driver)
    page = phone(driver)
    address = page.url

    press(page, "Scan the sensor")
    page.get_by_text("About 20 cm away").wait_for()
    has_room(page, "camera")
    # What is no label is shown as text and never opened.
    camera.show(qr("HTTPS://EXAMPLE.ORG/OFFER"))
    page.get_by_text("HTTPS://EXAMPLE.ORG/OFFER").wait_for()
    assert page.get_by_role("link", name="EXAMPLE").count() == 0
    assert page.url == address
    camera.show()
    press(page, "Scan again")
    page.get_by_text("About 20 cm away").wait_for()

    camera.show(qr(label(server.base, right)))
    told(page, f"Fit {shown(other)}")
    assert last(page, "unit_fitted")["how"] == "scanned"
    camera.show(qr(label(server.base, other)))

    page.get_by_role("heading", name="Both in, and locked?").wait_for()
    fitted = [fact["data"]["how"] for fact in facts(page) if fact["kind"] == "unit_fitted"]
    assert fitted == ["scanned", "scanned"]
    press(page, "Both in and locked")
    page.get_by_role("heading", name="Run the self-test").wait_for()
    locked = [fact["data"]["position"] for fact in facts(page) if fact["kind"] == "connector_locked"]
    assert sorted(locked) == ["rear-right-inner", "rear-right-outer"]


def test_of_two_labels_in_view_the_one_in_the_hand_is_asked_for(phone, camera, server):
    driver = at_first_fit()
    right, wrong = right_and_wrong(driver)
    page = phone(driver)
    camera.show(qr(label(server.base, wrong)), qr(label(server.base, right)))

    press(page, "Scan the sensor")
    page.get_by_text("2 labels are in view").wait_for()
    camera.show()
    press(page, shown(right))

    told(page, f"Fit {shown(wrong)}")
    assert last(page, "unit_fitted")["how"] == "scanned"


def cautions_stand(page, way):
    """With the camera carried on from the pictures, nothing else says to turn the key off."""
    page.locator(".instruction").wait_for()
    line = page.locator(".caution-line")
    assert line.get_by_text("Key off to unplug").is_visible(), way
    assert line.get_by_text("Leave airbag wiring").is_visible(), way


def test_the_cautions_of_a_pull_stand_whether_its_label_is_scanned_or_typed(phone):
    page = phone(at_first_pull())
    has_room(page, "pull")
    for way in ("Scan its label", "Type the code"):
        page.get_by_role("button", name=way).click()
        cautions_stand(page, way)


def test_without_a_printed_label_a_code_is_written_by_hand(phone):
    page = phone(at_first_pull())

    page.get_by_role("button", name="No label at hand: write a code by hand").click()
    cautions_stand(page, "written")
    code = page.locator(".written-code").inner_text()
    page.reload()  # the same code is still offered: it may be on the tape by now
    page.get_by_text(code).wait_for()
    press(page, "It is written")

    labelled = last(page, "unit_labelled")
    assert labelled["how"] == "written"
    assert shown(labelled["code"]) == code
    # Who wrote one has no label for the next either; and no camera reads what a pen wrote.
    page.locator(".main-button", has_text="Write a code by hand").click()
    press(page, "It is written")
    told(page, f"Fit {code}")
    page.get_by_text("Tap the code on the sensor in your hand first").wait_for()
    assert page.locator(".main-button").count() == 0
    press(page, code)
    other = shown(last(page, "unit_labelled")["code"])
    told(page, f"Fit {other}")
    press(page, other)
    page.get_by_role("heading", name="Both in, and locked?").wait_for()


def test_a_sensor_still_fitted_with_a_written_label_is_among_those_to_tap(phone):
    """The new one is in hand already, and was the only one that could be tapped: a stop each time."""
    driver = at_first_pull()
    while driver.step()["id"] == "pull":
        driver.scan_wanted(how="written")
    driver.guided()
    driver.test("rear-right-inner")
    driver.photograph()
    driver.new_unit("rear-right-inner")
    wanted = driver.labels[driver.step()["expects"]["unit"]]
    page = phone(driver)

    told(page, f"Pull {shown(wanted)}")
    offered = page.locator(".which-button").all_inner_texts()
    assert sorted(offered) == sorted([shown(wanted), shown(driver.labels["u00000000new1"])])
    press(page, shown(wanted))

    told(page, "Fit ")
    assert last(page, "unit_pulled")["position"] == "rear-right-inner"


def test_another_part_number_needs_a_reason_that_stands_at_the_fit(phone):
    driver = after_the_swap("rear-right-inner")
    driver.photograph()
    while driver.view()["reasoning"]["verdict"] is None:
        driver.test("rear-right-inner")
    page = phone(driver)

    page.get_by_label("New sensor").fill("PS-2")
    page.get_by_text("Another part number: it differs from character 4").wait_for()
    code = driver._fresh()
    press(page, "Label the new sensor")
    page.locator(".scan-live").wait_for()
    type_code(page, code)
    page.get_by_text("Another part number needs a reason").wait_for()
    page.get_by_label("Why it is used all the same").fill("successor, says the dealer")
    page.get_by_role("button", name=shown(code)).click()
    told(page, "Pull ")

    assert last(page, "unit_added")["part"] == "PS-2"
    assert last(page, "move_started")["reason"] == "successor, says the dealer"
    type_code(page, right_and_wrong(driver_after(driver, page))[0])
    told(page, "Fit ")
    type_code(page, last(page, "unit_added")["code"])
    page.get_by_role("heading", name="Push home").wait_for()
    assert last(page, "unit_fitted")["override"] == "successor, says the dealer"


def driver_after(driver, page):
    """Let the driver catch up with what the page has recorded since."""
    for fact in facts(page)[len(driver.events) :]:
        driver.force(fact["kind"], **fact["data"])
    return driver


def test_a_replacement_chosen_among_the_moves_asks_for_a_sensor_whose_number_is_the_same_as_typed(phone):
    driver = after_the_swap("rear-right-inner")
    driver.photograph()
    while driver.view()["reasoning"]["verdict"] is None:
        driver.test("rear-right-inner")
    page = phone(driver, "/moves")

    press(page, "Fit a new sensor")
    # Small letters and spaces are no other part number.
    page.get_by_label("New sensor").fill("ps -1")
    page.get_by_text("Same part number").wait_for()
    type_code(page, driver._fresh())

    page.get_by_text("Replacement · 1 of 3").wait_for()
    assert last(page, "unit_added")["part"] == "PS-1"
    assert last(page, "move_started")["move"] == "replace"
    assert list(last(page, "move_started")["fitted"]) == ["rear-right-inner"]


def measuring(check):
    """Return a driver whose job asks for a check of the wiring, and what it shows once that was made."""
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    driver.fact("move_started", move="meter", fitted={}, position="rear-right-outer", reason="to see")
    while driver.step()["expects"]["check"] != check:
        driver.choose(2)
    return driver, f"Check · {driver.step()['progress']['now'] + 1} of"


def test_a_measured_figure_is_recorded_with_its_reading(phone):
    driver, then = measuring("continuity")
    page = phone(driver)

    page.get_by_label("Measured").fill("4,7")
    press(page, "Bad More than 2 Ω, or open")

    page.get_by_text(then).wait_for()
    measured = last(page, "circuit_measured")
    assert (measured["check"], measured["value"], measured["reads"]) == ("continuity", "4,7 Ω", "bad")


def test_good_beside_a_figure_that_says_bad_wants_a_reason_and_open_is_a_figure_of_its_own(phone):
    driver, then = measuring("continuity")
    page = phone(driver)

    page.get_by_label("Measured, if").fill("-5")
    press(page, "Good 2 Ω or less")
    page.get_by_text('Found "-5 Ω", wanted ohms from 0').wait_for()
    page.get_by_label("Measured, if").fill("5")
    page.get_by_label("Unit", exact=True).select_option("kΩ")
    press(page, "Good 2 Ω or less")
    page.get_by_text("Right outer has 5 kΩ. By the limit that is bad").wait_for()
    page.get_by_label("Reason, kept on record").fill("wrong pin")
    press(page, "Record it for this reason")

    page.get_by_text(then).wait_for()
    measured = last(page, "circuit_measured")
    assert (measured["value"], measured["reads"], measured["override"]) == ("5 kΩ", "good", "wrong pin")

    then = is_measuring(page, driver, "to-ground")
    page.get_by_label("Unit", exact=True).select_option("OL")
    assert page.get_by_label("Measured, if").is_disabled()
    press(page, "Good Open")

    page.get_by_text(then).wait_for()
    assert last(page, "circuit_measured")["value"] == "OL"


def test_a_figure_is_recorded_with_the_one_where_it_works(phone):
    driver, then = measuring("supply")
    page = phone(driver)

    page.get_by_label("Measured, if").fill("850")
    page.get_by_label("Unit", exact=True).first.select_option("mV")
    page.get_by_label("The same where it works").fill("12,1")
    press(page, "Bad Lower, or nothing")

    page.get_by_text(then).wait_for()
    measured = last(page, "circuit_measured")
    assert (measured["value"], measured["compared"]) == ("850 mV", "12,1 V")


def is_measuring(page, driver, check):
    """Answer the checks on the page as unclear until this is asked; return what it shows once it was made."""
    while True:
        step = driver_after(driver, page).step()
        then = f"Check · {step['progress']['now'] + 1} of"
        if step["expects"]["check"] == check:
            return then
        page.locator("[data-reads='unclear']").click()
        page.get_by_text(then).wait_for()


def test_what_is_not_so_at_the_fit_is_put_right_before_it_goes_on(phone):
    driver = after_the_swap("rear-right-inner")
    driver.new_unit("rear-right-inner")
    while driver.step()["form"] != "checklist":
        if driver.step()["form"] == "scan":
            driver.scan_wanted()
        else:
            driver.tap()
    page = phone(driver)

    page.get_by_role("button", name="Bore").click()
    page.get_by_text("Put it right, then tap it once more.").wait_for()
    assert page.get_by_role("button", name="1 to put right").is_disabled()
    page.get_by_role("button", name="Bore").click()
    press(page, "All of it is right at both")

    assert len(last(page, "fit_checked")["checks"]) == 6
    checked = [fact["data"]["position"] for fact in facts(page) if fact["kind"] == "fit_checked"]
    assert sorted(checked) == ["rear-right-inner", "rear-right-outer"]


def test_what_stays_quiet_on_the_walk_is_recorded(phone):
    page = phone(at_the_end("walk"))
    has_room(page, "walk")

    press(page, "left outer")
    press(page, "Save: 1 quiet")

    walked = last(page, "walk_checked")
    assert walked["missed"] == ["rear-left-outer"]
    assert len(walked["positions"]) == 3


def test_the_only_sensor_in_hand_goes_where_a_tap_says(phone):
    page = phone(at_the_end("home"))
    has_room(page, "last")

    press(page, "To the parts counter")

    moved = last(page, "unit_moved")
    assert (moved["place"], moved["how"], moved["alone"]) == ("counter", "tapped", True)
    left = last(page, "left_deliberately")
    assert (left["position"], left["reason"]) == ("rear-right-outer", "tested-there")
    page.get_by_role("heading", name="This job is closed").wait_for()
    has_room(page, "done")


def test_where_one_of_several_sensors_goes_is_proven_by_its_label(phone):
    driver = with_another_in_hand(at_the_end("home"))
    code = driver.labels[driver.step()["expects"]["unit"]]
    page = phone(driver)
    has_room(page, "where to")

    type_code(page, code)
    page.get_by_text(f"This is {shown(code)}, typed.").wait_for()
    press(page, "Save where it goes")
    page.get_by_text("Tap where it goes first").wait_for()
    page.get_by_role("radio", name="To the parts counter").check()
    press(page, "Save where it goes")

    page.get_by_text("It is the only one in your hand.").wait_for()
    moved = last(page, "unit_moved")
    assert (moved["place"], moved["how"]) == ("counter", "typed")
    press(page, "The customer keeps it")
    page.get_by_role("heading", name="This job is closed").wait_for()
    page.get_by_text("What it came to").click()
    page.get_by_text("Where each sensor is").wait_for()


# What there is on these parts of a job.
AT = {"/moves": ".move", "/trail": ".trail-key"}
# The screens that no story above is at: each job and the parts of it that are looked at.
SCREENS = {
    "swapped": (lambda: after_the_swap("rear-right-inner"), ["", "/moves", "/trail"]),
    "stayed": (lambda: after_the_swap("rear-right-outer"), [""]),
    "close": (to_be_closed, [""]),
}


@pytest.mark.parametrize("screen", SCREENS)
def test_targets_are_large_and_nothing_sticks_out_on_a_narrow_phone_or_with_doubled_text(phone, screen):
    make, parts = SCREENS[screen]
    page = phone(make(), parts[0])
    job = page.url
    for part in parts:
        if part:
            page.goto(job + part)
            page.locator(AT[part]).first.wait_for()
        has_room(page, screen + part)
