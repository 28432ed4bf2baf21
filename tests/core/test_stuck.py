"""A fault that stays although every check of its wiring reads good: there is a way on from each step."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.scenarios import swapped

OUTER, INNER = "rear-right-outer", "rear-right-inner"


@pytest.fixture
def job(core):
    """The fault stays at right outer: its wiring is to be checked."""
    job = swapped(Driver(core), OUTER)
    assert job.step()["id"] == "wiring.measure"
    return job


def check_all(job, choice=0):
    """Go through the checks; 0 reads good, 2 is unclear. No two channels can be exchanged here."""
    while job.step()["id"].endswith("measure"):
        job.choose(2 if job.step()["expects"]["check"] == "channels" else choice)


def meter(job):
    return [move for move in job.view()["moves"] if move["move"] == "meter"]


def unplugged(job):
    """Return the position whose connector the move under way has pulled, in a list."""
    move = job.core("state")["jobs"][job.job]["move"]
    return [move["position"]] if move and move["move"] == "unplug" else []


def test_good_checks_move_the_conclusion_and_lead_back_to_the_moves(job):
    check_all(job)
    assert job.step()["form"] == "moves"
    assert job.view()["reasoning"]["verdict"] is None


def test_the_same_again_leads_to_what_is_left(job):
    check_all(job)
    job.exchange(rear_right_outer=home("rear-left-outer"), rear_left_outer=home(INNER))
    job.test(OUTER)
    step = job.step()
    assert (step["id"], step["form"]) == ("wiring.stuck", "choices")
    assert len(step["choices"]) == 6
    job.choose(3)
    job.guided()  # what hangs is pushed home
    assert job.step()["form"] == "test"
    job.test()
    assert job.step()["id"] != "wiring.stuck"


def test_checking_again_is_a_round_of_its_own_and_counts_for_itself(job):
    check_all(job)
    before = job.core("reasoned", job=job.job)["causes"]
    job.record(*meter(job)[0]["events"])
    assert job.step()["progress"]["now"] == 1
    check_all(job)
    assert job.step()["text"].startswith("0 of 2 read bad. Could not be made: 1.")
    job.tap()
    after = job.core("reasoned", job=job.job)["causes"]
    chance = [{c["cause"]: c["probability"] for c in each}[f"circuit:{OUTER}"] for each in (before, after)]
    assert chance[1] < chance[0]


def test_beside_the_repair_of_a_likely_circuit_stands_its_check(job):
    check_all(job)
    offered = [move["move"] for move in job.view()["moves"]]
    assert offered[offered.index("repair") + 1] == "meter"


def test_a_repair_that_comes_first_as_a_test_said_the_same_again_leads_to_what_finds_it(job):
    """Whoever follows what is offered, all checks good, is asked to check, never to say it is done."""
    for _ in range(48):
        step = job.step()
        if step["form"] == "measure":
            job.choose(2 if step["expects"]["check"] == "channels" else 0)
        elif step["form"] == "test":
            out = unplugged(job)
            job.test(*sorted({OUTER, *out}), unplugged=out)
        elif step["form"] == "choices":
            job.choose(0)
        else:
            job.tap()
            job.guided()
    assert job.core("state")["jobs"][job.job]["repairs"] == []


def test_checks_that_leave_it_open_are_not_offered_again_and_say_how_often_they_were_made(job):
    check_all(job, 2)
    assert meter(job) == []
    assert job.step()["id"] == "wiring.stuck"
    job.choose(0)
    check_all(job)
    job.exchange(rear_right_outer=home("rear-left-outer"), rear_left_outer=home(INNER))
    job.test(OUTER)
    assert job.step()["title"] == "Right outer: checked 2 times, nothing found"


def test_what_could_not_be_checked_is_not_said_to_be_sound(job):
    check_all(job, 2)
    step = job.step()
    assert step["title"] == "Right outer: not everything could be checked"
    assert step["text"].startswith("15 checks could not be made.")
    assert "7 of 8 places can have the fault" in step["text"]
    assert step["choices"][0]["words"] == "Make these checks"


def test_few_that_could_not_be_checked_are_named_with_where_it_likely_is(job):
    while job.step()["id"].endswith("measure"):
        job.choose(2 if job.step()["expects"]["check"] in ("pins", "continuity", "channels") else 0)
    assert job.step()["text"] == (
        "Not made: look at the pins and measure the signal wire. Reach the place, or ask someone who can."
        " Most likely it is in the channel of the control unit: 73 %."
    )


def test_only_the_exchange_of_channels_not_made_leaves_the_channel(job):
    check_all(job)
    job.exchange(rear_right_outer=home("rear-left-outer"), rear_left_outer=home(INNER))
    job.test(OUTER)
    assert job.step()["title"] == "Right outer: the checks found nothing"


def test_a_bad_check_in_a_later_round_ends_in_the_repair(job):
    check_all(job, 2)
    job.choose(0)
    job.choose(1)
    assert job.step()["id"] == "found"
    job.tap("second")
    step = job.step()
    assert step["id"] == "wiring.found"
    assert step["action"]["words"] == "I have repaired it"


def test_a_new_control_unit_is_two_repairs_in_one(job):
    check_all(job, 2)
    job.choose(4)
    state = job.core("state")["jobs"][job.job]
    assert [each["cause"] for each in state["repairs"]] == [f"circuit:{OUTER}", "control"]
    job.guided()
    assert job.step()["form"] == "test"


def test_a_repair_said_twice_before_a_test_is_one_to_the_reasoning(job):
    for _ in range(2):
        job.fact("circuit_repaired", cause=f"circuit:{OUTER}", what="repaired")
    job.guided()
    check = {"position": OUTER, "check": "connector", "value": "", "reads": "bad"}
    job.fact("circuit_measured", **check)
    job.test(OUTER)
    assert f"circuit:{OUTER}#2" in {c["cause"] for c in job.core("reasoned", job=job.job)["causes"]}


def test_a_repair_while_checking_again_leads_to_its_test_not_through_all_checks_anew(job):
    check_all(job, 2)
    job.choose(0)
    assert job.step()["id"] == "measure"
    job.fact("circuit_repaired", cause=f"circuit:{OUTER}", what="repaired")
    job.guided()  # what hangs is pushed home
    assert job.step()["form"] == "test"


def test_what_positions_share_is_checked_and_repaired_under_the_cautions_of_the_wiring(core):
    job = Driver(core).begin()
    job.test("rear-left-outer", "rear-left-inner", INNER, OUTER)
    view = job.view()
    assert view["step"]["id"] == "wiring.several"
    assert [each["id"] for each in view["cautions"]] == ["key_off", "airbag", "battery"]
    told = {move["move"]: [each["id"] for each in move["cautions"]] for move in view["moves"]}
    assert (told["repair"], told["retest"]) == (["key_off", "airbag", "battery"], [])
