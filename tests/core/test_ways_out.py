"""No dead ends: whatever happens in the yard, there is a next step and a way out that keeps the record."""

import pytest

from tests.core.driver import DEVICE
from tests.core.driver import Driver
from tests.core.driver import Refused
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"
OTHER_PHONE = "dfedcba9876543210"


@pytest.fixture
def job(core):
    """A baseline fault at right outer, every position photographed."""
    return Driver(core).faulted()


def followed(job):
    """Exchange, retest, verdict: the fault followed."""
    job.start_exchange()
    job.guided()
    job.test(INNER)
    assert job.step()["id"] == "replace"
    return job


def also(job, words):
    """Take one of the small ways out of the step."""
    ways = {way["words"]: way["events"] for way in job.step()["also"]}
    job.record(*ways[words])


def test_every_step_of_a_move_can_stop_it(job):
    job.start_exchange()
    job.scan_wanted()
    also(job, "Stop this move")
    assert job.step()["expects"]["do"] == "fit"


def test_a_move_whose_sensor_was_scrapped_ends_and_the_empty_place_is_asked_about(job):
    job.start_exchange()
    job.scan_wanted()
    job.scan_wanted()
    job.fact("unit_moved", unit=home(INNER), place="scrapped", how="tapped", note="broke in the hand")
    assert job.step()["id"] == "move.impossible"
    job.tap()
    job.scan_wanted()
    step = job.step()
    assert step["id"] == "fill"
    assert "Right inner is empty" in step["title"]
    also(job, "Leave it empty")
    assert job.step()["id"] not in ("fill", "replace")


@pytest.mark.parametrize("by_label", [False, True])
def test_an_exchange_that_was_stopped_half_way_goes_on_with_the_one_in_the_hand(job, by_label):
    job.start_exchange()
    for _ in range(3):
        job.scan_wanted()
    also(job, "Stop this move")
    step = job.step()
    assert step["id"] == "fill"
    (offered,) = step["choices"]
    code = job.core("unit", unit=home(OUTER))["shown"]
    assert offered["words"] == f"Fit {code}, the one in your hand, at right inner"
    assert offered["note"] == f"{code} showed a fault in its last self-test."
    if by_label:
        said = job.core("scan", job=job.job, text=code, how="typed", expects={"do": "new", "position": INNER})
        assert said["events"] == offered["events"]
    job.choose(0)
    job.guided()
    job.test(INNER)
    assert job.step()["title"] == f"Replace sensor {code}"


def test_a_replacement_that_was_stopped_does_not_ask_to_fit_the_bad_one_again(job):
    followed(job)
    job.new_unit(INNER)
    job.scan_wanted()
    also(job, "Stop this move")
    step = job.step()
    assert (step["id"], step["title"]) == ("fill", "Right inner is empty")
    new, bad = (job.core("unit", unit=unit)["shown"] for unit in ("u00000000new1", home(OUTER)))
    # Whoever has to end for today may put it back all the same.
    assert [choice["words"] for choice in step["choices"]] == [
        f"Use sensor {new}", f"Fit {bad}, the one in your hand, at right inner",
    ]  # fmt: skip
    assert step["choices"][1]["note"] == f"{bad} was found bad on Blue estate."
    job.choose(0)
    job.guided()
    job.test()
    assert job.step()["id"] == "walk"


def test_what_was_found_bad_is_not_offered_for_another_place(job):
    followed(job)
    job.new_unit(INNER)
    job.guided()
    job.test()
    job.fact("unit_pulled", unit=home(INNER), position=OUTER, how="tapped")
    job.fact("unit_moved", unit=home(INNER), place="scrapped", how="tapped", note="")
    assert (job.step()["id"], job.step()["title"]) == ("fill", "Right outer is empty")
    assert job.step()["choices"] == []


def test_an_empty_position_can_be_filled_with_a_new_sensor(job):
    job.start_exchange()
    job.scan_wanted()
    job.fact("unit_moved", unit=home(INNER), place="scrapped", how="tapped", note="")
    job.tap()
    assert job.step()["expects"]["position"] == INNER
    job.new_unit(INNER)
    job.guided()
    assert job.step()["form"] == "test"


def test_a_job_with_an_empty_position_closes_only_when_that_is_meant(job):
    job.start_exchange()
    job.scan_wanted()
    job.fact("unit_moved", unit=home(INNER), place="customer", how="tapped", note="")
    job.fact("move_dropped", reason="rain")
    assert job.check({"kind": "job_closed", "data": {"note": ""}})["rule"] == "closing"
    also(job, "Leave it empty")
    assert job.check({"kind": "job_closed", "data": {"note": ""}}) is None


def test_an_empty_position_that_a_test_does_not_speak_of_sets_nothing_aside(job):
    job.start_exchange()
    job.scan_wanted()
    job.test(OUTER)
    assert job.view()["trail"]["tests"][1]["counted"]


def test_an_empty_position_may_be_said_not_to_have_been_reported_on(job):
    job.start_exchange()
    job.scan_wanted()
    places = job.view()["board"]["positions"]
    job.test(silent=[each["id"] for each in places if not each["unit"]])
    assert job.step()["form"]


def test_after_a_verdict_one_may_test_again_or_close_without_a_repair(job):
    followed(job)
    also(job, "Run the self-test again")
    assert job.step()["form"] == "test"
    job.test(INNER)
    assert job.step()["id"] == "replace"
    job.take("close", "customer")
    assert job.view()["closed"]


