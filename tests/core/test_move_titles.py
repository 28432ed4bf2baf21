"""Titles of moves: pairs, rings, and a spare that comes in while others move on."""

from server.core.guide.moves import _exchange
from server.core.guide.moves import _start_words
from server.core.state.job import Job
from server.core.state.kept_facts import new_unit
from server.core.state.state import State
from tests.said import english

NAMES = {"a": "left outer", "b": "left inner", "c": "right inner"}


def job_of(**holds):
    """Return a job of three positions; `holds` says what sits there besides, None for nothing."""
    state = State()
    state.vehicles["v"] = {"holds": {place: f"u{place}" for place in NAMES}}
    state.units["spare"] = {**new_unit("spare"), "code": "K7F3M", "place": "stock"}
    for place in NAMES:
        state.units[f"u{place}"] = new_unit(f"u{place}")
    job = {"id": "j", "layout": "rear-4", "vehicle": "v", "move": None,
           "tests": [{"heard": True, "faulted": ["a", "b"]}],
           "positions": [{"id": place, "name": name} for place, name in NAMES.items()]}  # fmt: skip
    state.vehicles["v"]["holds"].update(holds)
    return Job(state, job)


def title(fitted):
    return english(_exchange(job_of(), fitted))


def button(fitted, **holds):
    return english(_start_words(job_of(**holds), {"move": "exchange", "fitted": fitted}))


def test_a_pair():
    assert title({"a": "uc", "c": "ua"}) == "Exchange left outer with right inner"


def test_a_ring_of_three():
    """Each position is named once: the sensor of one goes to the next."""
    said = title({"a": "uc", "b": "ua", "c": "ub"})
    assert said == "Move three in a ring, in this order: left outer, left inner and right inner"


def test_a_spare_comes_in_and_another_moves_on():
    said = title({"a": "spare", "c": "ua"})
    assert said == "Fit your spare K7F-3M at left outer; the one from left outer goes to right inner"


def test_a_spare_alone():
    assert title({"b": "spare"}) == "Fit your spare K7F-3M at left inner"


def test_the_button_says_what_its_heading_says():
    """Two that got mixed up are fitted where nothing sits: to exchange them is no move."""
    assert button({"a": "uc", "c": "ua"}) == "Exchange left outer and right inner"
    assert button({"a": "uc", "b": "ua", "c": "ub"}) == "Start the exchange"
    assert button({"a": "spare", "b": "uc", "c": "ub"}) == "Start the exchange"
    assert button({"a": "ua", "c": "uc"}, a=None, c=None) == "Start fitting"
    assert button({"a": "spare", "c": "ua"}) == "Start fitting"
    assert button({"b": "spare"}) == "Start fitting"
