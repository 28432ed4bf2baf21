"""What may come between a proposal and the clerk's decision on it."""

import pytest

from tests.browser import phone_log
from tests.browser.clerk import scans_label
from tests.browser.returned import serial_of
from tests.browser.test_hand_scanner import decided
from tests.browser_support import wait_until


@pytest.fixture
def clerks(clerk_at):
    here, codes = clerk_at(2)
    there, _ = clerk_at(0)
    return (here, there), codes


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
    here.phone.see("Which part is this symbol on?")
    here.sees(codes[0], "accept")
    here.phone.tap("On another one")
    here.sees(codes[0], "accept")
    here.wedge.scans(serial_of(1))
    here.phone.see("Which part is this symbol on?")
    here.phone.tap(f"On {codes[0][:3]}-")
    here.sees(codes[0], "refuse")
