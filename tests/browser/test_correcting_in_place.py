"""An entry is corrected from where it shows: the trail, a position, a sensor, a picture."""

import pytest

from tests.browser.phone import CODES
from tests.browser.phone_log import facts
from tests.browser.seeded_job import job_driver
from tests.core.driver import JOB
from tests.core.driver import home
from tests.core.scenarios import meter_bad

OUTER, INNER = "rear-right-outer", "rear-right-inner"
# Of elements, the words that do not fit into one line of theirs.
BROKEN = """(all) => all.flatMap((each) => {
  const words = each.textContent.split(' ');
  const lines = new Range();
  let at = 0;
  return words.filter((word) => {
    const text = document.createTreeWalker(each, NodeFilter.SHOW_TEXT).nextNode();
    lines.setStart(text, at);
    lines.setEnd(text, at + word.length);
    at += word.length + 1;
    return lines.getClientRects().length > 1;
  });
})"""


def righted(page) -> dict:
    """Return what the last entry put right, by the number of its target, and what it says now."""
    data = [fact for fact in facts(page) if fact["kind"] == "put_right"][-1]["data"]
    return {"seq": data["seq"], **data["entry"]["data"]}


def save(phone) -> None:
    """See what the correction changes, and save it."""
    phone.tap("See what it changes")
    phone.page.get_by_role("status").filter(has_text="verdict").wait_for()
    phone.tap("Save the correction")
    phone.page.locator(".history-struck").first.wait_for()


def after_a_test():
    """Return a job with a test and pictures of its positions."""
    return job_driver().faulted()


def test_a_test_is_corrected_from_the_trail(take_screens):
    driver = after_a_test()
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/trail")
    page.get_by_text("Something here is wrong").first.click()
    page.get_by_role("link", name="Self-test: fault at right outer.").click()
    faults = page.locator(".put-right").get_by_role("group", name="Faults at")
    faults.get_by_label("right outer").uncheck()
    faults.get_by_label("left inner").check()
    save(phone)
    assert righted(page)["faulted"] == ["rear-left-inner"]
    page.get_by_role("link", name="Back").click()
    page.get_by_role("heading", name="What the tests say").wait_for()


def test_a_reading_is_corrected_from_its_position_and_from_its_sensor(take_screens):
    driver = after_a_test()
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/position/{OUTER}")
    page.get_by_role("listitem").filter(has_text="Test 1").get_by_role("link").click()
    page.locator(".put-right").get_by_role("group", name="Faults at").wait_for()
    page = phone.show(f"/#/unit/{home(OUTER)}")
    page.get_by_role("link", name="Test 1 at right outer").click()
    page.locator(".put-right").get_by_role("group", name="Faults at").wait_for()


def test_the_position_of_a_picture_is_corrected_in_the_viewer_and_chosen_by_its_picture(take_screens):
    driver = job_driver().faulted()
    digest = driver.view()["photos"][0]["sha256"]
    alike = [fact for fact in driver.view()["history"] if f"photo:{digest}" in fact["about"]]
    assert len(alike) > 1
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/photo/{digest}")
    page.get_by_role("link", name="Something here is wrong").click()
    rows = page.locator(".history-picture")
    rows.first.wait_for()
    assert rows.count() == len(alike)
    page.get_by_role("button", name="left inner").click()
    phone.tap("Enter what is right")
    page.locator(".put-right").get_by_label("right inner", exact=True).check()
    save(phone)
    assert righted(page)["position"] == INNER


def test_what_shows_at_a_position_is_the_choice_there(take_screens):
    driver = after_a_test()
    driver.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/position/{OUTER}")
    page.get_by_role("link", name="Something here is wrong", exact=True).click()
    page.get_by_role("button", name="pulled from").wait_for()
    said = page.locator(".history-text").all_inner_texts()
    assert [each for each in said if "right outer" in each]
    assert not [each for each in said if "left" in each and "right outer" not in each]
    page = phone.show(f"/#/unit/{home(OUTER)}")
    page.get_by_role("link", name="Something here is wrong", exact=True).click()
    page.get_by_role("button", name="pulled from right outer").wait_for()


def test_what_was_recorded_of_a_spare_outside_any_job_is_corrected_from_its_page(take_screens):
    driver = job_driver().begin()
    spare = {
        "unit": "u0000000stock",
        "part": "PS-1",
        "serial": "",
        "code": "",
        "how": "tapped",
        "place": "stock",
    }
    driver.core("add", events=[{"event": driver.envelope("unit_added", spare, job=None)}])
    phone = take_screens().holds(driver)
    page = phone.show("/#/unit/u0000000stock")
    page.get_by_role("link", name="Something here is wrong").click()
    page.get_by_role("button", name="PS-1").click()
    phone.tap("Enter what is right")
    page.get_by_label("Part number").fill("PS-2")
    phone.tap("See what it changes")
    page.get_by_text("part number PS-2").wait_for()
    phone.tap("Save the correction")
    page.locator(".history-struck").first.wait_for()
    assert righted(page)["part"] == "PS-2"


