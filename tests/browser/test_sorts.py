"""Other sorts of part at the phone without a network, and a layout that a finger draws."""

import json

import pytest

from tests.browser.phone_log import facts
from tests.browser_support import wait_until

DRAWN = 10


@pytest.fixture
def phone(take_screens):
    return take_screens()


def drag(page, number, to):
    """Drag a spot of the plan to a place given in parts of the picture."""
    spot = page.locator(".plan-spot").nth(number).bounding_box()
    plan = page.locator(".plan").bounding_box()
    page.mouse.move(spot["x"] + spot["width"] / 2, spot["y"] + spot["height"] / 2)
    page.mouse.down()
    page.mouse.move(plan["x"] + plan["width"] * to[0], plan["y"] + plan["height"] * to[1], steps=3)
    page.mouse.up()


def test_ten_positions_are_drawn_kept_for_a_model_and_offered_again(phone, tmp_path):
    page = phone.show("/#/new")
    page.get_by_label("Your name").fill("Mara")
    page.get_by_label("Vehicle", exact=True).fill("White van")
    page.get_by_role("radio", name="My own").check()
    plan = page.locator(".plan")
    plan.wait_for()
    plan.scroll_into_view_if_needed()
    # Eight by a touch of the plan, two by the button, which a drag and the arrows bring to their places.
    for n in range(8):
        box = plan.bounding_box()
        page.mouse.click(box["x"] + box["width"] * (0.2 + 0.085 * n), box["y"] + box["height"] * 0.88)
    for n in (8, 9):
        page.get_by_role("button", name="Add one").click()
        drag(page, n, (0.3 + 0.4 * (n - 8), 0.14))
    before = page.locator(".plan-spot").nth(9).get_attribute("cx")
    page.get_by_role("button", name="To the left").press("Enter")
    assert float(page.locator(".plan-spot").nth(9).get_attribute("cx")) < float(before)
    assert page.locator(".plan-spot").count() == DRAWN

    page.get_by_label("Name", exact=True).fill("by the hook")
    page.get_by_label("Part number here").fill("PS-9")
    page.get_by_label("Pins of its plug").fill("1 supply, 2 ground")
    page.get_by_label("Which model of vehicle?").fill("Long van")
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save as a file").click()
    saved.value.save_as(tmp_path / "layout.json")
    phone.tap("Open the job")
    page.get_by_role("heading", name="Before you start").wait_for()

    [opened] = [fact for fact in facts(page) if fact["kind"] == "job_opened"]
    positions = opened["data"]["positions"]
    assert len(positions) == DRAWN == len(json.loads((tmp_path / "layout.json").read_text())["positions"])
    assert [each["edge"] for each in positions] == ["rear"] * 8 + ["front"] * 2
    assert [each["group"] for each in positions] == ["rear"] * 8 + ["front"] * 2
    assert (positions[9]["name"], positions[9]["part"], positions[9]["pins"]) == (
        "by the hook", "PS-9", "1 supply, 2 ground")  # fmt: skip

    page.goto(f"{phone.base}/#/new")
    page.get_by_role("radio", name="Long van, 10").check()
    page.get_by_role("button", name="Change this layout").click()
    assert page.locator(".plan-spot").count() == DRAWN
    # A file that is none says so; the one that was saved brings the layout back.
    page.locator(".file-button input").set_input_files(
        {"name": "x.json", "mimeType": "application/json", "buffer": b"\x89PNG"}
    )
    page.get_by_text("a file that holds a layout of Swaptrail").wait_for()
    page.locator(".file-button input").set_input_files(tmp_path / "layout.json")
    page.get_by_text("a file that holds a layout of Swaptrail").wait_for(state="detached")
    assert page.get_by_label("Which model of vehicle?").input_value() == "Long van"
    assert phone.lacking((320, 700, 100), (390, 844, 200)) == {}


SORTS = (
    ("4 ignition coils", "Shakes at idle", "Counters ran: record", "Run the misfire count"),
    ("4 wheel-speed senders", "Pedal pulses", "Speeds shown: record", "Run the rolling test"),
    ("4 door loudspeakers", "One rattles", "Radio heard: record", "Run the listening test"),
    ("Rear, 4 sensors", "Stays silent", "Sounder heard: record", "Run the self-test"),
)


def test_one_tap_chooses_the_sort_of_part_and_its_job_begins_without_a_network(take_screens):
    phone = take_screens(worker=True)
    page = phone.show("/#/new")
    page.get_by_label("Your name").wait_for()
    wait_until(page, "() => navigator.serviceWorker.controller !== null", seconds=30)
    phone.context.set_offline(True)
    for n, (layout, complaint, record, title) in enumerate(SORTS):
        if page.get_by_label("Your name").count():
            page.get_by_label("Your name").fill("Mara")
        page.get_by_label("Vehicle", exact=True).fill(f"Car {n}")
        page.get_by_role("radio", name=layout).check()
        page.get_by_role("radio", name=complaint).check()
        phone.tap("Open the job")
        phone.tap("I have read these")
        phone.tap("All as it should be")
        page.get_by_role("heading", name=title).wait_for()
        page.locator("button.board-position").first.click()
        phone.tap(record)
        page.get_by_role("heading", name=title).wait_for(state="detached")
        page.goto(f"{phone.base}/#/new")
        page.get_by_role("radio", name=layout).wait_for()
    tests = [fact["data"]["faulted"] for fact in facts(page) if fact["kind"] == "test_run"]
    assert sorted(tests) == sorted(
        [["cylinder-1"], ["wheel-front-left"], ["door-front-left"], ["rear-left-outer"]]
    )
