"""Other sorts of part at the phone without a network, and a layout that a finger draws."""

import json
import re
from typing import NamedTuple

import pytest

from tests.bench.steps_car import Car
from tests.bench.steps_car import Story
from tests.bench.steps_finger import PART
from tests.bench.steps_finger import Finger
from tests.browser.phone import Phone
from tests.browser.phone_log import facts
from tests.browser_support import wait_until
from tests.core.test_sorts import OF_THE_FIRST_SORT
from tests.static.app_server import AppServer
from tests.static.builds import wait_for_offline_use

DRAWN = 10


class Found(NamedTuple):
    """What a person says who opens the job, and which check of the wiring and which segment is to blame."""

    complaint: str
    check: str = ""
    segment: str = ""


class Repairer(Finger):
    """Goes through a job on any sort of part, and keeps the words of each screen."""

    def __init__(self, phone, story: Story, found: Found):
        """Stand before a vehicle whose fault is as the story says, labels written by hand."""
        super().__init__(phone, Car(story), by_hand=True)
        self.found = found
        self.said: dict[str, list[str]] = {}

    def _handler(self, step):
        said = self.page.locator("main").inner_text()
        # With the camera open a step is told in a line.
        if not self.count.has("video") or step != "pull":
            self.said.setdefault(step, []).append(said)
        known = {
            "look": self.count.main,
            "photo": self.goes_on_without,
            "wiring.measure.done": self.repairs,
        }
        return known.get(step) or super()._handler(step)

    def opens(self):
        """Open the job from the list."""
        count, page = self.count, self.page
        count.button("Open a job", leads_on=True)
        count.type(page.get_by_label("Vehicle", exact=True), "Car")
        count.tap(page.get_by_role("radio", name=self.car.story.layout))
        count.tap(page.get_by_role("radio", name=self.found.complaint))
        count.type(page.get_by_label("Part number", exact=True), PART)
        count.main()

    def goes_on_without(self):
        """Take no pictures."""
        self.count.button("Go on without", leads_on=True)

    def measures(self):
        """Make one check; what is found bad is repaired where it is."""
        count, place = self.count, self._place()
        bad = self.car.wire_is_bad(place) and self.found.check in count.told
        count.button("Bad" if bad else "Good", leads_on=True)
        if bad and count.find("I have repaired it").count():
            count.button("I have repaired it")
            self.repairs()

    def repairs(self):
        """Say where the repair was, and that it is done."""
        self.count.tap(self.page.get_by_role("radio", name=self.found.segment))
        for place in self.car.story.bad_wires:
            self.car.repair(place)
        self.count.button("I have repaired it", leads_on=True)


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


def test_one_that_lies_on_another_is_said_and_a_file_of_another_program_is_read(take_screens):
    # So high that nothing scrolls in the midst of a drag.
    page = take_screens(height=2400).show("/#/new")
    page.get_by_role("radio", name="My own").check()
    page.locator(".plan").wait_for()
    for _ in range(3):
        page.get_by_role("button", name="Add one").click()
    drag(page, 0, (0.3, 0.3))
    drag(page, 1, (0.7, 0.3))
    covered = page.get_by_text("lie one on another")
    assert covered.count() == 0
    drag(page, 2, (0.3, 0.3))
    covered.wait_for()
    assert covered.inner_text() == "1 and 3 lie one on another. Drag one away."

    place = {"group": "rear", "reach_minutes": 3, "part": "", "pins": "", "x": 200, "y": 900}
    layout = {"file": "swaptrail-layout", "v": 1, "sort": "parking-sensor", "model": "", "positions": []}

    def reads(**changed):
        text = json.dumps({**layout, "positions": [{**place, "name": "hook 🔧", **changed}]})
        file = {"name": "layout.json", "mimeType": "application/json", "buffer": text.encode()}
        page.locator(".file-button input").set_input_files(file)

    reads(x=-50)
    page.get_by_text("Place 1 is -50; wanted is a whole number from 0 to 1000.").wait_for()
    layout["model"] = "m" * 81
    reads()
    page.get_by_text(re.compile("The model of vehicle is .*; wanted is text of 0 to 80 char")).wait_for()
    layout["model"] = ""
    reads()
    page.locator(".plan-row").get_by_role("button", name="hook 🔧").click()
    assert page.get_by_label("Name", exact=True).input_value() == "hook 🔧"


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
    wait_for_offline_use(page)
    phone.loses_network()
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


WHEELS = ("front left wheel", "front right wheel", "rear left wheel", "rear right wheel")
DOORS = ("front left door", "front right door", "rear left door", "rear right door")
CYLINDERS = tuple(f"cylinder {n}" for n in range(1, 5))
# Each to its close: one follows its part, one stays and is found on the way, one is heard by ear.
STORIES = {
    "coils": (
        Story("coils", "4 ignition coils", CYLINDERS, ("cylinder 2",), (), False),
        Found("Shakes at idle"),
    ),
    "wheels": (
        Story("wheels", "4 wheel-speed senders", WHEELS, (), ("rear left wheel",), False),
        Found("Pedal pulses", "look at the ring", "Ring that it reads"),
    ),
    "doors": (
        Story("doors", "4 door loudspeakers", DOORS, (), ("front right door",), False),
        Found("One rattles", "look at the hinge", "Wires in the door hinge"),
    ),
}
# What has to be read at these steps, by sort: where work can hurt.
CAUTIONS = {
    "coils": {"test": "High voltage: hands off", "pull": "Hot parts", "seat": "Key off", "walk": "safe"},
    "wheels": {
        "test": "Two people",
        "measure": "On stands",
        "measure.again": "On stands",
        "walk": "Wheels may lock",
    },
    "doors": {"test": "Turn it down", "measure": "Sharp edges", "measure.again": "Leave airbag parts"},
}  # fmt: skip


