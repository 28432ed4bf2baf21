"""Whole jobs through the core: one next step at a time, from the cautions to the close."""

import pytest

from tests.core import scenarios
from tests.core.driver import Driver
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"


def test_the_beginning_goes_caution_lamps_look_test(core):
    job = Driver(core).open()
    seen = []
    while job.step()["id"] != "test":
        seen.append(job.step()["id"])
        job.tap() if job.step()["action"] else job.choose(0)
    assert seen == ["cautions", "look"]
    assert job.view()["stage"] == "test"


def test_opening_cautions_have_to_be_acknowledged_and_later_ones_stand_at_their_step(core):
    job = Driver(core).open()
    shown = job.view()["cautions"]
    assert shown
    assert all(caution["acknowledge"] for caution in shown)
    job.tap()
    reverse = job.view()["cautions"]
    assert [caution["id"] for caution in reverse] == ["reverse"]
    assert "foot on the brake" in reverse[0]["sentence"]


def test_a_caution_that_was_read_stands_in_the_history_by_its_words(core):
    """It stood there as `key_off`, in Spanish as well."""
    job = Driver(core).open()
    shorts = [caution["short"] for caution in job.view()["cautions"]]
    job.tap()
    told = [entry["sentence"] for entry in job.view()["history"]]
    assert sorted(each for each in told if each.startswith("Caution read")) == sorted(
        f"Caution read: {short}." for short in shorts
    )


def test_a_fault_that_follows_ends_in_a_proven_replacement(core):
    job = Driver(core).faulted()
    step = job.step()
    assert step["form"] == "moves"
    assert job.view()["moves"][0]["move"] == "exchange"
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    assert job.step()["form"] == "test"
    job.test(INNER)
    view = job.view()
    suspect = job.labels[home(OUTER)]
    assert view["reasoning"]["sentence"] == f"The fault followed sensor {suspect[:3]}-{suspect[3:]}."
    assert view["step"]["id"] == "replace"
    assert view["step"]["expects"]["position"] == INNER
    lines = {line["unit"]: line for line in view["trail"]["lines"]}
    assert [point["mark"] for point in lines[home(OUTER)]["points"]] == ["fault", "fault"]
    assert lines[home(OUTER)]["suspect"]

    job.new_unit(INNER)
    job.guided()
    assert job.step()["form"] == "test"
    job.test()
    view = job.view()
    assert view["proof"]["settled"]
    lines = {line["unit"]: line for line in view["trail"]["lines"]}
    # It was in a shop at the tests before.
    assert [point["test"] for point in lines["u00000000new1"]["points"]] == [2]
    assert [point["position"] for point in lines[home(OUTER)]["points"]] == [OUTER, INNER, None]
    job.finish()
    assert job.view()["closed"]
    assert core("unit", unit=home(OUTER))["where"] == "at the parts counter"


def test_a_fault_that_stays_leads_to_the_wiring_and_is_proven_after_the_repair(core):
    job = Driver(core).faulted()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(OUTER)
    for _ in range(4):
        step = job.step()
        if step["id"].startswith("wiring"):
            break
        job.test(OUTER)
    view = job.view()
    assert view["reasoning"]["sentence"] == "The fault stayed at right outer."
    assert [row["position"] for row in view["trail"]["rows"] if row["suspect"]] == [OUTER]
    job.choose(0)
    job.choose(1)
    assert job.step()["id"] == "wiring.found"
    job.tap()
    job.choose(0)
    for _ in range(3):
        job.test()
        if job.view()["proof"]["settled"]:
            break
    assert job.view()["proof"]["settled"]
    job.finish()
    assert job.view()["closed"]


def test_a_fault_that_vanishes_when_the_parts_are_handled_ends_as_clear(core):
    job = Driver(core).faulted()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    for _ in range(6):
        job.test()
        if job.view()["proof"]["settled"]:
            break
    view = job.view()
    assert view["reasoning"]["verdict"] is None
    assert view["reasoning"]["sentence"] == "The fault is gone."
    assert view["step"]["id"] == "seat"
    job.tap()
    assert job.step()["id"] == "walk"
    job.finish()


def test_a_fault_that_comes_and_goes_needs_more_clean_tests(core):
    def clean_tests_to_prove(**how):
        job = Driver(core, job=f"j{len(core('jobs'))}").begin()
        job.labels = {}
        job.core("state")
        job.test(OUTER, **how)
        job.photograph()
        unit = core("job", job=job.job)["board"]["positions"][3]["unit"]["id"]
        other = core("job", job=job.job)["board"]["positions"][2]["unit"]["id"]
        job.exchange(rear_right_outer=other, rear_right_inner=unit)
        for count in range(1, 30):
            job.test()
            if job.view()["proof"]["settled"]:
                return count, job.view()["proof"]["clean_in_a_row"]
        raise AssertionError("never proven")

    steady, counted = clean_tests_to_prove()
    assert counted == steady
    core("reset", events=[])
    seldom, counted = clean_tests_to_prove(came_and_went=True)
    assert counted == seldom
    assert seldom > steady


def test_an_unheard_test_is_set_aside_and_may_be_made_again(core):
    job = Driver(core).begin()
    job.test(OUTER, heard=False)
    view = job.view()
    assert view["step"]["id"].startswith("sounder.")
    assert view["step"]["also"][0]["words"] == "Run the self-test again"
    assert not view["trail"]["tests"][0]["counted"]
    assert view["reasoning"]["verdict"] is None
    assert view["reasoning"]["aside"][0].startswith("Test 1 is set aside")


def test_no_fault_shown_offers_that_it_comes_and_goes_or_the_close(core):
    job = Driver(core).begin()
    job.test()
    assert job.step()["id"] == "nothing"
    job.tap()
    assert job.step()["id"] == "test.again"
    job.tap("second")
    assert job.view()["closed"]


