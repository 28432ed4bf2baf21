"""The report for the customer: what was wrong, how that is known, what was done, what proves it."""

import pytest

from server.core.codes.labels import shown
from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.scenarios import first_test
from tests.core.test_unit_view import INNER
from tests.core.test_unit_view import OUTER
from tests.core.test_unit_view import closed
from tests.core.test_unit_view import followed

PICTURE = {"mime": "image/jpeg", "bytes": 9, "width": 4, "height": 3, "unit": ""}


def told(core, job):
    return core("report", job=job.job)


def test_a_finished_job_is_told_from_complaint_to_proof(core):
    job = closed(core)
    report = told(core, job)
    bad, new = core("unit", unit=home(OUTER))["shown"], core("unit", unit="u00000000new1")["shown"]
    good = core("unit", unit=home(INNER))["shown"]
    assert (report["vehicle"], report["complaint"]) == ("Blue estate", "beeps without reason")
    assert report["standing"] == "The job is finished."
    assert report["headline"] == "One of the parking sensors was bad and has been taken out."
    assert report["found"] == [
        "The control unit's self-test showed a fault at right outer.",
        f"Sensor {bad} was moved from right outer to right inner, and the fault moved along with it. A fault "
        "in the wiring would have stayed behind. So the sensor itself is bad.",
    ]
    sure = job.view()["reasoning"]["confidence_words"]
    assert report["sure"].startswith(f"How sure this is: {sure}, worked out from 3 self-tests")
    assert [(step["mark"], step["sentence"]) for step in report["done"]] == [
        ("fault", "Self-test 1: fault at right outer."),
        ("fault", "Exchanged the sensors at right inner and right outer. Self-test 2: fault at right inner."),
        ("clean", f"Fitted sensor {new} at right inner. Self-test 3: no fault."),
    ]
    assert report["replaced"] == [
        f"{new} is new at right inner.",
        f"{good} now sits at right outer; it came from right inner.",
        f"{bad} came off; it is at the parts counter.",
    ]
    assert report["proof"][1] == "Walk-behind check with a pole: every sensor sounded."
    assert report["cautions"] == ["A parking aid is an aid. Look behind you as well."]
    assert report["by"] == ["Mara"]


def test_a_later_job_changes_nothing_in_an_earlier_report(core):
    job = closed(core)
    before = told(core, job)
    later = Driver(core, device="d00000000000000b2", job="j000000000002")
    later.labels = job.labels
    later.begin()
    later.test(INNER)
    later.exchange(rear_right_inner=home(INNER), rear_right_outer="u00000000new1")
    assert told(core, job) == before


def test_an_open_job_says_that_it_is_not_finished(core):
    report = told(core, followed(core))
    assert report["standing"] == "The job is not finished. This is what is known so far."
    assert report["headline"] == "One of the parking sensors is bad."
    assert report["proof"] == ["Nothing proves a repair yet."]
    assert "The repair is not proven. Do not rely on the parking aid until it is." in report["cautions"]


def test_a_fault_that_stayed_is_told_as_wiring(core):
    job = Driver(core).begin()
    job.test(OUTER)
    job.photograph()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(OUTER)
    for _ in range(2):
        job.test(OUTER)
    report = told(core, job)
    assert report["headline"] == "The wiring at right outer is at fault."
    assert report["found"][1].startswith(
        "Another sensor was fitted at right outer, and the fault stayed there."
    )


def test_a_repair_is_proved_by_a_clean_test_and_by_none_before(core):
    """Seen: said to be proved by clean tests as soon as the repair was tapped."""
    job = Driver(core).begin()
    job.test(OUTER)
    job.photograph()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(OUTER)
    job.fact("circuit_repaired", cause="circuit:" + OUTER, what="pin", segment="connector")
    assert "Clean tests now prove the repair." in job.view()["reasoning"]["detail"]
    assert told(core, job)["proof"] == ["Nothing proves a repair yet."]
    job.test()
    assert "testing has proved it" in job.view()["reasoning"]["detail"]
    done = [each["sentence"] for each in told(core, job)["done"]]
    assert "What was done: pin. Self-test 3: no fault." in done[-1]


