"""This phone: pairing, what it still has to send, labels looked up, and what is left without the checks."""

import pytest

from server.core.codes import labels
from tests.browser.phone_log import facts
from tests.browser.seeded_job import job_driver
from tests.core.driver import JOB
from tests.core.driver import home

CODE = labels.codes_from([(index * 61 + 7) % 256 for index in range(400)], 1)[0]


def test_a_phone_that_is_not_paired_says_so_and_counts_what_waits(take_screens):
    phone = take_screens().holds(job_driver().open())
    page = phone.show()
    page.get_by_text("This phone is not paired").wait_for()
    page.get_by_role("link", name="not paired, 1").click()
    page.get_by_role("heading", name="1 job not sent yet").wait_for()


def test_a_link_pairs_a_phone_once_and_the_phone_invites_the_next(screen_app, take_screens):
    link = screen_app.link().removeprefix(screen_app.base)
    phone = take_screens()
    page = phone.show(link)
    phone.tap("Pair this phone")
    page.get_by_text("Say who uses this phone.").wait_for()
    page.get_by_label("Your name").fill("Zoë")
    phone.tap("Pair this phone")
    page.get_by_text("No job yet").wait_for()
    assert page.url == f"{screen_app.base}/#/"

    page.get_by_role("link", name="This phone").click()
    assert page.get_by_label("Your name").input_value() == "Zoë"
    phone.tap("Make a pairing link")
    page.get_by_role("img", name="The pairing link as a QR code").wait_for()
    assert page.locator(".invitation-link").inner_text().startswith(f"{screen_app.base}/pair#")

    late = take_screens()
    page = late.show(link)
    page.get_by_label("Your name").fill("Kim")
    late.tap("Pair this phone")
    page.get_by_text("This pairing link was used already or has expired.").wait_for()
    # The browser itself notes the refusal.
    assert [said for said in late.complaints.heard if "403" not in said] == []
    late.complaints.heard.clear()


def test_the_chosen_theme_holds_after_a_reload(take_screens):
    page = take_screens(color_scheme="light").show("/#/you")
    page.get_by_role("radio", name="Dark", exact=True).check()
    page.reload()
    page.get_by_role("radio", name="Dark", exact=True).wait_for()
    assert page.locator("html").get_attribute("data-theme") == "dark"


def test_a_label_that_nothing_carries_goes_on_a_spare(take_screens):
    phone = take_screens()
    page = phone.show(f"/#/code/{CODE}/scanned")
    page.get_by_role("heading", name="No sensor has this label yet").wait_for()
    page.get_by_label("Part number").fill("PS-4410")
    phone.tap("Add the spare")
    page.get_by_text("It is in your stock.").wait_for()

    page.goto(f"{phone.base}/#/find")
    phone.tap("Type it")
    page.get_by_label("Code on the label").fill(CODE.lower())
    phone.tap("Check the code")
    page.get_by_text("It is in your stock.").wait_for()
    page.get_by_text("It goes somewhere else").click()
    phone.tap("To the parts counter")
    page.get_by_text("It is at the parts counter.").wait_for()
    assert facts(page)[-1]["data"]["how"] == "typed"


def test_a_mistyped_label_is_told_apart_from_a_fresh_one(take_screens):
    page = take_screens().show("/U/22222")
    page.get_by_text("Not a label code").wait_for()


@pytest.fixture
def without_wasm(take_screens):
    """A phone whose browser runs no WebAssembly, with a job on it from before."""
    phone = take_screens().holds(job_driver().begin())
    phone.context.add_init_script("delete globalThis.WebAssembly;")
    return phone


def test_without_the_checks_a_picture_and_a_label_are_saved_unchecked(without_wasm):
    phone = without_wasm
    page = phone.show()
    page.get_by_text("Checks are not available").wait_for()
    page.get_by_role("link", name="Blue estate").click()
    assert page.get_by_role("button", name="Save it unchecked").is_disabled()
    phone.tap("Take a picture")
    phone.sees()
    phone.tap("Take the picture")
    page.get_by_role("radio", name="right outer").check()
    page.get_by_label("Label of the part in your hand").fill(labels.shown(CODE).lower())
    phone.tap("Save it unchecked")
    page.get_by_text("Saved on this phone, unchecked.").wait_for()

    pulled, labelled, photo = facts(page)[-3:]
    assert (pulled["kind"], pulled["unchecked"]) == ("unit_pulled", 1)
    assert (labelled["kind"], labelled["unchecked"], labelled["data"]["code"]) == ("unit_labelled", 1, CODE)
    assert (photo["kind"], photo["unchecked"]) == ("photo_taken", 1)
    assert photo["data"]["position"] == "rear-right-outer"
    # The sensor that sat there, not a second one beside it.
    assert {e["data"]["unit"] for e in (pulled, labelled, photo)} == {home("rear-right-outer")}


def test_without_the_checks_other_screens_say_so(without_wasm):
    page = without_wasm.show("/#/new")
    page.get_by_text("This needs the checks").wait_for()
    page = without_wasm.show(f"/#/job/{JOB}/trail")
    page.get_by_role("heading", name="Record a picture and a label").wait_for()
