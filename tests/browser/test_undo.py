"""The last entry is taken back by one tap, for a while; Back leads out of a job, never forward again."""

from contextlib import closing

import pytest

from tests.browser.mechanic import Mechanic
from tests.browser.phone import Phone
from tests.browser_support import wait_until
from tests.static.app_server import AppServer

OUTER = "right outer"
# How far below the first one the middle of each part of the head stands.
MIDDLES = """() => {
  const head = document.querySelector(".screen-head");
  const boxes = [...head.children].map((part) => part.getBoundingClientRect());
  return boxes.map(({ top, height }) => Math.round(top + height / 2 - boxes[0].top - boxes[0].height / 2));
}"""


@pytest.fixture
def phone(tmp_path):
    """A paired phone; it may not have complained by the end of the test."""
    # Closed also where the visit fails: a phone that goes on asks a server whose folder is gone.
    with (
        closing(AppServer(tmp_path / "data")) as server,
        closing(Phone(tmp_path / "phone", server.base)) as phone,
    ):
        phone.visit(server.link())
        yield phone
    assert phone.complaints.heard == []


def test_an_entry_is_taken_back_by_one_tap_and_the_history_says_so(phone):
    mechanic = Mechanic(phone)
    mechanic.opens_a_job()
    mechanic.enters_a_test(OUTER)
    phone.wait_step("photo")
    phone.tap("Undo")
    phone.wait_step("test")
    assert phone.page.get_by_role("button", name="Undo").count() == 0

    mechanic.enters_a_test("left outer")
    phone.wait_step("photo")
    phone.page.get_by_text("More", exact=True).tap()
    phone.page.get_by_text("Everything recorded").or_(phone.page.locator("a[href*='history']")).first.tap()
    phone.see("a slip")


def test_the_head_of_a_narrow_phone_keeps_to_one_line_beside_undo(phone):
    mechanic = Mechanic(phone)
    mechanic.opens_a_job()
    phone.page.set_viewport_size({"width": 320, "height": 640})
    mechanic.enters_a_test(OUTER)
    phone.wait_step("photo")
    phone.page.get_by_role("button", name="Undo").wait_for()

    assert phone.page.evaluate(MIDDLES) == [0, 0, 0, 0]


def test_back_leads_out_of_a_job_and_never_forward_again(phone):
    mechanic = Mechanic(phone)
    mechanic.opens_a_job()
    page = phone.page
    job = page.evaluate("location.hash")
    page.get_by_text("More", exact=True).tap()
    page.locator("a[href*='history']").tap()
    wait_until(page, "() => location.hash.endsWith('/history')")
    page.get_by_label("Back").tap()
    wait_until(page, "(job) => location.hash === job", job)
    page.go_back()
    wait_until(page, "(job) => location.hash !== job && !location.hash.endsWith('/history')", job)