def test_nothing_is_claimed_before_a_test_or_without_a_fault(core):
    job = Driver(core).begin()
    assert told(core, job)["headline"] == "Nothing has been tested yet."
    assert told(core, job)["found"] == []
    job.test()
    report = told(core, job)
    assert report["headline"] == "No test has shown a fault."
    assert report["sure"] == ""


def test_one_fault_seen_once_names_no_cause(core):
    job = Driver(core).begin()
    job.test(OUTER)
    report = told(core, job)
    assert report["headline"] == "The cause is not certain yet."
    assert report["found"][0] == "The control unit's self-test showed a fault at right outer."


def test_a_test_nobody_heard_is_told_as_not_counting(core):
    job = Driver(core).begin()
    job.test(heard=False)
    (step,) = told(core, job)["done"]
    assert step["mark"] == "aside"
    assert step["sentence"] == "Self-test 1: its sounder was not heard, so it does not count."


def test_pictures_are_before_or_after_by_the_work_between_them_not_by_the_clock(core):
    job = Driver(core).begin()
    job.fact("photo_taken", sha256="01" * 32, shows="screen", position="", **PICTURE)
    job.test(OUTER)
    job.fact("cleaned", position=OUTER, note="")
    late = job.envelope("photo_taken", {**PICTURE, "sha256": "02" * 32, "shows": "work", "position": OUTER})
    late["at"] = 1  # a clock that was wrong
    core("add", events=[{"event": late}])
    photos = told(core, job)["photos"]
    assert [photo["sha256"][:2] for photo in photos["before"]] == ["01"]
    assert [photo["sha256"][:2] for photo in photos["after"]] == ["02"]
    assert photos["after"][0]["words"] == "Right outer"
    assert photos["during"] == []


@pytest.mark.parametrize("picture_first", [False, True])
def test_the_screen_of_a_test_that_still_shows_the_fault_is_no_picture_of_after_the_work(core, picture_first):
    job = Driver(core).begin()
    job.test(OUTER)
    job.fact("cleaned", position=OUTER, note="")
    taken = {**PICTURE, "sha256": "01" * 32, "shows": "screen", "position": ""}
    if picture_first:
        job.force("photo_taken", **taken)
    job.test(OUTER)
    if not picture_first:
        job.force("photo_taken", **taken)
    photos = told(core, job)["photos"]
    assert (photos["after"], [photo["sha256"] for photo in photos["during"]]) == ([], ["01" * 32])

    job.fact("cleaned", position=OUTER, note="")
    job.test()
    job.force("photo_taken", **{**taken, "sha256": "02" * 32})
    photos = told(core, job)["photos"]
    assert [photo["sha256"] for photo in photos["after"]] == ["02" * 32]


def test_a_fault_that_is_left_shows_after_the_work(core):
    """The job ends here, and the customer sees how it was left."""
    job = Driver(core).begin()
    job.test(OUTER)
    job.fact("cleaned", position=OUTER, note="")
    job.test(OUTER)
    job.force("photo_taken", **{**PICTURE, "sha256": "01" * 32, "shows": "screen", "position": ""})
    job.force("job_closed", note="", why="customer")
    assert [photo["sha256"] for photo in told(core, job)["photos"]["after"]] == ["01" * 32]


def test_a_job_that_ends_without_a_repair_is_not_called_finished(core):
    job = first_test(Driver(core), OUTER)
    job.take("close", "customer")
    assert told(core, job)["standing"] == "The job ended without a repair."


def test_a_spare_that_seems_bad_too_is_told_as_a_spare_before_anything_is_certain(core):
    job = first_test(Driver(core), OUTER)
    job.start_exchange(OUTER, INNER)
    job.guided()
    job.test(INNER)
    job.new_unit(INNER)
    job.guided()
    job.test(INNER)
    report = core("report", job=job.job)
    assert report["headline"] == "The cause is not certain yet."
    own, spare = report["found"][1:]
    pulled, fresh = job.labels[home(OUTER)], job.labels["u00000000new1"]
    assert shown(pulled) in own
    assert shown(fresh) not in own
    assert f"{shown(fresh)}, a spare of ours, seems to be bad" in spare
    off = report["replaced"][-1]
    assert "your hand" not in off
    assert "not put away yet" in off
