"""What came before a test of a fault that comes and goes: recorded, reasoned with and said."""

import random

import pytest

from server.core.facts.evidence import PROVOKED
from server.core.infer.belief import Belief
from server.core.infer.case_form import read
from server.core.infer.model import Model
from server.core.infer.variations import Variations
from server.core.infer.variations import explanation
from tests.core.brute_force import Enumeration
from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.random_cases import random_case
from tests.core.test_holds import NAMES
from tests.core.test_holds import Assumed
from tests.hosts import CoreError
from tests.said import english

CLOSE = 1e-9
OUTER, INNER = "rear-right-outer", "rear-right-inner"


def repeated(seed):
    """A random case in which most tests are run once or twice more, at once or not, sometimes clean."""
    dice = random.Random(seed)
    case = random_case(dice)
    tests = []
    for test in case["tests"]:
        tests.append(test)
        for _ in range(dice.choice([0, 1, 1, 2])):
            again = dict(test, cleaned=[], repaired=[])
            if dice.random() < 0.7:
                again["faulted"] = [p for p in test["faulted"] if p in test["unplugged"]]
            tests.append(again)
        if dice.random() < 0.3:
            tests.append(dict(tests[-1], heard=False))
    for test in tests:
        if dice.random() < 0.8:
            test["after"] = dice.choice(["at_once", "at_once", "provoked", "another_day"])
    case["tests"] = tests
    case["rates"] = {"shows": dice.choice([0.5, 0.7]), "again": dice.choice([0, 0.3, 0.6, 1])}
    return case


@pytest.mark.parametrize("seed", range(40))
def test_repeats_at_once_are_weighed_as_the_enumeration_does(core, seed):
    case = repeated(seed)
    exact = Enumeration(case)

    answer = core("reason", case=case)

    found = {entry["cause"]: entry["probability"] / 1e9 for entry in answer["causes"]}
    assert found == pytest.approx(exact.marginals(), abs=CLOSE)
    assert answer["clear"] / 1e9 == pytest.approx(exact.clear(), abs=CLOSE)
    assert [entry["test"] for entry in answer["ignored"]] == exact.ignored


SMALL = [seed for seed in range(60) if len(repeated(seed)["positions"]) < 4]


@pytest.mark.parametrize("seed", SMALL)
def test_repeats_at_once_are_varied_as_the_enumeration_does(seed):
    case = repeated(seed)
    source = Variations(Belief(Model(read(case))))
    for name, said in zip(NAMES, Assumed(case).varied, strict=True):
        factor = 3.0 if name[-2] == "x" else 1 / 3.0
        found = {
            each: source.chance(name.partition(" ")[0], factor, explanation(each))
            for each in said.explanations
        }
        assert found == pytest.approx(said.explanations, abs=CLOSE)


def bare(*after, **more):
    """A fault, then clean tests, each after something."""
    fitted = {"a": "A", "b": "B"}
    tests = [{"fitted": fitted, "faulted": ["a"]}, {"fitted": {"a": "N", "b": "B"}, "faulted": []}]
    for each in after:
        tests.append({"fitted": {"a": "N", "b": "B"}, "faulted": []})
        if each:
            tests[-1]["after"] = each
    positions = [{"id": "a", "group": "rear"}, {"id": "b", "group": "rear"}]
    units = [{"id": "A"}, {"id": "B"}, {"id": "N"}]
    return {"positions": positions, "units": units, "tests": tests, "rates": {"shows": 0.5}, **more}


def clear(core, *after, **rates):
    case = bare(*after)
    case["rates"].update(rates)
    return core("reason", case=case)["clear"]


def test_a_clean_test_at_once_is_worth_less_than_one_after_something(core):
    unsaid = clear(core, None, None)
    assert clear(core, "provoked", "another_day") == unsaid
    assert clear(core) < clear(core, "at_once", "at_once") < clear(core, "at_once", "provoked") < unsaid
    assert clear(core, "at_once", "at_once", again=0) == clear(core)
    assert clear(core, "at_once", "at_once", again=1) == unsaid


def test_at_once_after_a_change_counts_in_full(core):
    def sure(after, **change):
        case = bare(after)
        for key in change:
            case["tests"][2][key] = change[key]
        return core("reason", case=case)["clear"]

    for change in ({"fitted": {"a": "B", "b": "N"}}, {"repaired": ["control"]}):
        assert sure("at_once", **change) == sure("provoked", **change)
    assert sure("at_once") < sure("provoked")


def test_a_case_names_what_a_test_may_come_after(core):
    with pytest.raises(CoreError) as refused:
        core("reason", case=bare("soon"))
    assert "tests[2].after" in str(refused.value)


