"""A hand scanner that types, at the counter: nothing is tapped, however it sends its separators."""

import time
from string import ascii_letters

import pytest

from server.core.codes.labels import address
from tests.browser import phone_log
from tests.browser.clerk import scans_label
from tests.browser.returned import serial_of
from tests.browser_support import wait_until
from tests.static.symbols import envelope

# What the German layout makes of the keys that a US scanner presses (xkb).
_GERMAN = {":": "Ö", "/": "-", "-": "ß", "[": "ü", ")": "=", ">": ":", "]": "+", "Y": "Z", "Z": "Y"}


@pytest.fixture
def counter(clerk_at):
    """Give a clerk with a wide screen, and the labels of eight sensors."""
    return clerk_at(8, size=(1280, 800))


def received(clerk, code):
    """Return part number and serial that went on record with a label's return."""
    found = [each["data"] for each in phone_log.facts(clerk.page) if each["kind"] == "return_received"]
    return [(each["part"], each["serial"], each["how"]) for each in found if each["code"] == code]


def decided(page):
    """Return the decisions on record, the oldest first."""
    return [each["data"] for each in phone_log.facts(page) if each["kind"] == "return_decided"]


def test_every_way_of_sending_separators_ends_in_the_same_numbers(counter):
    clerk, codes = counter
    wedge = clerk.wedge
    ways = ["ctrl", "alt", "raw", "arrows"]
    for number, way in enumerate(ways):
        code = codes[number]
        # The sign of the sort of symbol before it, as AIM has them: ]Q1 QR, ]d1 Data Matrix, ]C0 Code 128.
        wedge.scans(f"]Q1{address(code, clerk.server.base)}", end="Enter" if number % 2 else "")
        clerk.sees(code, "hold")
        sort = "]d1" if number < 2 else "]C0"
        wedge.scans(
            sort + envelope("1PPS-1", f"S{serial_of(number)}"),
            separators=way,
            end="Tab" if number % 2 else "",
        )
        clerk.sees(code, "accept")
        clerk.phone.tap("Accept ")
        clerk.page.locator(".decided").wait_for()
        assert received(clerk, code) == [("PS-1", serial_of(number), "scanned")], way

    # Without separators nothing tells where a number ends: nothing is guessed.
    scans_label(clerk, codes[4])
    wedge.scans(envelope("1PPS-1", f"S{serial_of(4)}"), separators="none")
    clerk.phone.see("The scanner leaves separators out")
    clerk.sees(codes[4], "hold")
    # With Caps Lock on, letters come the other way round: the label is read, its symbol is not guessed.
    swapped = {letter: letter.swapcase() for letter in ascii_letters}
    wedge.scans(address(codes[5], clerk.server.base), layout=swapped)
    clerk.sees(codes[5], "hold")
    wedge.scans(envelope("1PPS-1", f"S{serial_of(5)}"), layout=swapped)
    clerk.phone.see("Capitals and small letters are turned around")
    clerk.sees(codes[5], "hold")
    wedge.scans(serial_of(5), layout=swapped)  # in bars, a number is the same in any letters
    clerk.sees(codes[5], "accept")
    scans_label(clerk, codes[4])
    # In bars that say nothing but the number, the record says what it is.
    wedge.scans(f"]C0{serial_of(4)}")
    clerk.sees(codes[4], "accept")
    assert clerk.page.evaluate("document.activeElement.tagName") != "INPUT"


