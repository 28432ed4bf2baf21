"""A repair is proven by the reading that was bad: taken again before the test, or the record says why not."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import Refused
from tests.core.scenarios import stays

OUTER = "rear-right-outer"


def measured(job, check="ground", reads="bad", value="12", position=OUTER):
    job.fact("circuit_measured", position=position, check=check, value=value, reads=reads)


def pushed_home(job):
    """Push home what hangs, whatever the step asks for."""
    for position in job.view()["board"]["positions"]:
        job.fact("fit_checked", position=position["id"], unit=position["unit"]["id"], checks=[])


def run_tests(job):
    """Push home what hangs, and test until nothing is left to test."""
    while job.step()["form"] in ("checklist", "test"):
        job.tap() if job.step()["form"] == "checklist" else job.test()


@pytest.fixture
def repaired(core):
    """A fault that stayed, 12 Ω to ground, and its repair by the button of the step."""
    job = Driver(core)
    stays(job)
    measured(job)
    repair = job.step()["second"]
    assert [place["id"] for place in repair["segments"]][:3] == ["pins", "connector", "wire"]
    assert repair["position"] == OUTER
    [draft] = repair["events"]
    job.record({**draft, "data": {**draft["data"], "segment": "connector", "what": "Pin seated and locked"}})
    return job


def test_the_bad_reading_comes_before_the_test_and_the_walk(repaired):
    step = repaired.step()
    assert (step["id"], step["form"], step["expects"]["check"]) == ("measure.again", "measure", "ground")
    assert step["text"].endswith("Before the repair it read 12 Ω.")
    assert [choice["reads"] for choice in step["choices"]] == ["good", "bad"]
    assert repaired.view()["stage"] == "prove"
    assert [each["id"] for each in repaired.view()["cautions"]] == ["key_off", "airbag", "battery"]
    assert repaired.core("job_list")["jobs"][0]["next_words"] == step["title"]

    repaired.choose(0)
    assert repaired.step()["form"] == "checklist"
    run_tests(repaired)
    assert repaired.step()["id"] == "walk"
    repaired.finish()
    assert repaired.view()["closed"]


def test_a_reading_that_is_still_bad_leads_to_another_repair(repaired):
    repaired.choose(1)
    step = repaired.step()
    assert step["id"] == "measure.still"
    assert step["title"].startswith("Still bad at right outer")
    repaired.tap("second")
    assert repaired.step()["id"] == "measure"
    repaired.fact("move_dropped", reason="stopped-by-hand")
    repaired.tap()
    assert repaired.step()["id"] == "measure.again"
    repaired.choose(0)
    assert repaired.step()["form"] == "checklist"


def test_no_job_closes_as_repaired_while_the_reading_was_not_taken_again(repaired):
    repaired.test()
    for _ in range(3):
        repaired.test()
    view = repaired.view()
    assert view["step"]["id"] == "measure.again"
    assert not view["proof"]["settled"]
    assert "Do the check that was bad again" in view["reasoning"]["detail"]
    report = repaired.core("report", job=repaired.job)
    assert any("not done again yet" in said for said in report["proof"])
    assert any("not proven" in said for said in report["cautions"])
    pushed_home(repaired)
    with pytest.raises(Refused, match="bad before the repair, and not done again"):
        repaired.fact("job_closed", note="")
    # An end without a repair claims none.
    repaired.fact("job_closed", note="", why="elsewhere")
    assert repaired.view()["closed"]


def test_what_is_still_bad_keeps_it_open_whatever_is_tapped(repaired):
    repaired.choose(1)
    pushed_home(repaired)
    with pytest.raises(Refused, match="still bad after the repair"):
        repaired.fact("job_closed", note="")


@pytest.mark.parametrize(
    ("place", "reason", "told"),
    [(0, "out-of-reach", "out of reach by then"), (1, "no-meter", "no meter at hand")],
)
def test_a_reading_that_cannot_be_taken_again_says_why_on_record(repaired, place, reason, told):
    way = repaired.step()["also"][place]
    assert way["events"][0]["data"]["reason"] == reason
    repaired.record(*way["events"])
    assert repaired.step()["form"] == "checklist"
    run_tests(repaired)
    repaired.finish()
    report = repaired.core("report", job=repaired.job)
    assert any(f"not done again: {told}." in said for said in report["proof"])
    assert any(told in entry["sentence"] for entry in repaired.view()["history"])


def test_another_repair_of_the_circuit_asks_again_though_it_was_left_before(repaired):
    repaired.record(*repaired.step()["also"][0]["events"])
    repaired.fact("circuit_repaired", cause=f"circuit:{OUTER}", what="repaired")
    assert repaired.step()["id"] == "measure.again"


def test_the_report_tells_figures_before_and_after_where_and_what(repaired):
    measured(repaired, reads="good", value="0.3")
    run_tests(repaired)
    report = repaired.core("report", job=repaired.job)
    read = [said for said in report["proof"] if "before the repair" in said]
    assert len(read) == 1
    assert "bad (12 Ω) before the repair, good (0.3 Ω) after it." in read[0]
    done = " ".join(each["sentence"] for each in report["done"])
    assert "Repaired the wiring at right outer, sensor plug." in done
    assert "What was done: Pin seated and locked" in done


def test_a_shared_repair_asks_for_the_readings_of_its_group_alone(core):
    job = Driver(core).begin(layout="both-8")
    job.test(OUTER)
    job.photograph()
    measured(job, "supply", value="2 V")
    measured(job, "supply", value="2 V", position="front-left-inner")
    job.fact("circuit_repaired", cause="feed:rear", what="repaired")
    assert job.step()["expects"] | {"units": []} == {
        "position": OUTER, "check": "supply", "units": [], "compares": True}  # fmt: skip
    measured(job, "supply", reads="good", value="12.4 V")
    assert job.step()["form"] == "test"


def test_a_reading_that_was_bad_by_a_slip_owes_nothing_once_it_is_put_right(repaired):
    slip = next(event for event in repaired.events if event["kind"] == "circuit_measured")
    entry = {"kind": "circuit_measured", "data": {**slip["data"], "reads": "good", "value": "0.2"}}
    repaired.fact("put_right", device=slip["device"], seq=slip["seq"], entry=entry, reason="slip")
    assert repaired.step()["id"] != "measure.again"


def test_a_bad_reading_that_nobody_repaired_owes_nothing(core):
    job = Driver(core)
    stays(job)
    measured(job)
    assert job.step()["id"] == "wiring.measure"


def test_pictures_before_and_after_stand_beside_each_other_in_the_report(repaired):
    for moment, digest in (("after", "a" * 64), ("before", "b" * 64)):
        repaired.fact(
            "photo_taken", sha256=digest, mime="image/jpeg", bytes=10, width=4, height=3,
            shows="work", position=OUTER, unit="", repair=moment)  # fmt: skip
    photos = repaired.core("report", job=repaired.job)["photos"]
    assert [each["sha256"][0] for each in photos["before"] if "repair" in each["words"]] == ["b"]
    assert [each["words"] for each in photos["after"] if each["sha256"] == "a" * 64] == [
        "After the repair: right outer"
    ]
    assert "Picture before the repair at right outer." in [
        entry["sentence"] for entry in repaired.view()["history"]
    ]


def test_a_place_in_ones_own_words_is_told_as_it_was_typed(repaired):
    repaired.fact("circuit_repaired", cause=f"circuit:{OUTER}", what="", segment="under the sill")
    assert "Repaired: the wiring at right outer, under the sill." in [
        entry["sentence"].replace(" (after the repair)", "") for entry in repaired.view()["history"]
    ]


def test_a_closed_job_from_before_says_nothing_that_it_did_not_say(core):
    """An older app closed it without the reading: no rule speaks afterwards, and its report says no more."""
    job = Driver(core)
    stays(job)
    measured(job)
    job.force("circuit_repaired", cause=f"circuit:{OUTER}", what="repaired")
    job.force(
        "test_run", heard=True, faulted=[], silent=[], unplugged=[], codes=[], came_and_went=False, note=""
    )
    job.force("walk_checked", positions=[], missed=[])
    job.force("job_closed", note="")
    view = job.view()
    assert (view["closed"], view["step"]["id"]) == (True, "done")
    report = core("report", job=job.job)
    assert not [said for said in report["proof"] if "before the repair" in said]


def test_a_reading_at_the_wrong_position_moves_by_correction_with_all_that_follows(core):
    """It was made at right outer and entered at right inner: verdict, repair and proof go with it."""
    job = Driver(core)
    stays(job)
    measured(job, position="rear-right-inner")
    slip = job.events[-1]
    job.fact("circuit_repaired", cause=f"circuit:{OUTER}", what="repaired", segment="wire")
    assert job.step()["id"] != "measure.again"
    before = job.view()["reasoning"]["causes"]
    entry = {"kind": "circuit_measured", "data": {**slip["data"], "position": OUTER}}
    job.fact("put_right", device=slip["device"], seq=slip["seq"], entry=entry, reason="slip")

    assert job.view()["reasoning"]["causes"] != before
    assert job.step()["id"] == "measure.again"
    assert job.step()["expects"]["position"] == OUTER
    assert "Measure the ground wire at right outer: bad (12 Ω)." in [
        each["sentence"] for each in job.view()["history"] if each["kind"] == "circuit_measured"
    ]


def test_a_repair_entered_for_another_circuit_moves_by_correction_with_all_that_follows(repaired):
    """The reading that was bad is owed for the repair of its own circuit alone, and the proof with it."""
    repaired.fact("circuit_repaired", cause="circuit:rear-left-inner", what="repaired", segment="wire")
    [first, second] = [each for each in repaired.events if each["kind"] == "circuit_repaired"]
    wrong = {"kind": "circuit_repaired", "data": {**first["data"], "cause": "circuit:rear-left-outer"}}
    repaired.fact("put_right", device=first["device"], seq=first["seq"], entry=wrong, reason="slip")
    assert repaired.step()["id"] != "measure.again"
    right = {"kind": "circuit_repaired", "data": {**second["data"], "cause": f"circuit:{OUTER}"}}
    repaired.fact("put_right", device=second["device"], seq=second["seq"], entry=right, reason="slip")
    assert repaired.step()["id"] == "measure.again"
    assert repaired.step()["expects"]["position"] == OUTER


@pytest.mark.parametrize("again", [["good"], ["bad", "bad", "good"]], ids=["mended", "at the third try"])
def test_a_repair_found_by_checks_that_were_chosen_is_proven_by_the_reading_that_was_bad(core, again):
    """All checks were gone through once more; and where it was bad again, its screen stood there for ever."""
    job = Driver(core).begin()
    job.test(OUTER)
    job.photograph()
    job.fact("move_started", move="meter", fitted={}, position=OUTER, reason="")
    measured(job, "pins", value="")
    assert job.step()["id"] == "found"
    for reads in again:
        job.tap()
        assert (job.step()["id"], job.step()["expects"]["check"]) == ("measure.again", "pins")
        measured(job, "pins", reads, value="")
    assert job.step()["form"] == "test"