def mended(core, **first):
    """A job whose fault showed once, and whose sensor was then exchanged, up to the tests."""
    job = Driver(core).begin()
    job.test(OUTER, **first)
    job.photograph()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    return job


def test_what_came_before_is_offered_only_where_a_fault_comes_and_goes(core):
    job = mended(core)
    assert job.step()["expects"]["provoking"] is None
    job.fact("comes_and_goes_set", value=True)

    offered = job.step()["expects"]["provoking"]

    # The sensors were just exchanged: that is something, so nothing is chosen beforehand.
    assert [each["id"] for each in offered["of"]] == list(PROVOKED[1:])
    assert offered["chosen"] == ""
    assert english(offered["of"][3]["words"]) == "wiggling the wiring"


def test_after_a_clean_test_nothing_done_stands_until_something_else_is_chosen(core):
    job = Driver(core).begin()
    job.fact("comes_and_goes_set", value=True)
    job.test()

    offered = job.step()["expects"]["provoking"]

    assert [each["id"] for each in offered["of"]] == list(PROVOKED)
    assert offered["chosen"] == "at_once"


def test_it_is_kept_with_the_test_and_told_in_the_history(core):
    job = mended(core, came_and_went=True)
    job.test(provoked="water")
    told = english(job.view()["history"])
    assert "Self-test: no fault. Before it: water." in [entry["sentence"] for entry in told]
    refused = job.check({"kind": "test_run", "data": dict(job.events[-1]["data"], provoked="thunder")})
    assert refused


def test_the_proof_says_what_it_was_made_against_and_counts_repeats_for_less(core):
    def proven(*after):
        core("reset", events=[])
        job = mended(core, came_and_went=True)
        for each in after:
            job.test(**({"provoked": each} if each else {}))
        return job.view()["proof"], core("reasoned", job=job.job)["clear"]

    proof, sure = proven("water", "loom", "another_day")
    assert english(proof["sentence"]).startswith(
        "3 clean tests in a row: water, wiggling the wiring and another day."
    )
    unsaid, as_sure = proven(None, None, None)
    assert english(unsaid["sentence"]).startswith("3 clean tests in a row. ")
    assert sure == as_sure
    repeated_, less_sure = proven("water", "at_once", "at_once")
    assert english(repeated_["sentence"]).startswith(
        "3 clean tests in a row: water. 2 came straight after another, so they count for less."
    )
    assert less_sure < sure


def test_where_the_fault_is_always_there_a_repeat_counts_in_full(core):
    def sure(**how):
        core("reset", events=[])
        job = mended(core)
        for _ in range(2):
            job.test(**how)
        return core("reasoned", job=job.job)["clear"]

    assert sure(provoked="at_once") == sure()


def test_how_much_a_repeat_counts_is_an_assumption_that_is_changed(core):
    job = mended(core, came_and_went=True)
    for _ in range(2):
        job.test(provoked="at_once")
    before = core("reasoned", job=job.job)["clear"]
    row = core("assumptions", job=job.job)["comes_and_goes"]["again"]
    assert english(row["value_words"]) == "30 %"

    job.fact("rates_set", rates_ppm={"again": 1000000}, confidence_ppm=0)

    assert core("reasoned", job=job.job)["clear"] > before


def nothing_shown_at_once(core, repeats):
    """A fault that comes and goes shows in no test: one, and so many straight after it."""
    job = Driver(core).begin()
    job.fact("comes_and_goes_set", value=True)
    job.test()
    for _ in range(repeats):
        job.test(provoked="at_once")
    return job


def test_repeats_at_once_do_not_make_enough_where_nothing_showed(core):
    job = nothing_shown_at_once(core, 6)
    assert job.step()["id"] == "test.again"
    for _ in range(4):
        job.test(provoked="heat")
    assert job.step()["id"] == "nothing.enough"


def test_many_repeats_at_once_lead_to_the_close_too_and_say_that_they_prove_little(core):
    job = nothing_shown_at_once(core, 9)
    step = job.step()
    assert (step["id"], step["title"]) == ("nothing.enough", "No fault in 10 tests")
    assert step["text"].startswith("Straight after each other they prove little.")
    job.tap()
    assert job.view()["closed"]


def test_a_test_that_would_be_one_straight_after_another_asks_to_bring_the_fault_out(core):
    job = mended(core, came_and_went=True)
    first = job.step()["text"]
    job.test()
    job.fact("move_started", move="retest", fitted={}, position="", reason="")
    again = job.step()["text"]
    assert (first, again) == (
        "Start it and listen.", "Move the wires by hand, spray water, warm it up, and test again."
    )  # fmt: skip
