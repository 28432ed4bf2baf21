"""The outlook of each move beside the enumeration: what would the next test show, and then mean?"""

import math
import random

import pytest

from tests.core.brute_force import Enumeration
from tests.core.random_cases import random_case

SEEDS = [n for n in range(40) if len(random_case(random.Random(n))["positions"]) < 4]
BLOCKS = [SEEDS[n : n + 8] for n in range(0, len(SEEDS), 8)]


def extended(case, move, faulted):
    """The case after the move, with one more test that shows exactly these faults."""
    now = case.get("now", {})
    fitted = dict(case["tests"][-1]["fitted"])
    moved = dict(now.get("fitted", {}))
    here = dict(fitted)
    for place, unit in moved.items():
        here = {p: u for p, u in here.items() if u != unit or p == place}
        here[place] = unit
    for place, unit in move.get("fitted", {}).items():
        here = {p: u for p, u in here.items() if u != unit or p in move["fitted"]}
        here[place] = unit
    # Handled once with `now` and once with the move: both may have disturbed a position.
    before = {"fitted": _moved(fitted, moved), "faulted": [], "heard": False}
    before.update(cleaned=now.get("cleaned", []), repaired=now.get("repaired", []))
    test = {"fitted": here, "faulted": faulted}
    if move["move"] == "clean":
        test["cleaned"] = [move["position"]]
    if move["move"] == "repair":
        test["repaired"] = [move["cause"].partition("#")[0]]
    if move["move"] == "unplug":
        test["unplugged"] = [move["position"]]
    units = list(case["units"])
    known = [unit["id"] for unit in units]
    units += [{"id": unit} for unit in here.values() if unit not in known]
    return {k: v for k, v in case.items() if k != "now"} | {
        "tests": [*case["tests"], before, test],
        "units": units,
    }


def _moved(fitted, moves):
    fitted = {p: u for p, u in fitted.items() if u not in moves.values()}
    return fitted | moves


@pytest.mark.parametrize("seeds", BLOCKS, ids=[f"from {block[0]}" for block in BLOCKS])
def test_each_outcome_has_the_chance_that_the_enumeration_gives_it(core, seeds):
    for seed in seeds:
        case = random_case(random.Random(seed))
        suspects = Enumeration(case).suspects()
        for move in core("reason", case=case)["next"]:
            assert sum(outcome["chance"] for outcome in move["outlook"]) == 1_000_000_000
            if move["move"] in ("meter", "listen"):
                continue  # test_listening has what is heard
            seen = []
            for outcome in move["outlook"]:
                if move["move"] == "unplug" and move["position"] not in outcome["faulted"]:
                    continue  # set aside: the enumeration of that case has no such reading
                after = extended(case, move, outcome["faulted"])
                exact = Enumeration(after)
                # The largest takes up what rounding left over, a few parts per billion.
                wanted = exact.total / Enumeration(case).total
                assert outcome["chance"] / 1e9 == pytest.approx(wanted, abs=2e-8)
                check_words(core, Enumeration(case), after, exact, move, outcome)
                seen.append((wanted, exact.explanations(suspects)))
            if move["move"] != "unplug":
                assert move["bits_x1000"] / 1000 == pytest.approx(bits(seen), abs=0.02)


def check_words(core, before, after, exact, move, outcome):
    """What it would then say is what the enumeration makes of it, and what the core does say."""
    if move["move"] == "unplug":
        return
    confidence = after["confidence"]
    then = core("reason", case=after, plan=False)
    least = 1 - 2 * (1 - confidence)
    causes, share = most_likely(exact)
    known = most_likely(before)
    # What is known already and taken out is dealt with; of it nothing more is said.
    settled = set(known[0]) - exact.live() if known[1] >= confidence else set()
    left = [cause for cause in causes if cause not in settled]
    if outcome["chance"] < 4_000_000:
        wanted = "not expected; "
    elif not exact.suspects():
        wanted = "no fault has shown; "
    elif exact.clear() >= confidence and then["clear_holds"]["lowest"] / 1e9 >= least:
        wanted = "nothing is left to fix, "
    elif not causes:
        wanted = "nothing is settled by that; " if outcome["faulted"] else "the fault is gone for now; "
    elif not left:
        wanted = "the fault is gone for now; "
    elif share < confidence or then["holds"]["lowest"] / 1e9 < least:
        wanted = "most likely "
    else:
        wanted = "it is " if len(left) == 1 else "the causes are "
    assert outcome["then"].startswith(wanted)

    assert then["clear"] / 1e9 == pytest.approx(exact.clear(), abs=2e-8)
    holds = then["holds"]["lowest"] / 1e9 >= least
    assert (then["verdict"] is not None) == (bool(causes) and share >= confidence and holds)


def most_likely(exact):
    return max(exact.explanations().items(), key=lambda entry: entry[1])


def bits(seen):
    """Mutual information of result and explanation, from the joint distribution."""
    whole = sum(chance for chance, _ in seen)
    prior = {}
    for chance, explanations in seen:
        for causes, share in explanations.items():
            prior[causes] = prior.get(causes, 0) + share * chance / whole
    told = 0.0
    for chance, explanations in seen:
        for causes, share in explanations.items():
            if share > 1e-15 and prior[causes] > 0:
                told += chance / whole * share * math.log2(share / prior[causes])
    return told


def test_a_meter_reading_is_foreseen_with_its_two_rates(core):
    case = {
        "positions": [{"id": "p", "group": "rear"}],
        "units": [{"id": "A"}],
        "tests": [{"fitted": {"p": "A"}, "faulted": ["p"]}],
        "meter": [],
    }
    present = Enumeration(case).marginals()["circuit:p"]

    moves = {move["move"]: move for move in core("reason", case=case)["next"]}

    chances = {o["reads"]: o["chance"] / 1e9 for o in moves["meter"]["outlook"]}
    wanted = present * 0.95 + (1 - present) * 0.02
    assert chances == pytest.approx({"bad": wanted, "good": 1 - wanted}, abs=1e-8)


# Russell & Norvig, Artificial Intelligence: A Modern Approach, the noisy-OR table for fever given
# cold, flu and malaria (inhibitions 0.6, 0.2, 0.1, no leak). A cause that always shows and has the
# strength of its link as prior gives the same figures.
FEVER = {
    (0, 0, 0): 0.0,
    (0, 0, 1): 0.9,
    (0, 1, 0): 0.8,
    (0, 1, 1): 0.98,
    (1, 0, 0): 0.4,
    (1, 0, 1): 0.94,
    (1, 1, 0): 0.88,
    (1, 1, 1): 0.988,
}


@pytest.mark.parametrize("row", FEVER, ids=str)
def test_a_reading_follows_the_fever_table(core, row):
    cold, flu, malaria = row
    rates = {"shows": 1, "false_alarm": 0, "control": 0, "feed": 0}
    rates |= {"unit": 0.4 * cold, "circuit": 0.8 * flu, "blocked": 0.9 * malaria}
    case = {
        "positions": [{"id": "p"}],
        "units": [{"id": "A"}],
        "tests": [],
        "now": {"fitted": {"p": "A"}},
        "rates": rates,
    }

    retest = core("reason", case=case)["next"][0]

    chances = {tuple(o["faulted"]): o["chance"] / 1e9 for o in retest["outlook"]}
    assert chances.get(("p",), 0.0) == pytest.approx(FEVER[row], abs=1e-9)