def test_an_exchange_goes_on_where_it_was_after_a_reload(core):
    job = Driver(core).faulted()
    job.start_exchange()
    job.scan_wanted()
    before = job.step()
    core("reset", events=[{"event": event} for event in job.events])
    assert job.step() == before
    assert (before["progress"]["now"], before["progress"]["total"]) == (2, 5)


def test_a_move_that_is_given_up_brings_the_pulled_units_back(core):
    job = Driver(core).faulted()
    job.start_exchange()
    job.scan_wanted()
    job.fact("move_dropped", reason="rain")
    expects = job.step()["expects"]
    assert expects["do"] == "fit"
    job.scan(job.label_of(expects["unit"]))
    assert job.view()["out"] == []


def test_putting_the_good_ones_back_asks_for_one_more_test(core):
    job = Driver(core).faulted()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(INNER)
    job.new_unit(INNER)
    job.guided()
    job.test()
    job.tap()
    step = job.step()
    assert step["id"] == "home"
    job.tap("second")
    job.guided()
    assert job.step()["form"] == "test"
    job.test()
    assert job.step()["id"] == "walk"  # what was heard before were other sensors
    job.tap()
    assert job.step()["id"] == "where_to"
    holds = core("state")["vehicles"]["v1"]["holds"]
    assert holds[INNER] == home(INNER)
    assert holds[OUTER] == "u00000000new1"


def test_the_next_job_on_the_vehicle_knows_its_units(core):
    job = Driver(core).begin()
    job.test()
    job.tap("second")
    again = Driver(core, device="dfedcba9876543210", job="j2")
    again.begin()
    assert again.view()["board"]["positions"][0]["unit"]["id"] == home("rear-left-outer")
    assert len(core("jobs")) == 2


@pytest.mark.parametrize("layout", ["rear-6", "front-4", "both-8", "both-12", "around-12"])
def test_every_layout_reaches_a_next_move(core, layout):
    job = Driver(core).begin(layout=layout)
    first = job.view()["board"]["positions"][0]["id"]
    job.test(first)
    job.photograph()
    moves = job.view()["moves"]
    assert moves
    assert all(move["outlook"] for move in moves)


def test_what_all_positions_share_is_looked_at_when_no_test_can_tell_it_apart(core):
    job = Driver(core).begin()
    job.test(*[position["id"] for position in job.view()["board"]["positions"]])
    step = job.step()
    if step["form"] == "test":
        job.test(*[position["id"] for position in job.view()["board"]["positions"]])
        step = job.step()
    assert step["id"] == "wiring.several"
    assert len(step["choices"]) == 2
    job.choose(0)
    assert job.step()["form"] == "test"


def test_a_repair_that_comes_first_is_led_through(core):
    """The rear faulted as a whole and the front clean: the feed is looked at before a sensor is touched."""
    job = Driver(core)
    scenarios.rear_of_eight(job)
    step = job.step()
    assert step["id"] == "wiring.shared"
    assert step["second"]["words"] == "Other moves"
    job.tap()
    assert job.events[-1]["kind"] == "circuit_repaired"
    assert job.step()["form"] == "test"


def test_a_meter_reading_after_a_repair_speaks_of_the_repaired_circuit(core):
    job = Driver(core).faulted()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(OUTER)
    job.fact("circuit_measured", position=OUTER, check="connector", value="", reads="bad")
    before = core("job", job=job.job)["reasoning"]["probability"]
    job.fact("circuit_repaired", cause=f"circuit:{OUTER}", what="pin pushed home")
    for check in ("connector", "ground", "supply", "signal"):
        job.fact("circuit_measured", position=OUTER, check=check, value="", reads="good")
    after = core("job", job=job.job)["reasoning"]
    assert after["verdict"][0]["cause"] == f"circuit:{OUTER}"
    assert after["probability"] >= before - 1_000_000
    assert not after["verdict"][0]["live"]


def test_an_empty_position_can_be_reported_on_and_needs_no_cause(core):
    job, empty = Driver(core).begin(), "rear-left-inner"
    job.force("unit_labelled", unit=home(empty), code=job.codes[9], how="scanned")
    job.force("unit_pulled", unit=home(empty), position=empty, how="scanned")
    job.force("unit_moved", unit=home(empty), place="stock", how="scanned", note="")
    job.force("left_deliberately", unit="empty", position=empty, reason="left empty")
    assert job.step()["expects"]["empty"] == [empty]
    job.test(empty, unplugged=[empty])
    reasoning = job.view()["reasoning"]
    assert reasoning["verdict"] is None
    assert reasoning["sentence"] == "Only what is unplugged shows a fault."


def test_what_needs_a_sensor_is_not_offered_at_a_position_that_was_left_empty(core):
    """Its sensor stood under suspicion; nobody can listen to it, exchange or unplug it any more."""
    job, empty = Driver(core).begin(), "rear-left-inner"
    job.test(empty)
    job.force("unit_labelled", unit=home(empty), code=job.codes[9], how="scanned")
    job.force("unit_pulled", unit=home(empty), position=empty, how="scanned")
    job.force("unit_moved", unit=home(empty), place="customer", how="scanned", note="")
    job.force("left_deliberately", unit="empty", position=empty, reason="left empty")
    job.test(empty)

    at_empty = {move["move"]: move for move in job.view()["moves"] if empty in move["touches"]}

    assert sorted(at_empty) == ["meter", "replace"]
    asked = at_empty["replace"]["form"]["expects"]
    assert (asked["position"], asked["old"]) == (empty, ""), "a new one goes there, instead of none"
