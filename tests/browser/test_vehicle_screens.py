"""A vehicle that comes back: the first screen of its new job, what that rests on, and the vehicle's page."""

from tests.browser.seeded_job import job_driver
from tests.browser.test_job_screens import last
from tests.core.test_comeback import Yard


def came_back():
    """Give a second job on a vehicle whose sensor at right outer was replaced on the first."""
    yard = Yard(job_driver().core)
    yard.come(1)
    yard.replaced()
    yard.come(2, days=90)
    return yard


def test_the_new_job_says_that_the_vehicle_was_here_and_leads_to_its_page(take_screens):
    yard = came_back()
    phone = take_screens().holds(yard)
    page = phone.show(f"/#/job/{yard.job}")
    page.get_by_text("This vehicle was here before, earlier today.").wait_for()
    page.get_by_text("Replaced then: the sensor from right outer.").wait_for()
    page.get_by_text("What that changes").click()
    page.get_by_text("each counts as 6 times likelier").wait_for()
    page.get_by_role("link", name="What was done on it").click()
    page.get_by_role("heading", name="What is on it").wait_for()
    assert page.locator(".vehicle-jobs li").count() == 2
    assert page.locator(".vehicle-now li").count() == 4
    page.get_by_label("Warranty on your work, in days").fill("365")
    phone.tap("Save the days")
    page.get_by_text("Warranty on this work: 365 more days.").wait_for()


def test_what_the_past_counts_for_is_changed_where_the_figures_are(take_screens):
    yard = came_back()
    phone = take_screens().holds(yard)
    page = phone.show(f"/#/job/{yard.job}/assumptions")
    page.get_by_role("heading", name="The vehicle was here before").wait_for()
    phone.tap("12 times")
    page.get_by_text("each counts as 12 times likelier").wait_for()
    assert last(page, "comeback_set") == {"factor": 12, "months": 6}


KEEP = """async (session) => {
  const { openStore, openDevice } = await import('/app/parts.js');
  await (await openDevice(await openStore())).keepStanding(session);
}"""


def test_the_warranty_of_the_yard_stands_for_that_of_each_phone(take_screens):
    yard = came_back()
    phone = take_screens().holds(yard)
    phone.page.evaluate(KEEP, {"warranty_days": 200})
    page = phone.show(f"/#/vehicle/{yard.core('job', job=yard.job)['vehicle']['id']}")
    page.get_by_text("Your yard answers for its work for 200 days.").wait_for()
    page.get_by_text("Warranty on this work: 200 more days.").wait_for()
    assert page.get_by_label("Warranty on your work, in days").count() == 0
