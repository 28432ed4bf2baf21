"""A case that is not of the published form is refused with the exact field."""

import copy

import pytest

from tests.hosts import CoreError

GOOD = {
    "positions": [
        {"id": "p", "group": "rear", "reach_minutes": 3},
        {"id": "q", "group": "rear"},
    ],
    "units": [{"id": "A", "prior": 0.05}, {"id": "B"}],
    "tests": [{"fitted": {"p": "A", "q": "B"}, "faulted": ["p"], "heard": True}],
    "meter": [{"position": "p", "reads": "good"}],
    "now": {"fitted": {"p": "N"}, "cleaned": ["q"], "repaired": ["feed:rear"]},
    "rates": {"shows": 0.9},
    "confidence": 0.95,
}
GONE = object()

# id: (path to the value, the wrong value, the field that is named)
BAD = {
    "a key nobody knows": (["test"], [], "test"),
    "no positions": (["positions"], GONE, "positions"),
    "no position at all": (["positions"], [], "positions"),
    "positions as an object": (["positions"], {}, "positions"),
    "a position that is a text": (["positions", 1], "q", "positions[1]"),
    "a position without an id": (["positions", 0, "id"], GONE, "positions[0].id"),
    "a position named twice": (["positions", 1, "id"], "p", "positions[1].id"),
    "an id that looks like a generation": (["positions", 1, "id"], "q#2", "positions[1].id"),
    "an empty group": (["positions", 0, "group"], "", "positions[0].group"),
    "a negative reach": (["positions", 0, "reach_minutes"], -1, "positions[0].reach_minutes"),
    "a reach in words": (["positions", 0, "reach_minutes"], "3", "positions[0].reach_minutes"),
    "a misspelt key of a position": (["positions", 0, "grp"], "x", "positions[0].grp"),
    "a name that is a message": (
        ["positions", 0, "name"],
        {"msg": "reasons-then-gone", "args": {}},
        "positions[0].name",
    ),
    "a name in a list": (["units", 0, "name"], [{"msg": "reasons-then-gone", "args": {}}], "units[0].name"),
    "a unit named twice": (["units", 1, "id"], "A", "units[1].id"),
    "a prior above one": (["units", 0, "prior"], 1.5, "units[0].prior"),
    "a prior that is a truth value": (["units", 0, "prior"], True, "units[0].prior"),
    "a unit that is a number": (["units", 0], 7, "units[0]"),
    "tests as a text": (["tests"], "none", "tests"),
    "a test without fitted": (["tests", 0, "fitted"], GONE, "tests[0].fitted"),
    "fitted as a list": (["tests", 0, "fitted"], ["A"], "tests[0].fitted"),
    "fitted at an unknown position": (["tests", 0, "fitted", "x"], "C", "tests[0].fitted.x"),
    "one unit in two places": (["tests", 0, "fitted", "q"], "A", "tests[0].fitted.q"),
    "a unit that is nothing": (["tests", 0, "fitted", "q"], None, "tests[0].fitted.q"),
    "a fault at an unknown position": (["tests", 0, "faulted"], ["p", "x"], "tests[0].faulted[1]"),
    "a fault named twice": (["tests", 0, "faulted"], ["p", "p"], "tests[0].faulted[1]"),
    "a fault that is a number": (["tests", 0, "faulted"], [1], "tests[0].faulted[0]"),
    "a fault that was not read": (["tests", 0, "silent"], ["p"], "tests[0].faulted[0]"),
    "a fault where nothing sits": (["tests", 0, "fitted"], {"q": "B"}, "tests[0].faulted[0]"),
    "heard as a text": (["tests", 0, "heard"], "yes", "tests[0].heard"),
    "an unknown repair": (["tests", 0, "repaired"], ["unit:A"], "tests[0].repaired[0]"),
    "a repair at an unknown position": (
        ["tests", 0, "repaired"],
        ["circuit:x"],
        "tests[0].repaired[0]",
    ),
    "a repair named twice": (
        ["tests", 0, "repaired"],
        ["control", "control"],
        "tests[0].repaired[1]",
    ),
    "cleaned at an unknown position": (["tests", 0, "cleaned"], ["x"], "tests[0].cleaned[0]"),
    "a misspelt key of a test": (["tests", 0, "repared"], [], "tests[0].repared"),
    "a meter at an unknown position": (["meter", 0, "position"], "x", "meter[0].position"),
    "a meter reading that is neither": (["meter", 0, "reads"], "unclear", "meter[0].reads"),
    "a meter reading of a repair to come": (["meter", 0, "generation"], 2, "meter[0].generation"),
    "a generation of nought": (["meter", 0, "generation"], 0, "meter[0].generation"),
    "now at an unknown position": (["now", "fitted", "x"], "C", "now.fitted.x"),
    "now with one unit twice": (["now", "fitted", "q"], "N", "now.fitted.q"),
    "now with an unknown feed": (["now", "repaired"], ["feed:front"], "now.repaired[0]"),
    "a rate nobody knows": (["rates", "sensor"], 0.1, "rates.sensor"),
    "a rate above one": (["rates", "shows"], 95, "rates.shows"),
    "a fault that never shows": (["rates", "shows"], 0, "rates.shows"),
    "nothing but false alarms": (["rates", "false_alarm"], 1, "rates.false_alarm"),
    "a certain confidence": (["confidence"], 1, "confidence"),
    "a confidence in words": (["confidence"], "high", "confidence"),
    "a unit in hand twice": (["now", "loose"], ["M", "M"], "now.loose[1]"),
    "an object that looks like a message": (["positions"], {"msg": "reasons-then-gone"}, "positions"),
    "a message that nobody wrote": (["units", 0, "prior"], {"msg": "x", "args": {}}, "units[0].prior"),
    "a case that is a list": ([], [], "case"),
}


def spoilt(path, value):
    case = copy.deepcopy(GOOD)
    if not path:
        return value
    target = case
    for key in path[:-1]:
        target = target[key]
    if value is GONE:
        del target[path[-1]]
    else:
        target[path[-1]] = value
    return case


@pytest.mark.parametrize("name", BAD)
def test_names_the_field_what_was_found_and_what_is_wanted(core, name):
    path, value, field = BAD[name]

    with pytest.raises(CoreError) as caught:
        core("reason", case=spoilt(path, value))

    assert caught.value.field == field
    assert caught.value.found
    assert caught.value.wanted
    assert str(caught.value).startswith(field + ": found ")
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    ("found", "said"),
    [(1.5, "1.5"), (-0.25, "-0.25"), (2.0, "2.0"), (1000000.000001, "1000000.000001"), (1e30, None)],
)
def test_a_number_is_named_as_it_was_written(core, found, said):
    with pytest.raises(CoreError) as caught:
        core("reason", case=spoilt(["rates", "shows"], found))

    assert caught.value.found == (said or "a number with decimals")


def test_a_number_without_end_is_cut(core):
    with pytest.raises(CoreError) as caught:
        core("reason", case=spoilt(["confidence"], 10**300))

    assert len(caught.value.found) == 60


def test_the_case_that_is_spoilt_here_is_good(core):
    assert core("reason", case=GOOD)["causes"]


def test_only_positions_are_needed(core):
    answer = core("reason", case={"positions": [{"id": "p"}]})

    assert answer["clear"] == 1_000_000_000
    assert answer["verdict"] is None
    assert answer["explanations"] == [{"causes": [], "probability": 1_000_000_000}]
