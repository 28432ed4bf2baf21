"""Looking, testing, photographing, and taking back: the screens of a job between its opening and a move."""

from tests.browser.phone_log import facts
from tests.browser.phone_log import wait_for_draft
from tests.browser.seeded_job import job_driver
from tests.core.driver import JOB
from tests.core.driver import home


def last(page, kind: str) -> dict:
    """Return the data of the latest fact of a kind."""
    return [fact for fact in facts(page) if fact["kind"] == kind][-1]["data"]


def press(page, name: str) -> None:
    """Tap the button with just these words."""
    page.get_by_role("button", name=name, exact=True).click()


def test_two_fast_taps_are_one_answer(take_screens):
    driver = job_driver().open()
    driver.tap()
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}")
    page.get_by_role("button", name="All as it should be").dblclick()
    page.get_by_role("heading", name="Run the self-test").wait_for()
    recorded = [fact["kind"] for fact in facts(page)]
    assert recorded.count("lamp_checked") == 2
    assert recorded.count("looked") == 1


def test_a_tap_is_one_message_to_the_core(take_screens):
    driver = job_driver().open()
    driver.tap()
    phone = take_screens().holds(driver)
    phone.context.add_init_script(
        """(() => {
          window.asked = [];
          const post = Worker.prototype.postMessage;
          Worker.prototype.postMessage = function (message, ...rest) {
            if (message.text) asked.push(JSON.parse(message.text).op);
            return post.call(this, message, ...rest);
          };
        })()"""
    )
    page = phone.show(f"/#/job/{JOB}")
    page.get_by_role("button", name="All as it should be").wait_for()
    page.evaluate("asked.length = 0")

    phone.tap("All as it should be")
    page.get_by_role("heading", name="Run the self-test").wait_for()

    assert page.evaluate("asked") == ["check_and_add"]


def test_what_was_seen_is_recorded_by_position(take_screens):
    driver = job_driver().open()
    driver.tap()
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}")
    phone.tap("Engage reverse")
    page.get_by_role("radio", name="It is off, or shows a fault").click()
    phone.tap("Left inner")
    page.get_by_role("checkbox", name="dirt").check()
    page.get_by_role("checkbox", name="thick paint").check()
    phone.tap("Record what I saw")
    page.get_by_role("heading", name="Run the self-test").wait_for()
    lamps = [fact["data"] for fact in facts(page) if fact["kind"] == "lamp_checked"]
    shown = {each["when"]: each["result"] for each in lamps}
    assert shown == {"key_on": "as_it_should", "reverse": "not_as_it_should"}
    seen = [(each["position"], each["found"]) for each in last(page, "looked")["positions"]]
    assert ("rear-left-inner", "dirt") in seen
    assert ("rear-left-inner", "paint") in seen
    assert ("rear-right-outer", "nothing") in seen


def test_a_code_with_its_failure_type_stands_whole_on_the_narrowest_phone(take_screens):
    phone = take_screens(width=320).holds(job_driver().begin())
    page = phone.show(f"/#/job/{JOB}")
    page.get_by_role("button", name="right outer").click()
    page.get_by_text("More: codes, picture, note").click()
    page.get_by_text("Enter the codes on the screen").click()
    field = page.get_by_label("Code", exact=True).first
    field.fill("C1E1A-13")
    assert field.evaluate("(field) => field.scrollWidth - field.clientWidth") <= 0
    field.fill("c1e1a13")
    page.get_by_text("13 is kept as it is.").wait_for()
    page.get_by_label("The failure types follow the open list").check()
    page.get_by_text("13: open circuit.").wait_for()


def test_a_test_with_its_codes_and_its_screen_is_kept_over_a_reload(take_screens):
    phone = take_screens().holds(job_driver().begin())
    page = phone.show(f"/#/job/{JOB}")
    assert page.get_by_role("button", name="First tap what it showed").is_disabled()
    page.get_by_role("button", name="right outer").click()
    page.get_by_role("button", name="left outer").dblclick()
    page.get_by_text("More: codes, picture, note").click()
    page.get_by_text("Enter the codes on the screen").click()
    page.get_by_label("Code", exact=True).first.fill("c1a2b-13")
    page.get_by_text("13 is kept as it is.").wait_for()
    page.get_by_label("The failure types follow the open list").check()
    page.get_by_text("13: open circuit.").wait_for()
    page.get_by_label("What it means, as you know it").fill("lower loom")
    assert phone.lacks_room() == []
    phone.tap("Photograph the screen")
    phone.sees()
    phone.tap("Take the picture")
    page.get_by_role("img", name="The screen of the test").wait_for()
    wait_for_draft(page, "rear-right-outer", "rear-left-outer", "1a2b", "image/jpeg")

    page.reload()
    page.get_by_role("img", name="The screen of the test").wait_for()
    told = "Test 1: sounder heard, fault at right outer; nothing reported on left outer."
    page.get_by_text(told).wait_for()
    phone.tap("Sounder heard: record")
    page.get_by_role("heading", name="Photograph each position").wait_for()
    recorded = last(page, "test_run")
    assert recorded["faulted"] == ["rear-right-outer"]
    assert recorded["silent"] == ["rear-left-outer"]
    assert recorded["codes"] == [{"position": "rear-right-outer", "code": "C1A2B", "failure_type": "13"}]
    assert (recorded["open_list"], recorded["means"]) == (True, [{"code": "C1A2B", "means": "lower loom"}])
    assert last(page, "photo_taken")["shows"] == "screen"


