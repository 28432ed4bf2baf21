"""The picture of a sensor with its label: taken as the label is read, held beside the part at the counter."""

import hashlib
from contextlib import closing

import pytest

from server.clock import now_ms
from server.photos import store
from tests.browser.clerk import scans_label
from tests.browser.pace import paced
from tests.browser.phone import CODES
from tests.browser.phone import label_picture
from tests.browser.phone_log import facts
from tests.browser.returned import also
from tests.browser.returned import put_on_server
from tests.browser.returned import returned
from tests.browser.screens import screens
from tests.browser.seeded_job import job_driver
from tests.browser.test_exchange_screens import at_first_pull
from tests.browser_support import wait_until
from tests.core.scenarios import follows
from tests.server.phone import jpeg
from tests.static.symbols import DATA_MATRIX
from tests.static.symbols import envelope
from tests.static.symbols import symbol
from tests.waiting import wait_for


@pytest.fixture
def phone(camera_browser, screen_app, camera):
    camera.show()
    with screens(camera_browser, screen_app.base) as phone:
        yield phone


def recorded(page, code):
    """Return what went on record with this label: pictures and serial numbers of its sensor."""
    entries = [(each["kind"], each["data"]) for each in facts(page)]
    units = [data["unit"] for kind, data in entries if kind == "unit_labelled" and data["code"] == code]
    pictures = [data["shows"] for kind, data in entries if kind == "photo_taken" and data["unit"] in units]
    serials = [data["serial"] for kind, data in entries if kind == "part_noted" and data["unit"] in units]
    return len(units), pictures, serials


def waits_for(page, code):
    wait_for(lambda: recorded(page, code)[0])
    return recorded(page, code)[1:]


def test_the_label_s_picture_is_kept_without_a_tap_and_a_symbol_in_it_gives_the_serial(phone, camera):
    driver = at_first_pull()
    # A busy machine may take longer to find the symbol than a label waits for it.
    phone.context.add_init_script(paced(("static/screens/scan/labelled-picture.js", "SYMBOL_MS", 40)))
    page = phone.holds(driver).show(f"/#/job/{driver.job}")
    page.locator("[data-step=pull]").wait_for()
    page.get_by_role("button", name="Scan").first.click()
    page.get_by_text("Label it, show its marks").wait_for()  # a label, to whom nobody has said so yet
    camera.show(label_picture(CODES[20], phone.base), symbol(envelope("1PPS-1", "SSA10197"), DATA_MATRIX))
    assert waits_for(page, CODES[20]) == (["unit"], ["SA10197"])

    page.get_by_role("button", name="No picture").click()
    page.get_by_role("button", name="Keep a picture").wait_for()
    camera.show(label_picture(CODES[21], phone.base))
    assert waits_for(page, CODES[21]) == ([], [])
    # The same camera at the next step, where no label goes on.
    page.locator("[data-step=fit]").wait_for()
    page.get_by_text("About 20 cm away").wait_for()


def test_a_replacement_chosen_among_the_moves_keeps_the_picture_of_its_new_label(phone, camera):
    driver = job_driver()
    follows(driver)
    page = phone.holds(driver).show(f"/#/job/{driver.job}/moves")
    page.locator(".main-button").click()
    page.get_by_role("button", name="It reads PS-1 too").click()
    phone.tap("Label the new sensor")
    camera.show(label_picture(CODES[22], phone.base))
    page.locator("[data-step=pull], [data-step=fit]").wait_for()
    phone.show(f"/#/job/{driver.job}/photos")
    wait_until(page, "() => [...document.querySelectorAll('main img')].some((img) => img.naturalWidth > 0)")


def test_the_clerk_has_it_beside_the_part_and_says_whether_that_is_the_one(app_server, clerk_at):
    entries, codes = returned(1)
    data = jpeg(640, 480)
    digest = hashlib.sha256(data).hexdigest()
    picture = {"mime": "image/jpeg", "bytes": len(data), "width": 640, "height": 480, "sha256": digest}
    unit = "v000000000000.rear-right-outer"
    also(entries, "photo_taken", {**picture, "shows": "unit", "position": "", "unit": unit}, "j000000000000")
    put_on_server(app_server, entries)
    with closing(app_server.database()) as db:
        store.keep(db, app_server.data / "photos", digest, data, now_ms())
    clerk, _ = clerk_at(0)
    scans_label(clerk, codes[0])
    clerk.phone.see("Is it the one in this picture?")
    wait_until(clerk.page, "() => document.querySelector('.compare-itself img')?.naturalWidth === 640")
    clerk.phone.see("With its label at the bench")
    clerk.looks()
    clerk.phone.tap("It is the same part")
    clerk.sees(codes[0], "accept")
