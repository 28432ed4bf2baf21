"""A label is typed for a step that another phone has just done: it is answered in words, and work goes on."""

import re
from contextlib import closing

import pytest

from tests.browser import phone_log
from tests.browser.mechanic import Mechanic
from tests.browser.phone import CODES
from tests.browser.phone import Phone
from tests.browser.three_pages import LISTEN
from tests.browser.three_pages import Fingers

OTHER, OUTER, NEW = "d00000000000000ff", "rear-right-outer", "u0000000000ff"


@pytest.fixture
def phone(tmp_path, app_server):
    with closing(Phone(tmp_path / "phone", app_server.base)) as phone:
        phone.page.add_init_script(f"({LISTEN})()")
        phone.visit(app_server.link())
        yield phone
    assert phone.complaints.heard == []


class OtherPhone:
    """What the core of a page has learned of another phone, before its screen is drawn again."""

    def __init__(self, fingers: Fingers):
        """Begin a chain."""
        self.fingers, self.seq, self.prev = fingers, 0, ""

    def records(self, kind, **data):
        """Fold a fact of it."""
        self.seq += 1
        event = {"device": OTHER, "seq": self.seq, "prev": self.prev, "v": 1, "at": 1_750_000_000_000}
        event.update(actor="Ben", job=self.fingers.job, kind=kind, data=data)
        self.prev = self.fingers.core("envelope", event=event)["hash"]
        self.fingers.core("add", events=[{"event": event}])


def test_a_label_typed_for_a_step_that_is_done_already_is_answered_and_work_goes_on(phone):
    mara = Mechanic(phone)
    mara.opens_a_job()
    mara.enters_a_test("right outer")
    address = phone.page.url
    fingers = Fingers(phone, 0, None)
    fingers.goes_to(address)
    old = f"{fingers.view['vehicle']['id']}.{OUTER}"
    other = OtherPhone(fingers)
    added = {"unit": NEW, "part": "PS-4711", "serial": "", "code": CODES[0], "how": "scanned", "place": "out"}
    other.records("unit_added", **added)
    other.records("move_started", move="replace", fitted={OUTER: NEW}, position=OUTER, reason="")
    other.records("unit_pulled", unit=old, position=OUTER, how="tapped")
    other.records("unit_labelled", unit=old, code=CODES[1], how="scanned")
    phone.page.goto(f"{address}/history")
    phone.page.locator(".history-text").first.wait_for()
    phone.page.goto(address)
    phone.wait_step("fit")
    phone.tap("Type the code")
    phone.page.locator(".field-code").fill(CODES[0])
    before = len(phone_log.entries(phone.page))

    fitted = {"unit": NEW, "position": OUTER, "how": "scanned", "override": "", "hanging": True}
    other.records("unit_fitted", **fitted)
    phone.tap("Check the code")

    phone.page.get_by_role("alert").filter(has_text=re.compile("right outer")).wait_for()
    assert "not saved" not in phone.text().lower()
    assert len(phone_log.entries(phone.page)) == before
    phone.tap("Understood")
    phone.page.goto(f"{address}/history")
    phone.page.locator(".history-text").first.wait_for()
    phone.page.goto(address)
    phone.wait_step("seat")
    phone.tap("All of it is right")
    phone.wait_step("test")
    assert len(phone_log.entries(phone.page)) > before
