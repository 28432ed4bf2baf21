"""Slips at the counter: printed here at once, and those that the printer at the server left to a person."""

import pytest

from server.slips import place
from server.slips.kept import FILE
from server.slips.kept import Waiting
from server.slips.slip import Slip
from server.slips.spool import EXTENSION
from server.slips.spool import Spool
from tests.browser import phone_log
from tests.browser.clerk import scans_label
from tests.browser.returned import serial_of
from tests.browser_support import wait_until
from tests.waiting import wait_for

_PRINTS = """() => {
  window.printed = [];
  window.print = () => {
    window.printed.push(document.querySelector('.sheet').innerText);
    setTimeout(() => dispatchEvent(new Event('afterprint')), 100);
  };
}"""


@pytest.fixture
def app_server(app_server, tmp_path):
    """Give one with a printer, which nobody has started."""
    printer = place.checked(f"zpl:{tmp_path / 'slips.zpl'}")
    app_server.app.extensions[EXTENSION] = Spool(printer, app_server.data / FILE)
    return app_server


@pytest.fixture
def counter(clerk_at):
    return clerk_at(2)


def chooses(page, way):
    page.get_by_text("A slip after each decision").click()
    page.get_by_role("radio", name=way).check()
    wait_until(page, "() => document.querySelector('details[open] input:checked')")


def test_a_slip_is_printed_here_at_once_and_the_counter_goes_on(counter):
    clerk, codes = counter
    page = clerk.page
    page.evaluate(_PRINTS)
    chooses(page, "Print it here at once")
    scans_label(clerk, codes[0])
    clerk.wedge.scans(serial_of(0))
    clerk.sees(codes[0], "accept")
    clerk.phone.tap("Accept ")
    wait_until(page, "() => window.printed.length === 1 && !document.querySelector('.sheet')")
    (sheet,) = page.evaluate("window.printed")
    assert f"{codes[0][:3]}-{codes[0][3:]}" in sheet
    assert "Signed: Jo" in sheet
    scans_label(clerk, codes[1])
    clerk.wedge.scans(serial_of(1))
    clerk.sees(codes[1], "accept")
    clerk.phone.tap("Accept ")
    clerk.wedge.scans(codes[0])  # the next one comes while the slip is being printed
    clerk.sees(codes[0], "refuse")
    wait_until(page, "() => window.printed.length === 2")
    assert len([each for each in phone_log.facts(page) if each["kind"] == "return_decided"]) == 2


def test_slips_that_are_not_printed_by_themselves_are_told_with_two_ways_on(counter):
    clerk, _ = counter
    spool = clerk.server.app.extensions[EXTENSION]
    half = Waiting(Slip("Accepted", "K7F-3M", "", []), "d1:7", 1_790_000_000_000, begun=True)
    spool._keep([half])
    chooses(clerk.page, "From the printer")
    clerk.phone.see("One slip was not printed")
    clerk.phone.see("It may be on paper already")
    clerk.looks()
    clerk.phone.tap("Print now")
    clerk.page.get_by_text("One slip was not printed").wait_for(state="detached")
    assert [(each.slip.shown, each.begun) for each in spool._slips] == [("K7F-3M", False)]


def test_the_name_of_the_shop_stands_on_what_the_printer_at_the_server_prints(counter):
    clerk, codes = counter
    page, spool = clerk.page, clerk.server.app.extensions[EXTENSION]
    chooses(page, "From the printer")
    name = page.get_by_label("Stands at the head of all you print")
    name.fill("Garage at the mill")
    name.press("Tab")
    scans_label(clerk, codes[0])
    clerk.wedge.scans(serial_of(0))
    clerk.sees(codes[0], "accept")
    clerk.phone.tap("Accept ")
    wait_for(lambda: spool._slips)
    ((slip, *_),) = spool._slips
    assert (slip.shop, slip.heading) == ("Garage at the mill", "Accepted")
