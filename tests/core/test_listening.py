"""Listening: what a sensor that ticks, or does not, says of the causes; common practice, no source."""

import pytest

from tests.core.brute_force import Enumeration
from tests.core.driver import Driver
from tests.hosts import CoreError

PLACES = ["a", "b", "c", "d"]
FITTED = {place: place.upper() for place in PLACES}
FAULTED = "rear-right-outer"


@pytest.fixture
def job(core):
    return Driver(core)


def case(*tests, **more):
    return {
        "positions": [{"id": place, "group": "rear"} for place in PLACES],
        "units": [{"id": place.upper()} for place in PLACES],
        "tests": list(tests),
        "meter": [],
        **more,
    }


def heard(core, **listen):
    """What the causes come to after one fault at `a`, with what was heard."""
    answer = core("reason", case=case({"fitted": FITTED, "faulted": ["a"], "listen": listen}))
    return {each["cause"]: each["probability"] / 1e9 for each in answer["causes"]}


def test_silence_at_the_fault_and_ticks_beside_it_speak_for_the_sensor(core):
    before = heard(core)
    silent = heard(core, a="silent", b="ticks", c="ticks")

    assert silent["unit:A"] > before["unit:A"]
    assert silent["blocked:a"] < before["blocked:a"] / 5
    assert silent["feed:rear"] < before["feed:rear"] / 10


def test_a_tick_at_the_fault_speaks_for_what_does_not_silence(core):
    before = heard(core)
    ticks = heard(core, a="ticks")

    assert ticks["unit:A"] < before["unit:A"]
    assert ticks["blocked:a"] / ticks["unit:A"] > 3 * before["blocked:a"] / before["unit:A"]


def test_silence_everywhere_speaks_for_what_all_share(core):
    everywhere = dict.fromkeys(PLACES, "silent")
    only = {"fitted": FITTED, "faulted": [], "silent": PLACES, "listen": everywhere}

    best = core("reason", case=case(only))["explanations"][:2]

    assert sorted(each["causes"] for each in best) == [["control"], ["feed:rear"]]
    assert sum(each["probability"] for each in best) > 750_000_000


def test_who_only_listened_has_suspects_and_no_test(core):
    only = {"fitted": FITTED, "faulted": [], "silent": PLACES, "listen": {"a": "silent", "b": "ticks"}}
    answer = core("reason", case=case(only))
    exact = Enumeration(case(only))

    found = {each["cause"]: each["probability"] / 1e9 for each in answer["causes"]}
    assert found == pytest.approx(exact.marginals(), abs=1e-9)
    assert {cause for each in answer["explanations"] for cause in each["causes"]} == {
        "unit:A",
        "circuit:a",
        "feed:rear",
        "control",
    }
    assert answer["ignored"] == []


def test_it_counts_where_the_self_test_was_not_heard(core):
    unheard = {"fitted": FITTED, "faulted": ["a"], "heard": False, "listen": {"b": "silent"}}

    answer = core("reason", case=case(unheard))

    assert [each["test"] for each in answer["ignored"]] == [0]
    assert answer["explanations"][0]["causes"] == ["unit:B"]


def test_a_repair_before_it_makes_it_speak_of_what_is_there_now(core):
    first = {"fitted": FITTED, "faulted": ["a"]}
    then = {
        "fitted": FITTED,
        "faulted": [],
        "silent": PLACES,
        "repaired": ["circuit:a"],
        "listen": {"a": "silent"},
    }
    wanted = Enumeration(case(first, then)).marginals()

    answer = core("reason", case=case(first, then))

    assert {e["cause"]: e["probability"] / 1e9 for e in answer["causes"]} == pytest.approx(wanted, abs=1e-9)
    assert wanted["circuit:a#2"] > 0.005


@pytest.mark.parametrize(
    ("listen", "field", "wanted"),
    [
        ({"x": "ticks"}, "tests[0].listen.x", "the id of one of the positions"),
        ({"a": "loud"}, "tests[0].listen.a", "one of ticks, silent"),
        ({"a": True}, "tests[0].listen.a", "one of ticks, silent"),
        (["a"], "tests[0].listen", "an object"),
        ({"b": "ticks"}, "tests[0].listen.b", "a position that is fitted and plugged in"),
        ({"c": "silent"}, "tests[0].listen.c", "a position that is fitted and plugged in"),
    ],
)
def test_bad_input_names_the_field(core, listen, field, wanted):
    test = {"fitted": {"a": "A", "c": "C"}, "faulted": ["c"], "unplugged": ["c"], "listen": listen}

    with pytest.raises(CoreError) as refused:
        core("reason", case=case(test))

    assert field in str(refused.value)
    assert wanted in str(refused.value)


