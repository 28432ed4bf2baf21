"""Opening a job: what is missing is said at its field, and nothing typed is lost."""

import math

from tests.browser.phone_log import wait_for_draft

GOOD_VIN = "1M8GDM9AXKP042788"


def fill(page, **fields):
    """Fill in fields by their names, with spaces for underscores; the number's field is opened first."""
    if "VIN" in fields:
        line = page.locator("summary").filter(has_text="VIN")
        line.wait_for()
        if not page.get_by_label("VIN", exact=True).is_visible():
            line.click()
    for name, value in fields.items():
        page.get_by_label(name.replace("_", " "), exact=True).fill(value)


def test_bad_input_is_named_at_its_field_and_nothing_is_recorded(take_screens):
    phone = take_screens()
    page = phone.show("/#/new")
    fill(page, VIN="1M8GDM9AXKPO42788")
    phone.tap("Open the job")

    page.get_by_text("4 things are missing or not right").wait_for()
    for field, said in {
        "Your name": "Say who is working.",
        "Vehicle": "Give the vehicle a name that you will recognise.",
        "VIN": "Correct the number, or leave it empty.",
    }.items():
        assert page.get_by_label(field, exact=True).get_attribute("aria-invalid") == "true"
        assert page.get_by_text(said).is_visible()
    assert page.get_by_text("Choose which parts, and where they sit.").is_visible()
    assert page.get_by_text("Character 12 is O. A VIN uses digits and letters").is_visible()
    assert page.evaluate("document.activeElement.labels[0].textContent") == "Your name"

    page.goto(f"{phone.base}/#/")
    page.get_by_text("No job yet").wait_for()


def test_the_check_digit_is_explained_while_the_number_is_typed(take_screens):
    page = take_screens().show("/#/new")
    fill(page, VIN="1M8GDM9AXKP04")
    page.get_by_text("13 of 17 characters.").wait_for()
    fill(page, VIN=GOOD_VIN.lower())
    page.get_by_text("The check digit (character 9) fits.").wait_for()
    fill(page, VIN=GOOD_VIN.replace("X", "4"))
    page.get_by_text("the check digit would be X").wait_for()


def test_what_was_typed_is_there_after_the_phone_ended_the_page(take_screens):
    phone = take_screens()
    page = phone.show("/#/new")
    page.get_by_text("Something else").click()
    fill(page, Your_name="Mara", Vehicle="Blue estate", VIN=GOOD_VIN, What_is_wrong="Says nothing")
    page.get_by_role("radio", name="Front, 6 sensors").check()
    wait_for_draft(page, "Mara", "Blue estate", GOOD_VIN, "Says nothing", "front-6")

    page.reload()
    page.get_by_label("Vehicle", exact=True).wait_for()
    assert page.get_by_label("Your name").input_value() == "Mara"
    assert page.get_by_label("Vehicle", exact=True).input_value() == "Blue estate"
    assert page.get_by_label("VIN").input_value() == GOOD_VIN
    assert page.get_by_label("What is wrong").input_value() == "Says nothing"
    assert page.get_by_role("radio", name="Front, 6 sensors").is_checked()

    phone.tap("Open the job")
    page.get_by_role("heading", name="Before you start").wait_for()
    page.goto(f"{phone.base}/#/new")
    page.get_by_text("Here lately").wait_for()
    assert page.get_by_label("Vehicle", exact=True).input_value() == ""
    assert page.get_by_label("Your name").count() == 0


def test_own_positions_without_one_on_the_plan_are_refused_at_the_plan(take_screens):
    phone = take_screens()
    page = phone.show("/#/new")
    fill(page, Your_name="Mara", Vehicle="Trailer")
    page.get_by_role("radio", name="My own").check()
    page.locator(".plan").wait_for()
    phone.tap("Open the job")
    page.get_by_text("Put at least one position on the plan.").wait_for()

    for _ in range(2):
        page.get_by_role("button", name="Add one").click()
    page.get_by_label("Name", exact=True).fill("1")
    page.get_by_text('Name 2 is "1"; wanted is a name that no other position has.').wait_for()
    page.get_by_label("Name", exact=True).fill("by the tow bar")
    phone.tap("Open the job")
    phone.tap("I have read these")
    rows = page.locator(".look-list .list-title")
    rows.first.wait_for()
    assert rows.all_inner_texts()[-2:] == ["1", "By the tow bar"]


def test_no_position_that_is_added_covers_another(take_screens):
    """All of them came to lie in the middle, so that only the last number could be seen and moved."""
    page = take_screens().show("/#/new")
    page.get_by_role("radio", name="My own").check()
    add = page.get_by_role("button", name="Add one")
    for _ in range(24):
        add.click()

    assert add.is_disabled()
    spots = page.locator(".plan-spot").evaluate_all(
        "(spots) => spots.map((each) => ['cx', 'cy', 'r'].map((name) => Number(each.getAttribute(name))))"
    )
    assert len(spots) == 24
    covered = [
        (one, other)
        for one, (x, y, r) in enumerate(spots)
        for other, (other_x, other_y, _) in enumerate(spots[:one])
        if math.hypot(x - other_x, y - other_y) < r
    ]
    assert covered == []


def test_a_known_vehicle_brings_its_positions(take_screens):
    phone = take_screens()
    page = phone.show("/#/new")
    fill(page, Your_name="Mara", Vehicle="Blue estate")
    page.get_by_role("radio", name="Rear, 6 sensors").check()
    phone.tap("Open the job")
    page.get_by_role("heading", name="Before you start").wait_for()

    page.goto(f"{phone.base}/#/new")
    page.get_by_role("radio", name="Blue estate").click()
    page.get_by_text("A job on this vehicle is still open.").wait_for()
    assert page.get_by_label("Vehicle", exact=True).count() == 0
    page.get_by_text("Something else").click()
    fill(page, What_is_wrong="Again")
    phone.tap("Open the job")
    page.get_by_role("heading", name="Before you start").wait_for()
    page.goto(f"{phone.base}/#/")
    page.get_by_text("Again").wait_for()
    assert page.locator(".job-list .list-title").all_inner_texts() == ["Blue estate", "Blue estate"]