def test_the_plate_of_a_vehicle_is_corrected_from_its_page(take_screens):
    phone = take_screens().holds(after_a_test())
    page = phone.show("/#/vehicle/v1")
    page.get_by_role("link", name="Something here is wrong").click()
    page.get_by_label("Plate").fill("KL 4711")
    save(phone)
    assert righted(page)["vehicle"]["plate"] == "KL 4711"


def test_a_code_that_was_typed_wrongly_is_put_right_with_what_was_said_of_it(take_screens):
    driver = job_driver().begin()
    code = {"position": OUTER, "code": "B1A2B", "failure_type": "13"}
    driver.test(OUTER, codes=[code], open_list=True, means=[{"code": "B1A2B", "means": "lower loom"}])
    phone = take_screens(width=320).holds(driver)
    page = phone.show(f"/#/job/{JOB}/trail")
    page.get_by_text("Something here is wrong").first.click()
    page.get_by_role("link", name="Self-test: fault at right outer.").click()
    field = page.get_by_label("Trouble code at right outer")
    assert field.input_value() == "B1A2B-13"
    field.fill("b1a2")
    page.get_by_text("B1A2 is not the form of a trouble code").wait_for()
    field.fill("b-1a2c 96")
    page.get_by_label("What B1A2B means").fill("upper loom")
    assert phone.lacking((320, 700, 100), (390, 844, 200)) == {}
    save(phone)
    right = righted(page)
    assert right["codes"] == [{"position": OUTER, "code": "B1A2C", "failure_type": "96"}]
    assert right["means"] == [{"code": "B1A2C", "means": "upper loom"}]
    assert right["open_list"] is True


def entry_of(page, words: str):
    """Open the form of the entry whose sentence holds these words."""
    page.get_by_role("button", name=words).first.click()
    page.get_by_role("button", name="Enter what is right").first.click()
    form = page.locator(".put-right")
    form.wait_for()
    return form


def changed(phone) -> None:
    """See what the correction changes, and save it."""
    phone.tap("See what it changes")
    phone.tap("Save the correction")
    phone.page.locator(".put-right").wait_for(state="detached")  # it goes once the correction is kept
    phone.page.locator(".history-struck").first.wait_for()


def test_a_drawn_position_is_called_otherwise_from_its_own_page(take_screens):
    driver = job_driver()
    drawn = [
        {"name": name, "group": "rear", "reach_minutes": 3, "x": x, "y": 950, "part": "", "pins": ""}
        for name, x in (("near the hitch", 400), ("corner", 900))
    ]
    positions = driver.core("drawn_positions", sort="parking-sensor", positions=drawn)
    vehicle = {"id": "v1", "name": "White van", "vin": "", "model": "White van, long"}
    driver.fact("job_opened", vehicle=vehicle, complaint="", layout="own", part="PS-1", positions=positions)
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/position/{positions[0]['id']}")
    page.get_by_role("link", name="Something here is wrong", exact=True).click()
    form = page.locator(".put-right")
    form.get_by_label("What near the hitch is called").fill("left of the hitch")
    changed(phone)
    assert [each["name"] for each in righted(page)["positions"]] == ["left of the hitch", "corner"]
    page.get_by_role("link", name="Back").click()
    page.get_by_role("heading", name="left of the hitch").wait_for()


def test_what_was_seen_the_lamp_and_the_walk_are_corrected_in_the_history(take_screens):
    driver = job_driver().begin()
    places = [OUTER, INNER, "rear-left-inner", "rear-left-outer"]
    driver.force("lamp_checked", when="reverse", result="not_sure", note="")
    driver.force("looked", positions=[{"position": each, "found": "nothing"} for each in places], note="")
    driver.force("listened", ticks=[OUTER], silent=[INNER])
    driver.force("walk_checked", positions=places[1:], missed=[OUTER])
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/history")

    entry_of(page, "Lamp at reverse").get_by_label("It is on").check()
    changed(phone)
    assert righted(page)["result"] == "as_it_should"

    form = entry_of(page, "Looked: nothing")
    assert form.locator(".choice-word").evaluate_all(BROKEN) == []
    form.get_by_role("group", name="Seen at right outer").get_by_label("dirt").check()
    changed(phone)
    assert {"position": OUTER, "found": "dirt"} in righted(page)["positions"]
    assert len(righted(page)["positions"]) == len(places)

    form = entry_of(page, "Listened")
    form.get_by_role("group", name="Nothing to hear at").get_by_label("right outer").check()
    changed(phone)
    assert (righted(page)["ticks"], righted(page)["silent"]) == ([], [INNER, OUTER])

    form = entry_of(page, "stayed quiet")
    form.get_by_label("right outer").uncheck()
    form.get_by_label("left inner").check()
    changed(phone)
    said = righted(page)
    assert (said["missed"], sorted(said["positions"])) == (
        ["rear-left-inner"],
        sorted({*places} - {"rear-left-inner"}),
    )


