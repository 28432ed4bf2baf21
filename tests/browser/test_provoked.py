"""What came before a test of a fault that comes and goes is one choice, kept with it, told with the proof."""

import pytest

from tests.browser.seeded_job import job_driver
from tests.browser.test_job_screens import last
from tests.core.driver import JOB
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"


@pytest.fixture(params=[(390, "light"), (320, "dark")], ids=["390 light", "320 dark"])
def phone(request, take_screens):
    """A job whose fault came and went, its sensors just exchanged, at the test that tells."""
    width, scheme = request.param
    driver = job_driver().begin()
    driver.test(OUTER, came_and_went=True)
    driver.photograph()
    driver.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    phone = take_screens(width=width, color_scheme=scheme).holds(driver)
    phone.show(f"/#/job/{JOB}")
    return phone


def test_what_came_before_a_test_is_chosen_and_told_with_the_proof(phone):
    page = phone.page
    field = page.get_by_label("What came before this test")
    assert field.input_value() == ""
    assert phone.lacks_room() == []
    field.select_option("Water")
    phone.tap("Gone: no fault anywhere")
    page.get_by_text("1 clean test in a row: water.").wait_for()
    assert last(page, "test_run")["provoked"] == "water"

    phone.tap("Enter the new test")
    assert field.input_value() == "at_once"
    assert phone.lacks_room() == []
    page.get_by_label("No fault anywhere").check()
    phone.tap("Sounder heard: record")
    page.get_by_text("1 came straight after another, so it counts for less.").wait_for()
    assert last(page, "test_run")["provoked"] == "at_once"
    page.goto(page.url + "/history")
    page.get_by_text("Self-test: no fault. Before it: water.").wait_for()