def test_it_reads_on_every_screen_and_its_enter_presses_no_button(counter):
    clerk, codes = counter
    page, wedge, phone = clerk.page, clerk.wedge, clerk.phone
    wedge.scans(address(codes[0], clerk.server.base).lower())
    clerk.sees(codes[0], "hold")
    before = len(phone_log.entries(page))
    page.locator(".main-button").focus()
    scans_label(clerk, codes[1])
    page.locator(".main-button").focus()
    wedge.scans(codes[2][:3])  # too short for a code
    scans_label(clerk, codes[0])  # in its turn: after all that the Enters may have begun
    assert len(phone_log.entries(page)) == before, "no Enter of a code decided anything"

    for screen in ("returns", "search", "you"):
        page.goto(f"{clerk.server.base}/#/{screen}")
        page.locator(".proposal").wait_for(state="detached")
        if screen == "search":
            page.get_by_label("What do you look for").fill("estate")
            page.get_by_label("What do you look for").focus()
        scans_label(clerk, codes[3 + len(screen) % 2])
    page.goto(f"{clerk.server.base}/#/search")
    assert page.get_by_label("What do you look for").input_value() == "estate", "what a person typed is left"

    page.goto(f"{clerk.server.base}/#/")
    german = address(codes[5], clerk.server.base).upper()
    wedge.scans(german, layout=_GERMAN)
    phone.see("The scanner types for another keyboard")
    phone.tap("Only looked")
    page.get_by_text("Hand scanner", exact=True).click()
    page.get_by_label("What it types before each code").fill("~9")
    phone.tap("Keep this")
    wedge.scans(f"~9{codes[5]}")
    clerk.sees(codes[5], "hold")
    assert decided(page) == []


def test_a_symbol_counts_for_the_label_it_was_read_with_and_else_is_asked_about(counter):
    clerk, codes = counter
    page, wedge, phone = clerk.page, clerk.wedge, clerk.phone
    page.clock.install()
    scans_label(clerk, codes[0])
    page.clock.fast_forward(5200)  # longer than one look at a part
    wedge.scans(serial_of(1))  # the next part's bag, before its label
    phone.see("Which part is this symbol on?")
    clerk.sees(codes[0], "hold")
    phone.tap("On another one")
    phone.see("The label first")
    clerk.sees(codes[0], "hold")
    wedge.scans(serial_of(0))
    phone.see("Which part is this symbol on?")
    phone.tap(f"On {codes[0][:3]}-")
    clerk.sees(codes[0], "accept")

    scans_label(clerk, codes[2])
    page.get_by_text("Type its serial number").click()
    page.get_by_label("Serial number, as printed").press_sequentially(serial_of(2), delay=90)
    page.keyboard.press("Enter")
    clerk.sees(codes[2], "accept")
    wait_until(page, "() => !document.querySelector('.compare')")


def test_the_bag_of_the_next_part_asks_for_its_label_first(counter):
    clerk, codes = counter
    bags = {envelope("1PPS-1", f"S{serial_of(0)}"): f"PS-1, {serial_of(0)}", "123456789012": "123456789012"}
    for bag, numbers in bags.items():
        clerk.wedge.scans(bag)
        clerk.phone.see(f"It holds {numbers}. Read the label of that part, then its symbol.")
        scans_label(clerk, codes[0])
        clerk.phone.tap("Only looked")
    clerk.wedge.scans("https://parts.example/x")
    clerk.phone.see("It holds: https://parts.example/x")


def test_a_wide_screen_shows_all_three_and_each_decision_has_a_key(counter):
    clerk, codes = counter
    page, wedge = clerk.page, clerk.wedge
    queue, day = (
        page.get_by_role("complementary", name="What waits"),
        page.get_by_role("complementary", name="Day"),
    )
    scans_label(clerk, codes[0])
    page.keyboard.press("F9")  # not as proposed: its reason is asked for, and none is made up
    page.get_by_role("radio", name="Refuse").and_(page.locator(":checked")).wait_for()
    page.keyboard.press("F9")
    clerk.phone.see("Say what you decide, and give a reason")
    page.get_by_role("radio", name="Looked at by hand").check()
    page.keyboard.press("F9")
    day.get_by_text("Looked at by hand").wait_for()
    for code in codes[1:4]:
        scans_label(clerk, code)
        page.keyboard.press("F8")
        queue.get_by_text(f"{code[:3]}-{code[3:]}").wait_for()
    assert (
        queue.bounding_box()["x"]
        < page.locator(".counter-station > div").bounding_box()["x"]
        < day.bounding_box()["x"]
    )
    clerk.looks()

    scans_label(clerk, codes[4])
    wedge.scans(serial_of(4))
    clerk.sees(codes[4], "accept")
    clerk.looks()
    page.keyboard.press("F2")
    day.get_by_text(f"{codes[4][:3]}-{codes[4][3:]}").wait_for()

    queue.get_by_role("button", name="Decide these 3 together").click()
    page.get_by_role("button", name="Accept: 3").click()
    clerk.phone.see("Say what you decide, and give a reason")
    page.get_by_label("Your reason, where").fill("Serials read at the bench")
    page.get_by_role("button", name="Accept: 3").click()
    clerk.phone.see("Nothing waits")
    made = decided(page)
    assert [each["decision"] for each in made] == ["refuse", "hold", "hold", "hold", "accept"] + [
        "accept"
    ] * 3
    assert {each["overrule"] for each in made[-3:]} == {"Serials read at the bench"}


