"""A job may rest and may end unrepaired, from any step, and its record says why."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import Refused
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"


@pytest.fixture
def job(core):
    return Driver(core).faulted()


def test_a_job_rests_for_a_part_and_says_its_number(job):
    job.take("pause", "part", part="PS-1", note="Tuesday")

    step = job.step()
    assert (step["id"], step["title"]) == ("paused", "Waiting for a part")
    assert step["text"].startswith("To order: PS-1. Tuesday")
    assert job.view()["history"][0]["sentence"] == ("Job paused: waiting for a part. To order: PS-1. Tuesday")


def test_going_on_leads_back_to_the_step_it_was_at(job):
    before = job.step()
    job.take("pause", "weather")
    job.tap()
    assert job.step() == before


def test_a_job_may_rest_before_its_first_test(core):
    job = Driver(core).open()
    job.take("pause", "customer")
    assert job.step()["id"] == "paused"
    job.tap()
    assert job.step()["id"] == "cautions"


@pytest.mark.parametrize(
    ("kind", "data", "ends"),
    [
        ("cleaned", {"position": OUTER, "note": ""}, True),
        ("unit_pulled", {"unit": home(OUTER), "position": OUTER, "how": "tapped"}, True),
        ("money_set", {"labour_per_hour": 1, "part_price": 1, "wrong_purchase": 1}, False),
        ("reach_set", {"position": OUTER, "minutes": 9}, False),
    ],
)
def test_work_ends_a_pause_and_a_setting_does_not(job, kind, data, ends):
    job.take("pause", "part")
    job.force(kind, **data)
    assert job.view()["paused"] is not ends


def test_what_is_in_the_hand_is_said_while_it_rests_and_may_be_put_away(job):
    job.start_exchange()
    job.scan_wanted()
    unit = home(job.view()["out"][0]["id"].split(".")[1])
    job.take("pause", "weather")
    assert "is in your hand" in job.step()["text"]
    job.fact("unit_moved", unit=unit, place="stock", how="tapped", note="")
    assert job.step()["id"] == "paused"
    assert "in your hand" not in job.step()["text"]


def test_what_hangs_on_its_wire_is_said_while_the_job_rests_for_a_part(job):
    job.start_exchange()
    job.guided()
    job.test(INNER)
    hangs = "Those at right inner and right outer hang on their wires. Push them home before anyone drives."
    assert job.view()["ways"]["pause"]["text"] == job.view()["ways"]["hand"]["text"] == hangs
    job.take("pause", "part", part="PS-1")
    assert job.step()["text"] == f"To order: PS-1. {hangs}"


def test_a_pause_that_arrives_after_the_closing_changes_nothing(job):
    job.take("close", "customer")
    job.force("job_paused", why="part", part="", note="")
    view = job.view()
    assert view["closed"]
    assert not view["paused"]


def test_a_job_ends_unrepaired_with_its_reason_on_record(job):
    job.take("close", "other", note="the car is sold")
    view = job.view()
    assert view["closed"]
    assert view["ways"] is None
    assert view["step"]["text"] == (
        "Closed by Mara. Its record stays. Job closed without a repair: another reason. the car is sold"
    )
    assert view["history"][0]["sentence"] == ("Job closed without a repair: another reason. the car is sold")


def test_a_move_that_nothing_was_done_for_does_not_keep_a_job_open(job):
    job.start_exchange()
    assert job.view()["ways"]["close"]["blockers"] == []
    job.take("close", "elsewhere")
    assert job.view()["closed"]


def test_what_is_out_is_settled_before_a_job_ends_unrepaired(job):
    job.start_exchange()
    job.scan_wanted()
    close = job.view()["ways"]["close"]
    assert close["blockers"]
    with pytest.raises(Refused):
        job.take("close", "customer")
    job.record(*close["stop"]["events"])
    job.scan_wanted()
    hangs = ["The one at right inner hangs on its wire. Push it home."]
    assert job.view()["ways"]["close"]["blockers"] == hangs
    job.take("close", "customer")
    assert job.view()["closed"]


def test_a_plug_that_is_off_is_put_back_on_before_the_end(job):
    job.fact("move_started", move="unplug", fitted={}, position=OUTER, reason="does it watch")
    job.test(OUTER, unplugged=[OUTER])
    assert job.view()["ways"]["close"]["blockers"] == ["The plug at right outer is off. Put it back on."]


def test_a_repair_is_recorded_at_any_step_and_a_test_comes_next(job):
    job.take("repair", f"circuit:{OUTER}", what="pin pushed back")
    assert job.step()["form"] == "test"
    assert "pin" not in job.step()["title"]


def test_a_job_is_handed_over_from_any_step_and_says_whose_it_is(job):
    job.start_exchange()
    hand = job.view()["ways"]["hand"]
    assert hand["people"] == ["Mara"]
    job.fact("job_handed_over", to="Ben", note="the right side is done")

    view = job.view()
    assert view["step"]["id"] == "pull"
    assert (view["handed"]["to"], view["handed"]["by"]) == ("Ben", "Mara")
    assert view["history"][0]["sentence"] == "Handed over to Ben. the right side is done"
    assert [row["handed_to"] for row in job.core("jobs")] == ["Ben"]


def test_whoever_works_on_another_open_job_may_be_handed_one(core, job):
    ben = Driver(core, device="d00000000000000b1", job="j00000000beef", actor="Ben")
    ben.open()
    assert core("people") == ["Ben", "Mara"]
    ben.take("close", "customer")
    assert core("people") == ["Mara"]


def test_a_handover_ends_when_somebody_else_works_on_and_not_by_a_setting(job):
    job.fact("job_handed_over", to="Ben", note="")
    job.fact("reach_set", position=OUTER, minutes=9)
    assert job.view()["handed"]["to"] == "Ben"
    job.fact("cleaned", position=OUTER, note="")
    assert job.view()["handed"] is None


def test_whoever_it_was_handed_to_keeps_it_while_he_works_and_may_hand_it_on(job):
    job.fact("job_handed_over", to="Mara", note="")
    job.fact("cleaned", position=OUTER, note="")
    assert job.view()["handed"]["to"] == "Mara"
    job.fact("job_handed_over", to="Ben", note="")
    assert job.view()["handed"]["to"] == "Ben"


def test_a_handover_leaves_a_pause_as_it_is_and_comes_too_late_after_the_closing(job):
    job.take("pause", "part")
    job.fact("job_handed_over", to="Ben", note="")
    assert job.view()["paused"]
    job.tap()
    job.take("close", "customer")
    job.force("job_handed_over", to="Ben", note="")
    assert job.view()["closed"]