def test_the_planner_offers_it_where_it_pays_and_once(core):
    three = {"fitted": FITTED, "faulted": ["a", "b", "c"]}
    # Where wiping takes a minute only, it tells more for its minutes: 120 simulated cars with three faults
    # took 33.8 minutes to the close when a position was wiped first, 35.1 when somebody listened there first.
    plain = [move["move"] for move in core("reason", case=case(three))["next"]]
    assert plain[0] == "clean"
    assert "listen" in plain
    slow = {"clean": 4}
    best = core("reason", case=case(three, minutes=slow))["next"][0]

    assert (best["move"], best["minutes_x100"]) == ("listen", 50)
    assert sum(each["chance"] for each in best["outlook"]) == 10**9
    assert {each["reads"] for each in best["outlook"]} == {"ticks", "silent"}

    heard = dict(three, listen=dict.fromkeys(["a", "b", "c"], "silent"))
    assert "listen" not in [move["move"] for move in core("reason", case=case(heard, minutes=slow))["next"]]


def test_what_each_answer_would_mean_is_what_it_then_means(core):
    """The chances and the leading cause of the outlook, against the case with the answer in it."""
    one = {"fitted": FITTED, "faulted": ["a"]}
    exact = Enumeration(case(one))
    best = next(each for each in core("reason", case=case(one))["next"] if each["move"] == "listen")

    for outcome in best["outlook"]:
        then = Enumeration(case(dict(one, listen={best["position"]: outcome["reads"]})))
        assert outcome["chance"] / 1e9 == pytest.approx(then.total / exact.total, abs=1e-6)
        leading = max(then.explanations().values())
        assert f"{leading * 100:.0f} %" in outcome["then"].replace("\u00a0", " ")


# --- on a job


def listened(job, **heard):
    data = {answer: [p for p in heard if heard[p] == answer] for answer in ("ticks", "silent")}
    job.fact("listened", **{k: [f"rear-{p}".replace("_", "-") for p in v] for k, v in data.items()})


def test_it_is_asked_for_at_every_position_that_is_plugged_in(job):
    asked = job.begin().view()["listen"]

    assert [row["position"] for row in asked["rows"]] == [
        "rear-left-outer", "rear-left-inner", "rear-right-inner", "rear-right-outer",
    ]  # fmt: skip
    assert [answer["id"] for answer in asked["answers"]] == ["ticks", "silent"]
    assert "Engine off" in " ".join(caution["sentence"] for caution in asked["cautions"])


def test_it_moves_the_job_at_once(job):
    job.begin().test(FAULTED)
    before = job.view()["reasoning"]

    listened(job, right_outer="silent", right_inner="ticks")

    view = job.view()
    assert view["reasoning"] != before
    assert [row["heard"] for row in view["listen"]["rows"]] == ["", "", "ticks", "silent"]
    assert "Listened: ticking at right inner; nothing to hear at right outer." in [
        entry["sentence"] for entry in view["history"]
    ]


def test_it_is_forgotten_once_another_unit_sits_there(job):
    job.begin().test(FAULTED)
    listened(job, right_outer="silent")
    job.start_exchange()
    job.guided()

    assert [row["heard"] for row in job.view()["listen"]["rows"]] == ["", "", "", ""]


def test_a_closed_job_asks_nothing(job):
    job.begin().test()
    job.force("job_closed", note="")

    assert job.view()["listen"] is None


def test_it_never_takes_the_place_of_a_test_where_the_fault_comes_and_goes(core):
    """It may be away while somebody listens."""
    clean = {"fitted": FITTED, "faulted": []}
    asked = case({"fitted": FITTED, "faulted": ["a", "b", "c"]}, clean, rates={"shows": 0.5})

    assert core("reason", case=asked)["next"][0]["move"] != "listen"
