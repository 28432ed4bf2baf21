"""What goes wrong with labels and places, and how it is set right on the sensor's own screen."""

from tests.browser.phone_log import facts
from tests.browser.seeded_job import job_driver
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"


def one_in_hand():
    """A job with the first sensor of an exchange pulled and labelled."""
    driver = job_driver().faulted()
    driver.start_exchange()
    driver.scan_wanted()
    return driver


def test_a_torn_label_goes_out_of_use_and_a_fresh_one_takes_its_place(take_screens):
    driver = one_in_hand()
    torn, fresh = driver.labels[home(INNER)], driver.codes[9]
    phone = take_screens().holds(driver)
    page = phone.show(f"/U/{torn}")
    page.get_by_text("Its label is torn, lost or wrong").click()
    phone.tap(f"Take {torn[:3]}-{torn[3:]} out of use")
    page.get_by_text("Say in a few words what happened to the label.").wait_for()
    page.get_by_label("What happened to the label").fill("torn by the catch")
    phone.tap(f"Take {torn[:3]}-{torn[3:]} out of use")
    page.get_by_text("It has no label now.").wait_for()

    page.goto(f"{phone.base}/U/{fresh}")
    page.get_by_role("button", name=f"It was {torn[:3]}-{torn[3:]}").click()
    page.get_by_text("It is in your hand").wait_for()
    last = facts(page)[-1]
    assert (last["kind"], last["data"]["unit"], last["data"]["code"]) == ("unit_labelled", home(INNER), fresh)


def test_numbers_printed_on_a_sensor_in_hand_can_be_noted(take_screens):
    driver = one_in_hand()
    phone = take_screens().holds(driver)
    page = phone.show(f"/U/{driver.labels[home(INNER)]}")
    page.get_by_text("Note what is printed on it").click()
    page.get_by_label("Serial").fill("0007")
    phone.tap("Record these numbers")
    page.get_by_text("0007").first.wait_for()
    assert facts(page)[-1]["kind"] == "part_noted"


def test_a_move_can_be_stopped_from_its_own_screen(take_screens):
    driver = one_in_hand()
    phone = take_screens().holds(driver)
    page = phone.show("/#/job/" + driver.job)
    phone.tap("Stop this move")
    page.get_by_role("heading", name="Fit").first.wait_for()