def test_what_the_test_says_of_an_empty_position_is_recorded(take_screens):
    driver, empty = job_driver().begin(), "rear-left-inner"
    driver.force("unit_labelled", unit=home(empty), code=driver.codes[9], how="scanned")
    driver.force("unit_pulled", unit=home(empty), position=empty, how="scanned")
    driver.force("unit_moved", unit=home(empty), place="stock", how="scanned", note="")
    driver.force("left_deliberately", unit="empty", position=empty, reason="left empty")
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}")
    page.get_by_role("checkbox", name="No fault anywhere").check()
    page.get_by_text("Test 1: sounder heard, no fault anywhere.").wait_for()
    page.get_by_role("button", name="left inner").click()
    page.get_by_text("empty, fault").wait_for()
    phone.tap("Sounder heard: record")
    page.get_by_role("heading", name="Walk behind it with a pole").wait_for()
    recorded = last(page, "test_run")
    assert recorded["faulted"] == recorded["unplugged"] == [empty]


def test_a_test_that_nobody_heard_is_set_aside(take_screens):
    phone = take_screens().holds(job_driver().begin())
    page = phone.show(f"/#/job/{JOB}")
    phone.tap("Sounder not heard")
    page.get_by_role("heading", name="Not heard: check").wait_for()
    assert last(page, "test_run")["heard"] is False


def test_pictures_are_kept_one_by_one_and_the_last_is_taken_again_by_a_tap(take_screens):
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}")
    phone.tap("Open the camera")
    phone.sees()
    # A finger that taps twice takes one.
    page.get_by_role("button", name="Take left outer").evaluate("(each) => { each.click(); each.click(); }")
    press(page, "Again: left outer")
    press(page, "Take left outer")
    press(page, "Take left inner")
    page.get_by_role("button", name="Take right inner", exact=True).wait_for()
    taken = [fact["data"]["position"] for fact in facts(page) if fact["kind"] == "photo_taken"]
    assert taken == ["rear-left-outer", "rear-left-outer", "rear-left-inner"]
    assert phone.page.locator("video").count() == 1


def test_an_entry_is_taken_back_with_a_reason_and_stays_to_be_read(take_screens):
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/history")
    phone.tap("Self-test: fault at right outer.")
    assert page.get_by_role("button", name="Take it back", exact=True).is_disabled()
    page.get_by_label("Why was it wrong?").fill("It was another car")
    page.get_by_role("button", name="Take it back", exact=True).click()
    page.get_by_text("Taken back by Mara: It was another car").wait_for()
    assert page.locator(".history-struck").inner_text() == "Self-test: fault at right outer."
    phone.tap("Go on with the job")
    page.get_by_role("heading", name="Run the self-test").wait_for()

    phone.show(f"/#/job/{JOB}/history")
    phone.tap("Self-test: fault at right outer.")
    phone.tap("It was so after all")
    page.locator(".history-struck").wait_for(state="detached")
    assert [fact["kind"] for fact in facts(page)][-2:] == ["corrected", "put_right"]
    phone.tap("Go on with the job")
    page.locator("[data-step=photo]").wait_for()


def test_a_test_that_was_entered_wrong_is_entered_anew_in_its_place(take_screens):
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/history")
    phone.tap("Self-test: fault at right outer.")
    phone.tap("Enter what is right")
    form = page.locator(".put-right")
    faults = form.get_by_role("group", name="Faults at")
    assert faults.get_by_label("right outer").is_checked()
    assert form.get_by_role("button", name="See what it changes").is_disabled()
    faults.get_by_label("right outer").uncheck()
    faults.get_by_label("left inner").check()
    phone.tap("See what it changes")
    page.get_by_text("The verdict").wait_for()
    phone.tap("Save the correction")
    page.get_by_text("Put right by Mara. It said:").wait_for()
    assert page.locator(".history-struck").inner_text() == "Self-test: fault at right outer."
    page.get_by_role("button", name="Self-test: fault at left inner.").wait_for()
    assert page.locator("[data-told=changes]").is_visible()
    assert [fact["kind"] for fact in facts(page)][-1] == "put_right"


def test_what_later_entries_rest_on_is_not_taken_back(take_screens):
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    driver.photograph()
    driver.exchange(rear_right_outer="v1.rear-right-inner", rear_right_inner="v1.rear-right-outer")
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/history")
    page.get_by_role("button", name="pulled from").last.click()
    page.get_by_label("Why was it wrong?").fill("Tapped too fast")
    page.get_by_role("button", name="Take it back", exact=True).click()
    page.get_by_role("alert").get_by_text("Later entries rest on this one.").wait_for()
    assert "corrected" not in [fact["kind"] for fact in facts(page)]
    phone.tap("Understood")
    page.get_by_role("alert").wait_for(state="detached")


def test_a_part_number_is_noted_at_a_position_and_shown_at_its_sensor(take_screens):
    driver = job_driver().begin(part="")
    driver.test("rear-right-outer")
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/position/rear-right-outer")
    page.get_by_text("Note what is printed on it").click()
    page.get_by_label("Part number", exact=True).fill("PS-4410")
    phone.tap("Record these numbers")
    page.get_by_role("definition").filter(has_text="PS-4410").wait_for()
    page.get_by_role("link", name="Everything about this sensor").click()
    page.get_by_text("Test 1 at right outer").wait_for()
    assert page.get_by_role("definition").filter(has_text="PS-4410").is_visible()