def test_where_a_sensor_was_seen_its_fit_and_a_pause_are_corrected_in_the_history(take_screens):
    driver = after_a_test()
    driver.force("unit_seen", unit=home(OUTER), place="fitted", position=INNER, how="tapped")
    driver.force("fit_checked", unit=home(OUTER), position=INNER, checks=["flush"])
    driver.force("sounder_checked", check="fuse", found="unclear")
    driver.force("job_paused", why="part", part="PS-1", note="")
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/history")

    form = entry_of(page, "seen at right inner")
    assert form.locator(".choice-word").evaluate_all(BROKEN) == []
    form.get_by_role("group", name="Place").get_by_label("right outer").check()
    changed(phone)
    assert (righted(page)["place"], righted(page)["position"]) == ("fitted", OUTER)

    form = entry_of(page, "Fit checked")
    form.get_by_role("group", name="Position").get_by_label("right outer").check()
    changed(phone)
    assert righted(page)["position"] == OUTER

    form = entry_of(page, "checked the fuse")
    form.get_by_role("group", name="What was found").get_by_label("found and put right").check()
    changed(phone)
    assert righted(page)["found"] == "mended"

    entry_of(page, "waiting for a part").get_by_label("Waiting for the customer").check()
    changed(phone)
    assert righted(page)["why"] == "customer"


def test_a_repair_that_was_typed_wrongly_is_corrected_from_the_trail_and_from_its_position(take_screens):
    driver = job_driver()
    meter_bad(driver)
    driver.fact("circuit_repaired", cause=f"circuit:{INNER}", what="repaired", segment="wire")
    phone = take_screens(width=320).holds(driver)
    page = phone.show(f"/#/job/{JOB}/position/{INNER}")
    page.get_by_role("link", name="Something here is wrong", exact=True).click()
    page.get_by_role("button", name="Repaired").wait_for()
    page = phone.show(f"/#/job/{JOB}/trail")
    page.get_by_text("Something here is wrong").first.click()
    page.get_by_role("link", name="Repaired").click()
    assert page.get_by_label("What was done").input_value() == ""
    assert page.get_by_role("button", name="See what it changes").is_disabled()
    repaired = page.locator(".put-right").get_by_role("group", name="What was repaired")
    repaired.get_by_label("right outer").check()
    page.locator(".put-right").get_by_label("Sensor plug").check()
    page.get_by_label("What was done").fill("Pin seated")
    assert phone.lacking((320, 700, 100), (390, 844, 200)) == {}
    save(phone)
    right = righted(page)
    assert [right[name] for name in ("cause", "segment", "what")] == [
        f"circuit:{OUTER}",
        "connector",
        "Pin seated",
    ]
    phone.show(f"/#/job/{JOB}").locator("[data-step='measure.again']").wait_for()


@pytest.mark.parametrize("typed", ["{head}-{tail}", "{head} {tail}", "{head}{tail}"])
def test_the_code_of_a_label_is_typed_as_it_stands_there(take_screens, typed):
    driver = after_a_test()
    driver.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/history")
    right, worn = CODES[-1], driver.labels[home(INNER)]
    form = entry_of(page, f"Label {worn[:3]}-{worn[3:]}")
    field = form.get_by_label("Code on the label")
    assert field.input_value() == f"{worn[:3]}-{worn[3:]}"
    field.fill(typed.format(head=right[:3].lower(), tail=right[3:].lower()))
    changed(phone)
    assert righted(page)["code"] == right


def test_which_sensors_got_mixed_up_is_corrected_in_the_history(take_screens):
    driver = after_a_test()
    three = [home(place) for place in (OUTER, INNER, "rear-left-outer")]
    for unit in three:
        driver.force("unit_labelled", unit=unit, code=driver.label_of(unit), how="scanned")
        driver.force("unit_pulled", unit=unit, position=unit.partition(".")[2], how="scanned")
    driver.fact("units_mixed", units=three[:2], note="")
    phone = take_screens(width=320).holds(driver)
    page = phone.show(f"/#/job/{JOB}/history")
    form = entry_of(page, "got mixed up")
    mixed = form.get_by_role("group", name="Mixed up")
    assert mixed.get_by_role("checkbox").count() == 3
    assert phone.lacking((320, 700, 100), (390, 844, 200)) == {}
    third = driver.labels[three[2]]
    mixed.get_by_label(f"{third[:3]}-{third[3:]}").check()
    changed(phone)
    assert sorted(righted(page)["units"]) == sorted(three)
    page = phone.show(f"/#/job/{JOB}")
    page.get_by_role("heading", name="3 sensors got mixed up").wait_for()

    form = entry_of(phone.show(f"/#/job/{JOB}/history"), "got mixed up")
    for unit in three[1:]:
        form.get_by_label(f"{driver.labels[unit][:3]}-{driver.labels[unit][3:]}").uncheck()
    phone.tap("See what it changes")
    page.get_by_role("alert").get_by_text("It takes at least two sensors.").wait_for()
