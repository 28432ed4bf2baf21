"""Screens of what the figures rest on, of how easy a position is to get to, and of mixed-up sensors."""

from tests.browser.phone_log import facts
from tests.browser.seeded_job import job_driver
from tests.browser.test_job_screens import last
from tests.core.driver import JOB
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"


def coded_job():
    driver = job_driver().begin()
    driver.test(OUTER, codes=[{"position": OUTER, "code": "C1A01", "failure_type": "13"}])
    driver.photograph()
    return driver


def both_in_hand():
    """Give a job whose exchange has both sensors out, each with its label."""
    driver = coded_job()
    driver.start_exchange()
    for _ in range(2):
        driver.scan_wanted()
    return driver


def test_a_chance_is_changed_with_bad_input_told_at_its_field_and_set_back(take_screens):
    phone = take_screens().holds(coded_job())
    page = phone.show(f"/#/job/{JOB}")
    page.get_by_text("More", exact=True).click()
    page.get_by_role("link", name="What the figures rest on").click()
    phone.tap("A sensor is bad, before any test")
    page.get_by_label("In percent").fill("a lot")
    phone.tap("Set it")
    page.get_by_text("Give a percentage, for instance 5 or 0.5.").wait_for()
    page.get_by_label("In percent").fill("2,5")
    phone.tap("Set it")
    page.get_by_text("changed; the default is 5").wait_for()
    assert last(page, "rates_set") == {"rates_ppm": {"unit": 25000}, "confidence_ppm": 0}
    phone.tap("A sensor is bad, before any test")
    phone.tap("Back to 5")
    page.get_by_text("changed; the default is 5").wait_for(state="detached")
    assert last(page, "rates_set") == {"rates_ppm": {}, "confidence_ppm": 0}


def test_what_no_chance_can_be_is_refused_in_words(take_screens):
    phone = take_screens().holds(coded_job())
    page = phone.show(f"/#/job/{JOB}/assumptions")
    phone.tap("A fault that is there shows in one self-test")
    page.get_by_label("In percent").fill("0")
    phone.tap("Set it")
    page.get_by_role("alert").get_by_text("Give a figure above 0").wait_for()
    assert "rates_set" not in [fact["kind"] for fact in facts(page)]


def test_a_code_is_left_out_and_counts_again(take_screens):
    phone = take_screens().holds(coded_job())
    page = phone.show(f"/#/job/{JOB}/assumptions")
    page.get_by_text("open circuit, so a fault in the wiring is 3 times as likely").wait_for()
    phone.tap("Leave it out")
    page.get_by_text("It does not count.").wait_for()
    assert last(page, "code_weight_set") == {"position": OUTER, "on": False}
    phone.tap("Let it count")
    page.get_by_text("It counts.").wait_for()


def test_labour_and_prices_are_optional_and_kept_to_the_cent(take_screens):
    phone = take_screens().holds(coded_job())
    page = phone.show(f"/#/job/{JOB}/assumptions")
    page.get_by_text("Give labour and prices").click()
    page.get_by_label("Labour, per hour").fill("eighty")
    phone.tap("Record these amounts")
    page.get_by_text("Give an amount, for instance 45 or 45.50.").wait_for()
    page.get_by_label("Labour, per hour").fill("80")
    page.get_by_label("Price of a new sensor").fill("45,50")
    phone.tap("Record these amounts")
    page.get_by_text("Change labour and prices").wait_for()
    given = {"labour_per_hour": 8000, "part_price": 4550, "wrong_purchase": 0}
    assert last(page, "money_set") == given


def test_how_easy_a_position_is_to_get_to_is_set_where_it_is_looked_at(take_screens):
    phone = take_screens().holds(coded_job())
    page = phone.show(f"/#/job/{JOB}/position/{OUTER}")
    page.get_by_text("2 min").wait_for()
    phone.tap("One minute more")
    page.get_by_text("3 min").wait_for()
    assert last(page, "reach_set") == {"position": OUTER, "minutes": 3}


def test_how_easy_each_is_to_get_to_is_set_at_the_opening(take_screens):
    phone = take_screens()
    page = phone.show("/#/new")
    page.get_by_label("Your name").fill("Mara")
    page.get_by_label("Vehicle").fill("Blue estate")
    page.get_by_role("radio", name="Rear, 4 sensors").check(force=True)
    page.get_by_text("How easy to reach?").click()
    outer = page.get_by_role("group", name="Minutes to get to right outer")
    outer.get_by_role("button", name="One minute less").click()
    outer.get_by_text("1 min").wait_for()
    phone.tap("Open the job")
    page.get_by_role("heading", name="Before you start").wait_for()
    reach = {p["id"]: p["reach_minutes"] for p in last(page, "job_opened")["positions"]}
    assert reach == {"rear-left-outer": 2, "rear-left-inner": 3, INNER: 3, OUTER: 1}


def test_mixed_up_sensors_are_told_apart_by_an_old_label(take_screens):
    driver = both_in_hand()
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}")
    page.get_by_text("More", exact=True).click()
    page.get_by_role("link", name="In hand").click()
    phone.tap("These got mixed up")
    page.get_by_label("What happened").fill("The tray tipped over.")
    phone.tap("These 2 got mixed up")
    page.get_by_role("heading", name="2 sensors got mixed up").wait_for()
    assert sorted(last(page, "units_mixed")["units"]) == sorted([home(OUTER), home(INNER)])
    phone.tap("Type the code")
    page.get_by_label("Code on the label").fill(driver.labels[home(OUTER)])
    phone.tap("Check the code")
    page.get_by_text("Label the sensor from right inner").first.wait_for()
    assert last(page, "unit_seen")["unit"] == home(OUTER)
    phone.show(f"/#/unit/{home(OUTER)}")
    page.get_by_text("Identity lost").wait_for()
    page.get_by_text("2 sensors involved; settled by a scan.").wait_for()


def test_mixed_up_sensors_without_a_label_get_fresh_ones_and_one_test(take_screens):
    phone = take_screens().holds(both_in_hand())
    page = phone.show(f"/#/job/{JOB}/hand")
    phone.tap("These got mixed up")
    phone.tap("These 2 got mixed up")
    for _ in range(2):
        page.get_by_role("heading", name="2 sensors got mixed up").wait_for()
        phone.tap("No label at hand: write a code by hand")
        phone.tap("It is written")
        page.get_by_role("button", name="It is written").wait_for(state="detached")
    page.locator("[data-step='mixed.fit']").wait_for()
    page.locator(".main-button").click()
    page.get_by_text("Fit · 1 of 3").wait_for()
    assert set(last(page, "move_started")["fitted"]) == {OUTER, INNER}
    assert last(page, "unit_labelled")["how"] == "written"