@pytest.fixture
def repairer(tmp_path):
    """Give a maker of people with a phone that was paired and has no network since."""
    server = AppServer(tmp_path / "data")
    phones = []

    def make(story, found, size=(390, 844), kind=Repairer):
        phone = Phone(tmp_path / f"phone{len(phones)}", server.base, size)
        phones.append(phone)
        person = kind(phone, story, found)
        phone.visit(server.link())
        phone.offline()
        return person

    yield make
    for phone in phones:
        phone.close()
    server.close()  # whatever is wrong: one that goes on keeps the whole run from ending
    heard = [
        each for phone in phones for each in phone.complaints.heard if "ERR_INTERNET_DISCONNECTED" not in each
    ]
    assert heard == []


@pytest.mark.parametrize("name", STORIES)
def test_each_sort_goes_from_open_to_close_in_its_own_words_without_a_network(repairer, name):
    person = repairer(*STORIES[name])
    person.does_the_job()

    assert person.page.locator("[data-step=done]").count() == 1
    said = [(step, text) for step, texts in person.said.items() for text in texts]
    assert [
        (step, OF_THE_FIRST_SORT.search(text)[0]) for step, text in said if OF_THE_FIRST_SORT.search(text)
    ] == []
    for step, caution in CAUTIONS[name].items():
        assert all(caution in text for text in person.said[step]), (step, person.said[step])
    kinds = [fact["kind"] for fact in facts(person.page)]
    assert kinds.count("job_closed") == kinds.count("walk_checked") == 1


TOUCHES = [(0.2 + 0.085 * n, 0.88) for n in range(8)]


class Drawer(Repairer):
    """Draws ten positions with a finger before the job begins."""

    def opens(self):
        """Touch the plan eight times, add two by the button and drag them to the front."""
        count, page = self.count, self.page
        count.button("Open a job", leads_on=True)
        count.type(page.get_by_label("Vehicle", exact=True), "Long van")
        count.tap(page.get_by_role("radio", name="My own"))
        plan = page.locator(".plan")
        plan.wait_for()
        for n, name in enumerate(self.car.story.places):
            if n < len(TOUCHES):
                plan.scroll_into_view_if_needed()
                box, (x, y) = plan.bounding_box(), TOUCHES[n]
                page.touchscreen.tap(box["x"] + box["width"] * x, box["y"] + box["height"] * y)
            else:
                count.button("Add one")
                self.drags(n, (0.3 + 0.4 * (n - len(TOUCHES)), 0.14))
            page.locator(".plan-spot").nth(n).wait_for()
            count.type(page.get_by_label("Name", exact=True), name)
        count.tap(page.get_by_role("radio", name=self.found.complaint))
        count.type(page.get_by_label("Part number", exact=True), PART)
        count.main()

    def begins_the_job(self):
        """From the list of jobs to the first sensor that is pulled."""
        self.count.begin()
        self.opens()
        while self.count.step != "pull":
            assert self.count.step != "done"
            self._handler(self.count.step)()

    def drags(self, number, to):
        """Drag a spot of the plan with a finger; a browser's own driver has no such gesture."""
        page = self.page
        page.locator(".plan").scroll_into_view_if_needed()
        spot = page.locator(".plan-spot").nth(number).bounding_box()
        plan = page.locator(".plan").bounding_box()
        start = (spot["x"] + spot["width"] / 2, spot["y"] + spot["height"] / 2)
        end = (plan["x"] + plan["width"] * to[0], plan["y"] + plan["height"] * to[1])
        finger = self.phone.context.new_cdp_session(page)
        # It rests before it lets go: a flick goes on by itself, and the next tap may do nothing but end that.
        for kind, part, rest in (
            ("touchStart", 0, 0),
            ("touchMove", 0.5, 0),
            ("touchMove", 0.99, 150),
            ("touchMove", 1, 100),
        ):
            x, y = (a + (b - a) * part for a, b in zip(start, end, strict=True))
            finger.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": [{"x": x, "y": y}]})
            page.wait_for_timeout(rest)
        finger.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
        finger.detach()
        # The plan follows the finger a moment later, and a tap before that would meet what moves.
        here = "([n, y]) => Number(document.querySelectorAll('.plan-spot')[n].getAttribute('cy')) < y"
        wait_until(page, here, [number, spot["y"] - plan["y"]])
        self.count.settle()


def test_a_layout_of_ten_drawn_by_touch_is_worked_with_without_a_network(repairer):
    places = tuple(f"spot {letter}" for letter in "abcdefghij")
    assert len(places) == DRAWN
    story = Story("drawn", "My own", places, ("spot c",), (), False)
    person = repairer(story, Found("Beeps without reason"), kind=Drawer)
    person.begins_the_job()

    recorded = facts(person.page)
    [opened] = [fact["data"] for fact in recorded if fact["kind"] == "job_opened"]
    assert [each["edge"] for each in opened["positions"]] == ["rear"] * 8 + ["front"] * 2
    [test] = [fact["data"] for fact in recorded if fact["kind"] == "test_run"]
    [begun] = [fact["data"] for fact in recorded if fact["kind"] == "move_started"]
    bad = opened["positions"][places.index("spot c")]["id"]
    assert test["faulted"] == [bad]
    assert bad in begun["fitted"]