BUSY = """() => { setTimeout(() => {
  const until = performance.now() + 1200;
  while (performance.now() < until);
}); }"""


def test_no_scan_is_lost_where_the_hand_is_faster_than_the_computer(counter):
    clerk, codes = counter
    page, wedge = clerk.page, clerk.wedge
    base = clerk.server.base
    for number in range(3):  # label and serial of each, with no look at the screen
        page.evaluate(BUSY)
        wedge.scans(address(codes[number], base))
        wedge.scans(serial_of(number))
    clerk.sees(codes[2], "accept")
    assert page.locator(".panel-ask").filter(has_text="Which sensor").count() == 0

    page.goto(f"{base}/#/returns")
    page.locator(".day-nav").wait_for()
    wedge.scans(address(codes[3], base))
    wedge.scans(serial_of(3))
    clerk.sees(codes[3], "accept")

    # A part from the queue is decided, and the next one scanned before the first screen is back.
    scans_label(clerk, codes[4])
    page.keyboard.press("F8")
    page.get_by_role("complementary", name="What waits").get_by_role("link").first.click()
    clerk.sees(codes[4], "hold")
    page.evaluate(BUSY)
    wedge.presses("F8")
    wedge.scans(address(codes[5], base))
    clerk.sees(codes[5], "hold")
    assert [each["unit"] for each in decided(page)] == [f"v{4:012x}.rear-right-outer"] * 2


def test_two_codes_without_an_enter_are_two_though_the_clock_is_behind_the_keys(counter):
    clerk, codes = counter
    # A browser says of a key older than its page that it was pressed as the page began.
    wait_until(clerk.page, "() => performance.now() > 2000")
    began = time.time() - 2
    clerk.wedge.types(address(codes[0], clerk.server.base), began)
    clerk.wedge.types(serial_of(0), began + 1.2)  # the computer was busy: it hears both at one moment
    clerk.wedge.hand_over()
    clerk.sees(codes[0], "accept")
    # Without a pause either, each of two that has a beginning is a code of its own.
    label, bag = address(codes[1], clerk.server.base), envelope("1PPS-1", f"S{serial_of(1)}")
    clerk.wedge.scans(f"]Q1{label}]d1{bag}")
    clerk.sees(codes[1], "accept")
    clerk.wedge.scans(address(codes[2], clerk.server.base) + bag)
    clerk.sees(codes[2], "refuse")
    clerk.wedge.scans(bag + address(codes[3], clerk.server.base) + address(codes[4], clerk.server.base))
    clerk.phone.see("2 labels are in view")


def begins(clerk, code, cut):
    """Let the beginning of a code be typed, and return what types its rest, pressed without a pause."""
    began = time.time()
    clerk.wedge.types(code[:cut], began)
    clerk.wedge.hand_over()

    def goes_on():
        clerk.wedge.types(code[cut:], began + 0.4)
        clerk.wedge.hand_over()

    return goes_on


