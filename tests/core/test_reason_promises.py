"""What a move promises is what the reasoning says once that result is given, each result of each move.

`test_reason_outlook.py` holds the chances against the enumeration; here stand cases in which a promise
was broken: what it said would settle did not, what it left open was settled, or another cause led.
"""

import re

import pytest

P, Q = {"id": "p", "group": "rear"}, {"id": "q", "group": "rear"}
BOTH = {"p": "A", "q": "B"}
UNITS = [{"id": "A"}, {"id": "B"}]

CASES = {
    "two faults at once where no test counted yet": {
        "positions": [{"id": "p"}, {"id": "q"}],
        "units": [{"id": "A", "prior": 0.7}, {"id": "B"}],
        "tests": [{"fitted": BOTH, "faulted": [], "heard": False}],
    },
    "a proof that leans on how rarely a fault is missed": {
        "positions": [P, Q],
        "units": UNITS,
        "tests": [
            {"fitted": BOTH, "faulted": ["p", "q"]},
            {"fitted": {"p": "B", "q": "A"}, "faulted": [], "listen": {"q": "silent"}},
            {"fitted": BOTH, "faulted": []},
        ],
        "meter": [{"position": "p", "reads": "bad"}, {"position": "q", "reads": "bad"}],
    },
    "checks of a circuit, to be 80 % sure": {
        "positions": [P],
        "units": [{"id": "A"}],
        "tests": [{"fitted": {"p": "A"}, "faulted": ["p"], "cleaned": ["p"]}],
        "rates": {"meter_false": 0.01},
        "confidence": 0.8,
    },
    "listening that settles": {
        "positions": [P],
        "units": UNITS,
        "tests": [
            {"fitted": {"p": "B"}, "faulted": ["p"], "cleaned": ["p"]},
            {"fitted": {"p": "B"}, "faulted": ["p"]},
            {"fitted": {"p": "B"}, "faulted": ["p"], "unplugged": ["p"]},
        ],
        "rates": {"shows": 0.5, "circuit": 0.2, "blocked": 0.05, "tick_unit": 0.9, "control": 0.01},
        "confidence": 0.9,
    },
    "more explanations than come to mind": {
        "positions": [{"id": "p"}, {"id": "q"}, {"id": "r"}],
        "units": [{"id": "A"}, {"id": "B"}, {"id": "C", "prior": 0.6}, {"id": "D"}],
        "tests": [
            {"fitted": {"p": "C", "q": "B", "r": "A"}, "faulted": ["p", "q", "r"]},
            {"fitted": {"p": "A", "q": "B", "r": "C"}, "cleaned": ["p"], "silent": ["r"], "faulted": []},
            {"fitted": {"p": "A", "q": "B", "r": "C"}, "cleaned": ["q"], "faulted": ["p", "q"]},
        ],
        "likelihoods": [{"cause": "control", "factor": 0.3}, {"cause": "blocked:r", "factor": 50}],
    },
}
SAID = re.compile(r"(\d+(?:\.\d+)?)\s?%")


def given(case, move, outcome):
    """The case with the move made and this its result."""
    then = {**case, "tests": list(case["tests"]), "meter": list(case.get("meter", []))}
    fitted = dict(case["tests"][-1]["fitted"])
    if move["move"] == "meter":
        then["meter"].append({"position": move["position"], "reads": outcome["reads"]})
        return then
    test = {"fitted": fitted | move.get("fitted", {}), "faulted": outcome.get("faulted", [])}
    if move["move"] == "listen":
        test |= {"silent": [each["id"] for each in case["positions"]]}
        test |= {"listen": {move["position"]: outcome["reads"]}}
    if move["move"] == "clean":
        test["cleaned"] = move.get("positions") or [move["position"]]
    if move["move"] == "repair":
        test["repaired"] = [move["cause"].partition("#")[0]]
    then["tests"].append(test)
    return then


@pytest.mark.parametrize("name", CASES)
def test_each_result_says_then_what_was_promised(core, name):
    case = CASES[name]
    for move in core("reason", case=case)["next"]:
        for outcome in move["outlook"]:
            if move["move"] == "unplug" or outcome["then"].startswith("not expected"):
                continue
            answer = core("reason", case=given(case, move, outcome), plan=False)
            check(move, outcome["then"], answer, case.get("confidence", 0.95))


def check(move, promised, answer, confidence):
    """One promise: what it calls settled is, what it leaves open is open, and what it names leads."""
    held = answer["clear_holds"]["lowest"] / 1e9 >= 1 - 2 * (1 - confidence)
    settled = answer["verdict"] is not None or (move["move"] == "meter" and answer["certain"])
    if promised.startswith(("it is", "the causes are")):
        assert settled, promised
    if promised.startswith("nothing is left"):
        assert held, promised
    if "not settled yet" in promised:
        assert not settled, promised
    share = SAID.search(promised)
    if share and move["move"] != "meter" and promised.startswith(("it is", "most likely", "the causes")):
        assert float(share[1]) / 100 == pytest.approx(
            answer["explanations"][0]["probability"] / 1e9, abs=0.006
        )


def test_a_position_without_a_unit_is_not_cleaned(core):
    case = {
        "positions": [{"id": "p"}, {"id": "q", "reach_minutes": 7}],
        "units": [{"id": "A"}, {"id": "B", "prior": 0.3}],
        "tests": [{"fitted": {"p": "B"}, "unplugged": ["q"], "faulted": ["p", "q"]}],
        "confidence": 0.999,
    }

    moves = core("reason", case=case)["next"]

    cleaned = [move.get("positions", [move.get("position")]) for move in moves if move["move"] == "clean"]
    assert cleaned == [["p"]]
    assert [outcome["faulted"] for outcome in moves[0]["outlook"] if "q" in outcome.get("faulted", [])] == []


def test_what_was_repaired_already_is_not_to_be_repaired_as_it_was(core):
    """The supply was likeliest, it is another since; whether that one is bad no fault says."""
    fitted = {"p": "A", "q": "B"}
    case = {
        "positions": [P, Q],
        "units": UNITS,
        "tests": [
            {"fitted": fitted, "faulted": ["p", "q"], "cleaned": ["p", "q"]},
            {"fitted": fitted, "faulted": ["p", "q"]},
            {"fitted": fitted, "faulted": [], "repaired": ["feed:rear"]},
        ],
        "likelihoods": [{"cause": "feed:rear", "factor": 30}],
        "confidence": 0.999,
    }

    moves = core("reason", case=case)["next"]

    assert "feed:rear" not in [move.get("cause") for move in moves]
