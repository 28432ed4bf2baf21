"""A phone that cannot save for a while: what was entered first goes on record first."""

from tests.browser.phone_log import facts
from tests.browser.seeded_job import job_driver
from tests.core.driver import JOB

NOTHING_IS_SAVED = """() => {
  window.add = IDBObjectStore.prototype.add;
  IDBObjectStore.prototype.add = () => { throw new DOMException('no', 'UnknownError'); };
}"""
LOOKED = ["lamp_checked", "lamp_checked", "looked"]
SAVED_AGAIN = "() => { IDBObjectStore.prototype.add = window.add; }"


def look_not_saved(take_screens):
    """Give (phone, page, facts so far) with an answer tapped that the phone could not save."""
    driver = job_driver().open()
    driver.tap()
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}")
    before = len(facts(page))
    page.evaluate(NOTHING_IS_SAVED)
    phone.tap("All as it should be")
    page.get_by_role("heading", name="Not saved").wait_for()
    return phone, page, before


def test_a_second_entry_does_not_push_out_one_that_could_not_be_saved(take_screens):
    phone, page, before = look_not_saved(take_screens)
    page.evaluate("(at) => { location.hash = at; }", f"#/job/{JOB}/position/rear-left-inner")
    page.get_by_text("Note what is printed on it").click()
    page.get_by_label("Serial").fill("0007")
    phone.tap("Record these numbers")
    page.get_by_role("heading", name="Not saved").wait_for()
    assert page.get_by_label("Serial").input_value() == "0007"

    page.evaluate(SAVED_AGAIN)
    phone.tap("Record these numbers")

    page.get_by_text("0007").first.wait_for()
    assert [fact["kind"] for fact in facts(page)[before:]] == [*LOOKED, "part_noted"]


def test_the_same_entry_tapped_again_is_recorded_once(take_screens):
    phone, page, before = look_not_saved(take_screens)

    page.evaluate(SAVED_AGAIN)
    phone.tap("All as it should be")

    page.get_by_role("heading", name="Run the self-test").wait_for()
    assert [fact["kind"] for fact in facts(page)[before:]] == LOOKED