def test_a_plug_that_was_off_for_a_test_goes_back_on_before_anything_else(job):
    job.fact("move_started", move="unplug", fitted={}, position=OUTER, reason="does it watch")
    job.test(OUTER, unplugged=[OUTER])
    step = job.step()
    assert step["id"] == "plug_back"
    job.tap()
    assert job.step()["id"] != "plug_back"


def test_a_sensor_that_faulted_last_is_not_offered_as_the_new_one(job):
    followed(job)
    job.new_unit(INNER)
    job.guided()
    job.test()
    job.tap()
    into_stock = job.step()["choices"][2]  # of all places
    assert into_stock["wants"] == "note"
    job.record(
        *[
            {**each, "data": {**each["data"], "note": "for a try"}} if each["kind"] == "unit_moved" else each
            for each in into_stock["events"]
        ]
    )
    assert job.view()["closed"]
    bad = home(OUTER)
    again = Driver(job.core, device=OTHER_PHONE, job="j2")
    again.labels = dict(job.labels)
    again.begin()
    again.test("rear-left-outer")
    again.photograph()
    again.exchange(rear_left_outer=home("rear-left-inner"), rear_left_inner=home("rear-left-outer"))
    again.test("rear-left-inner")
    offered = [choice["events"] for choice in again.step()["choices"]]
    assert not any(bad in str(events) for events in offered)


def test_taking_back_a_new_sensor_that_a_move_rests_on_is_refused(job):
    followed(job)
    job.new_unit(INNER)
    added = next(e["seq"] for e in job.events if e["kind"] == "unit_added")
    taken = {"kind": "corrected", "data": {"device": DEVICE, "seq": added, "reason": "slip"}}
    assert job.check(taken)["rule"] == "correction"
    job.force("corrected", device=DEVICE, seq=added, reason="slip")
    job.view()


def test_taking_back_a_label_of_a_sensor_in_hand_is_refused(job):
    job.start_exchange()
    job.scan_wanted()
    labelled = next(e["seq"] for e in job.events if e["kind"] == "unit_labelled")
    taken = {"kind": "corrected", "data": {"device": DEVICE, "seq": labelled, "reason": "slip"}}
    assert job.check(taken)["rule"] == "correction"


def test_work_that_arrives_after_the_closing_opens_the_job_again(job):
    followed(job)
    job.take("close", "customer")
    late = Driver(job.core, device=OTHER_PHONE)
    late.force("unit_pulled", unit=home("rear-left-outer"), position="rear-left-outer", how="tapped")
    view = job.view()
    assert not view["closed"]
    assert view["reopened"]
    assert [line["id"] for line in view["out"]] == [home("rear-left-outer")]


def test_seeing_a_sensor_needs_its_label_to_be_read(job):
    seen = {"unit": home(OUTER), "place": "scrapped", "position": ""}
    assert job.check({"kind": "unit_seen", "data": {**seen, "how": "tapped"}})["rule"] == "one_place"
    assert job.check({"kind": "unit_seen", "data": {**seen, "how": "scanned"}}) is None


def test_a_sensor_that_stays_quiet_at_the_pole_is_listened_to_again_or_accepted(job):
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    while job.step()["id"] != "walk":
        if job.step()["id"] == "seat":
            job.tap()
        else:
            job.test()
    everything = [position["id"] for position in job.step()["expects"]["positions"]]
    job.fact("walk_checked", positions=everything[1:], missed=everything[:1])
    assert job.step()["id"] == "walk.again"
    also(job, "Leave it as it is")
    assert job.step()["id"] != "walk.again"


def test_finished_checks_of_one_circuit_are_not_asked_again_after_a_repair_elsewhere(job):
    job.start_exchange()
    job.guided()
    job.test(OUTER)
    job.choose(0)
    job.fact("circuit_repaired", cause="control", what="plug cleaned")
    job.test(OUTER)
    assert job.step()["progress"]["now"] == 2


@pytest.mark.parametrize(
    ("kind", "data"),
    [
        ("unit_seen", {"unit": home(OUTER), "place": "fitted", "position": "", "how": "scanned"}),
        ("circuit_repaired", {"cause": "circuit:nowhere", "what": ""}),
        ("circuit_repaired", {"cause": "feed:nowhere", "what": ""}),
        ("rates_set", {"rates_ppm": {"luck": 5}, "confidence_ppm": 0}),
        ("rates_set", {"rates_ppm": {}, "confidence_ppm": 1000000}),
        ("test_run", {"heard": True, "faulted": [OUTER, OUTER], "silent": [], "unplugged": [], "codes": [],
                      "came_and_went": False, "note": ""}),
        ("move_started", {"move": "replace", "fitted": {OUTER: "ughost"}, "position": OUTER, "reason": ""}),
    ],
)  # fmt: skip
def test_what_would_break_the_view_is_refused_and_harmless_when_it_arrives(job, kind, data):
    if kind != "move_started":
        with pytest.raises(Refused):
            job.fact(kind, **data)
    job.force(kind, **data)
    assert job.view()["step"]
    job.core("jobs")
    job.core("units")


def test_two_sensors_with_one_label_count_for_nothing_until_it_is_settled(job):
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    other = Driver(job.core, device=OTHER_PHONE)
    other.force("unit_labelled", unit=home("rear-left-outer"), code=job.labels[home(OUTER)], how="scanned")
    job.test(INNER)
    test = job.core("state")["jobs"][job.job]["tests"][-1]
    assert set(test["disputed"]) == {INNER, "rear-left-outer"}


def test_a_ghost_test_with_no_sounder_does_not_make_the_fault_come_and_go(core):
    job = Driver(core).begin()
    job.test(OUTER, heard=False, came_and_went=True)
    assert not job.view()["comes_and_goes"]
