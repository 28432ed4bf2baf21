"""The main job on a phone: network off after the first visit, labels read by the camera, to the close."""

import pytest

from tests.browser.mechanic import Mechanic
from tests.browser.phone import Phone
from tests.browser.phone import qr_picture
from tests.browser.phone import taken
from tests.browser.phone_log import facts
from tests.browser_support import ROOT
from tests.browser_support import start_server
from tests.ports import free_port

OUTER, INNER = "right outer", "right inner"


BOTH_APPS = pytest.mark.parametrize("server", ["checkout", "wheel"], indirect=True)


@pytest.fixture
def server(tmp_path, request):
    """A fresh server; its first pairing link is `link`. From the wheel its app is bundled."""
    from_wheel = getattr(request, "param", "wheel") == "wheel"
    package = request.getfixturevalue("installed") if from_wheel else ROOT
    server = start_server(tmp_path / "data", free_port(), package)
    yield server
    server.stop()


@pytest.fixture
def take_phone(tmp_path, server):
    """Give a maker of phones; no phone may have complained by the end of the test."""
    yield from taken(lambda name, **options: Phone(tmp_path / name, server.base, **options))


def figures(phone):
    """Return what the verdict on the screen rests on, to the last digit."""
    card = phone.page.locator(".verdict")
    card.wait_for()
    return (
        card.locator(".verdict-sentence").inner_text(),
        card.get_attribute("data-probability"),
        card.get_attribute("data-clear"),
    )


@BOTH_APPS
def test_a_fault_that_follows_from_the_first_visit_to_the_close_offline(server, take_phone):
    phone = take_phone("phone")
    phone.visit(server.link)
    phone.offline()
    mechanic = Mechanic(phone)

    mechanic.opens_a_job()
    mechanic.enters_a_test(OUTER)
    mechanic.photographs(4)
    mechanic.starts("Exchange ")
    mechanic.goes_through_the_exchange(mix_up_first=True)
    suspect = mechanic.label_of_position[OUTER]
    partner = next(name for name in mechanic.label_of_position if name != OUTER)
    mechanic.enters_a_test(partner)

    phone.wait_step("replace")
    sentence, probability, _ = figures(phone)
    assert sentence == f"The fault followed sensor {suspect[:3]}-{suspect[3:]}."
    assert int(probability) >= 950_000_000

    mechanic.replaces_the_sensor()
    mechanic.enters_a_test()
    mechanic.finishes(out=1)
    done = figures(phone)
    phone.see("not sent yet")

    phone.online()
    phone.page.reload()
    phone.see("all sent")
    phone.page.locator(".pill").tap()
    link = new_link(phone)
    other = take_phone("other")
    other.visit(link, name="Jo")
    other.page.get_by_text("Blue estate").first.tap()
    other.wait_step("done")
    assert figures(other) == done


def new_link(phone):
    """Pair the next phone from this one: return the link it shows."""
    phone.tap("Make a pairing link")
    field = phone.page.locator(".invitation-link")
    field.wait_for()
    return field.inner_text().strip()


def test_a_fault_that_stays_is_found_in_the_wiring_and_proven(server, take_phone):
    phone = take_phone("phone")
    phone.visit(server.link)
    phone.offline()
    mechanic = Mechanic(phone)

    mechanic.opens_a_job()
    mechanic.enters_a_test(OUTER)
    mechanic.photographs(4)
    mechanic.starts("Exchange ")
    mechanic.goes_through_the_exchange()
    mechanic.enters_a_test(OUTER)

    phone.wait_step("wiring.measure")
    sentence, probability, _ = figures(phone)
    assert sentence == "The fault stayed at right outer."
    assert int(probability) >= 950_000_000
    mechanic.finds_it_in_the_connector()
    mechanic.enters_a_test()
    if phone.wait_step("test", "walk") == "test":
        mechanic.enters_a_test()
    mechanic.finishes(out=0)
    assert "Blue estate" in phone.text()


def seats(page):
    """Return position -> code of the label of each sensor that was fitted with one."""
    codes, held = {}, {}
    for fact in facts(page):
        data = fact["data"]
        if fact["kind"] == "unit_labelled":
            codes[data["unit"]] = data["code"]
        elif fact["kind"] == "unit_pulled":
            held.pop(data["position"], None)
        elif fact["kind"] == "unit_fitted":
            held[data["position"]] = codes.get(data["unit"])
    return held


def test_two_that_got_mixed_up_are_told_apart_though_the_fault_stays_where_it_was(server, take_phone):
    """Seen at a job: right outer again after the mix-up, and nothing but tests ever after."""
    phone = take_phone("phone")
    phone.visit(server.link)
    page, mechanic = phone.page, Mechanic(phone)
    mechanic.opens_a_job()
    job = page.evaluate("location.hash")
    mechanic.enters_a_test(OUTER)
    mechanic.photographs(4)
    mechanic.starts("Exchange ")
    for _ in range(2):
        phone.wait_step("pull")
        title = mechanic.told()
        mechanic.pulls(title)
        mechanic.leaves(title)
    phone.lower()
    page.goto(f"{server.base}/{job}/hand")
    phone.tap("These got mixed up")
    phone.tap("These 2 got mixed up")
    for left in (2, 1):
        phone.wait_step("mixed.label")
        phone.see(f"{3 - left} of 2")
        mechanic.scans(mechanic.roll.pop(0))
    phone.wait_step("mixed.fit")
    mechanic.puts_the_label_away()
    page.locator(".main-button").tap()
    mechanic.goes_through_the_exchange()
    bad = seats(page)["rear-right-outer"]
    mechanic.enters_a_test(OUTER)

    for _ in range(5):
        if phone.wait_step("move", "test", "replace") == "replace":
            break
        if phone.step() == "move":
            assert page.locator(".main-button").inner_text() != "Test again"
            mechanic.puts_the_label_away()
            page.locator(".main-button").tap()
            mechanic.goes_through_the_exchange()
        here = [place for place, code in seats(page).items() if code == bad]
        mechanic.enters_a_test(*[place.replace("rear-", "").replace("-", " ") for place in here])
    phone.wait_step("replace")
    assert f"{bad[:3]}-{bad[3:]}" in figures(phone)[0]


def test_a_foreign_code_is_refused_and_said_what_it_holds(server, take_phone):
    phone = take_phone("phone")
    phone.visit(server.link)
    phone.offline()
    mechanic = Mechanic(phone)
    mechanic.opens_a_job()
    mechanic.enters_a_test(OUTER)
    mechanic.photographs(4)
    mechanic.starts("Exchange ")
    phone.wait_step("pull")
    phone.camera.show(qr_picture("HTTPS://EXAMPLE.ORG/PAY"))
    phone.see("This is not one of your labels")
    assert "HTTPS://EXAMPLE.ORG/PAY" in phone.text()
    assert phone.page.url.startswith(server.base)
