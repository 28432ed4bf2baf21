"""What a phone goes through as certificates come and go: renewed, ended, never trusted."""

from datetime import UTC
from datetime import datetime
from datetime import timedelta

import pytest

from server.serving.lan.leaf import new_leaf
from tests.browser.mechanic import Mechanic
from tests.browser.phone import Phone
from tests.server.serving.lan.loopback import HOST
from tests.server.serving.lan.loopback import Fixed
from tests.server.serving.lan.loopback import LoopbackYard
from tests.server.serving.lan.trusting import PATIENT
from tests.server.serving.lan.trusting import browser_of
from tests.waiting import wait_for

DAY = timedelta(days=1)


@pytest.fixture
def yard(tmp_path, port):
    """An installation that was made 300 days ago, so that the browser's own clock is past two thirds."""
    yard = LoopbackYard(tmp_path / "data", port, datetime.now(UTC) - 300 * DAY)
    yield yard
    yard.close()


@pytest.fixture
def take_phone(tmp_path, yard):
    phones = []

    def take(*, trusts, **options):
        folder = tmp_path / f"phone-{len(phones)}"
        authority = yard.write_authority(tmp_path / "authority.pem") if trusts else None
        browser = browser_of(folder / "home", authority)
        rules = [f"--host-resolver-rules=MAP {HOST} 127.0.0.1"]
        phones.append(Phone(folder, yard.base, browser=browser, args=rules, **options))
        phones[-1].page.add_init_script(PATIENT)
        return phones[-1]

    yield take
    for phone in phones:
        phone.close()


def opens_a_job_and_sends_it(phone, vehicle):
    Mechanic(phone).opens_a_job(vehicle)
    phone.page.goto(f"{phone.base}/")
    phone.see(vehicle)
    phone.see("all sent")


def test_phones_work_on_while_the_certificate_is_renewed(yard, take_phone):
    phone = take_phone(trusts=True)
    phone.visit(yard.link())
    opens_a_job_and_sends_it(phone, "Blue estate")
    before = yard.shown()

    with yard.renewal:
        yard.now += 300 * DAY
        yard.renewal.look()
        wait_for(lambda: yard.shown() != before)

    assert yard.shown().not_valid_before_utc > before.not_valid_before_utc
    phone.page.evaluate("() => navigator.serviceWorker.getRegistration().then((r) => r.update())")
    opens_a_job_and_sends_it(phone, "Red van")
    yard.serve(yard.good)  # cuts the connection, so that the phone has to look at the new certificate
    phone.page.reload()
    opens_a_job_and_sends_it(phone, "Green coupe")
    assert phone.complaints.heard == []


def test_a_paired_phone_lets_the_next_one_in_by_way_of_the_trust_page(yard, take_phone):
    first = take_phone(trusts=True)
    first.visit(yard.link())
    first.page.goto(f"{yard.base}/#/you")
    first.tap("Make a pairing link")
    link = first.page.locator(".invitation-link").inner_text().strip()
    assert link.startswith(f"{yard.planned.page}/#")

    second = take_phone(trusts=True)
    second.page.goto(link)
    second.tap("Check this phone")
    second.page.get_by_role("link", name="Go on: pair this phone").tap()
    second.page.get_by_label("Your name").fill("Jo")
    second.tap("Pair this phone")
    second.page.get_by_role("button", name="Open a job").wait_for()


def test_an_ended_certificate_leaves_the_app_working_and_is_said(yard, take_phone, tmp_path):
    phone = take_phone(trusts=True)
    phone.visit(yard.link())
    opens_a_job_and_sends_it(phone, "Blue estate")

    ended = new_leaf(yard.authority, [], datetime.now(UTC) - 500 * DAY)
    yard.serve(Fixed(ended, tmp_path / "ended.pem"))
    phone.page.reload()

    phone.see("Blue estate")
    phone.see("The server: not reachable, or not trusted")
    link = phone.page.get_by_role("link", name="Trust the server")
    assert link.get_attribute("href") == f"{yard.planned.page}/"
    Mechanic(phone).opens_a_job("Red van")
    phone.page.goto(f"{phone.base}/")
    phone.see("or this phone does not trust it")

    yard.serve(yard.good)
    phone.page.reload()
    phone.see("all sent")
    assert not link.is_visible()


def test_a_warning_that_was_clicked_away_gives_no_app_offline_and_is_said(yard, take_phone):
    phone = take_phone(trusts=False, ignore_https_errors=True)
    phone.page.goto(f"{yard.base}/")
    phone.see("This phone does not trust the server")
    assert (
        phone.page.evaluate("() => navigator.serviceWorker.getRegistrations().then((all) => all.length)") == 0
    )
    link = phone.page.get_by_role("link", name="Trust the server")
    assert link.get_attribute("href") == f"{yard.planned.page}/"
