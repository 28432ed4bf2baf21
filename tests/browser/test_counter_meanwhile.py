"""What may come between a proposal and the clerk's decision on it."""

import pytest

from tests.browser import phone_log
from tests.browser.returned import put_on_server
from tests.browser.returned import returned
from tests.browser.returned import serial_of
from tests.browser.test_counter import Clerk
from tests.browser.test_hand_scanner import Wedge
from tests.browser.test_hand_scanner import decided
from tests.browser.test_hand_scanner import scans_label
from tests.browser_support import wait_until
from tests.static.app_server import AppServer


@pytest.fixture
def clerks(tmp_path):
    server = AppServer(tmp_path / "data")
    entries, codes = returned(2)
    put_on_server(server, entries)
    made = []
    for number in range(2):
        clerk = Clerk(tmp_path / f"clerk{number}", server)
        clerk.comes_to_the_counter()
        clerk.wedge = Wedge(clerk.page)
        made.append(clerk)
    yield made, codes
    for clerk in made:
        clerk.leaves()
    server.close()


def proposes_to_accept(clerk, code, number):
    scans_label(clerk, code)
    clerk.wedge.scans(serial_of(number))
    clerk.sees(code, "accept")


def test_what_another_phone_accepted_meanwhile_is_not_accepted_again(clerks):
    (here, there), codes = clerks
    proposes_to_accept(here, codes[0], 0)
    proposes_to_accept(there, codes[0], 0)
    there.phone.tap("Accept ")
    there.page.locator(".decided").wait_for()
    wait_until(here.page, "() => document.body.innerText.includes('1 today')", seconds=30)
    here.phone.tap("Accept ")
    here.sees(codes[0], "refuse")
    here.phone.see("Something else is proposed now")
    here.looks()
    assert len(decided(here.page)) == 1
    assert [each["kind"] for each in phone_log.facts(here.page)].count("return_received") == 1


def test_the_next_bag_scanned_at_once_is_asked_about_where_a_serial_was_read_already(clerks):
    (here, _), codes = clerks
    proposes_to_accept(here, codes[0], 0)
    here.wedge.scans(serial_of(1))
    here.phone.see("Which sensor is this symbol on?")
    here.sees(codes[0], "accept")
    here.phone.tap("On another one")
    here.sees(codes[0], "accept")
    here.wedge.scans(serial_of(1))
    here.phone.see("Which sensor is this symbol on?")
    here.phone.tap(f"On {codes[0][:3]}-")
    here.sees(codes[0], "refuse")