def test_a_code_whose_rest_comes_later_than_any_pause_is_read_whole(counter):
    clerk, codes = counter
    goes_on = begins(clerk, address(codes[0], clerk.server.base), 12)
    clerk.page.get_by_text("This is not one of your labels").wait_for()
    goes_on()
    clerk.sees(codes[0], "hold")
    assert clerk.page.get_by_text("This is not one of your labels").count() == 0

    goes_on = begins(clerk, envelope("1PPS-1", f"S{serial_of(0)}"), 19)
    clerk.sees(codes[0], "refuse")  # the beginning is no number that it has
    goes_on()
    clerk.sees(codes[0], "accept")


def test_a_computer_that_is_busy_all_the_time_takes_a_code_all_the_same(counter):
    clerk, codes = counter
    scans_label(clerk, codes[0])
    clerk.page.clock.install()
    clerk.wedge.scans(serial_of(0), end="")
    clerk.page.clock.fast_forward(600)
    clerk.phone.see(f"Waiting for the rest of {serial_of(0)}")
    clerk.phone.see("Press Enter if that is all.")
    for _ in range(3):
        clerk.page.clock.fast_forward(4000)  # each look at the clock comes seconds late
    assert clerk.page.locator(".checking").count() == 0
    clerk.sees(codes[0], "accept")


# The computer comes to nothing that is asked for later than in a second, however long a test takes to go on.
LATER_STANDS_STILL = """() => {
  const { setTimeout } = globalThis;
  globalThis.setTimeout = (run, ms, ...more) => (ms > 1000 ? 0 : setTimeout(run, ms, ...more));
  globalThis.laterGoesOn = () => { globalThis.setTimeout = setTimeout; };
}"""


def test_a_symbol_that_has_not_ended_is_not_read_after_a_short_pause(counter):
    clerk, codes = counter
    scans_label(clerk, codes[0])
    clerk.page.evaluate(LATER_STANDS_STILL)
    goes_on = begins(clerk, envelope("1PPS-1", f"S{serial_of(0)}"), 17)
    clerk.page.wait_for_timeout(1200)
    clerk.sees(codes[0], "hold")
    clerk.page.evaluate("laterGoesOn()")
    goes_on()
    clerk.sees(codes[0], "accept")


def at_its_beginning(clerk_at):
    """Give a clerk with a label at hand, of whose serial number was typed what is another part's number."""
    clerk, codes = clerk_at(12, size=(1280, 800))
    scans_label(clerk, codes[11])
    watch = """() => {
      globalThis.proposed = [];
      const see = () => globalThis.proposed.push(document.querySelector('.proposal')?.dataset.proposed);
      new MutationObserver(see).observe(document.body, { subtree: true, childList: true, attributes: true });
    }"""
    clerk.page.evaluate(watch)
    clerk.page.evaluate(LATER_STANDS_STILL)
    assert serial_of(11)[:-1] == serial_of(1)
    return clerk, codes, begins(clerk, serial_of(11), len(serial_of(1)))


def test_no_other_part_is_shown_while_a_number_may_go_on(clerk_at):
    clerk, codes, goes_on = at_its_beginning(clerk_at)
    clerk.page.wait_for_timeout(900)
    clerk.phone.see(f"Waiting for the rest of {serial_of(1)}")
    clerk.page.evaluate("laterGoesOn()")
    goes_on()
    clerk.sees(codes[11], "accept")
    assert clerk.page.get_by_text("Waiting for the rest").count() == 0
    assert "refuse" not in clerk.page.evaluate("() => globalThis.proposed")


@pytest.mark.parametrize("how", ["key", "tap"])
def test_a_decision_before_a_number_is_at_rest_looks_it_up_first(clerk_at, how):
    clerk, codes, _ = at_its_beginning(clerk_at)
    if how == "key":
        clerk.wedge.presses("F8")
    else:
        clerk.page.get_by_role("button", name="Hold").first.click()
    clerk.sees(codes[11], "refuse")
    assert decided(clerk.page) == []
