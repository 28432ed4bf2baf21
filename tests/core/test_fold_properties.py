"""Properties of the fold: folding at once or bit by bit is the same, any prefix holds, JSON is lossless."""

import json

from hypothesis import HealthCheck
from hypothesis import given
from hypothesis import settings
from hypothesis import strategies as st

from server.core.facts.fold import Fold
from server.core.log import canon
from tests.core.driver import DEVICE
from tests.core.driver import JOB
from tests.core.driver import Driver
from tests.core.driver import home
from tests.hosts import Core

POSITIONS = ["rear-left-outer", "rear-left-inner", "rear-right-inner", "rear-right-outer"]
UNITS = [home(position) for position in POSITIONS] + ["unew"]
HOW = st.sampled_from(["scanned", "typed", "tapped"])
UNIT, POSITION = st.sampled_from(UNITS), st.sampled_from(POSITIONS)
CODES = Driver(Core()).codes
DECISION = st.sampled_from(["accept", "hold", "refuse"])


def fact(kind, **fields):
    """A strategy for one kind of fact."""
    return st.tuples(st.just(kind), st.fixed_dictionaries(fields))


EACH = (
    fact("unit_pulled", unit=UNIT, position=POSITION, how=HOW),
    fact("unit_fitted", unit=UNIT, position=POSITION, how=HOW, override=st.just("")),
    fact(
        "unit_moved", unit=UNIT, place=st.sampled_from(["out", "stock", "counter"]), how=HOW, note=st.just("")
    ),
    fact("unit_seen", unit=UNIT, place=st.sampled_from(["fitted", "out"]), position=POSITION, how=HOW),
    fact("unit_labelled", unit=UNIT, code=st.sampled_from(CODES[:4]), how=HOW),
    fact("corrected", device=st.just(DEVICE), seq=st.integers(2, 12), reason=st.just("slip")),
    fact(
        "move_started",
        move=st.sampled_from(["exchange", "replace", "home", "unplug", "meter", "clean"]),
        fitted=st.dictionaries(POSITION, UNIT, max_size=2),
        position=POSITION,
        reason=st.just(""),
    ),
    fact("move_dropped", reason=st.just("rain")),
    fact("connector_locked", position=POSITION),
    fact(
        "circuit_measured",
        position=POSITION,
        check=st.just("ground"),
        value=st.just(""),
        reads=st.sampled_from(["good", "bad"]),
    ),
    fact(
        "circuit_repaired",
        cause=st.sampled_from(["control", "feed:rear", "circuit:" + POSITIONS[0]]),
        what=st.just(""),
    ),
    fact("left_deliberately", unit=UNIT, position=POSITION, reason=st.just("tested")),
    fact("walk_checked", positions=st.just(POSITIONS[1:]), missed=st.just(POSITIONS[:1])),
    fact("label_voided", unit=UNIT, code=st.sampled_from(CODES[:4]), reason=st.just("torn")),
    fact("job_closed", note=st.just("")),
    fact(
        "return_received",
        unit=UNIT,
        how=HOW,
        code=st.just(CODES[0]),
        part=st.sampled_from(["", "PS-1"]),
        serial=st.just(""),
        compared=st.sampled_from(["", "same", "other"]),
        note=st.just(""),
    ),
    fact(
        "return_decided",
        unit=UNIT,
        decision=DECISION,
        proposed=DECISION,
        reasons=st.just(["custody"]),
        overrule=st.just(""),
        signed=st.just("Jo"),
    ),
    fact(
        "test_run",
        heard=st.booleans(),
        faulted=st.lists(POSITION, unique=True, max_size=2),
        silent=st.just([]),
        unplugged=st.just([]),
        codes=st.just([]),
        came_and_went=st.just(False),
        note=st.just(""),
    ),
)
FACTS = st.one_of(*EACH)


def log_of(facts):
    job = Driver(Core()).begin()
    for kind, data in facts:
        job.envelope(kind, data)
    return job.events


def state_text(events):
    fold = Fold()
    fold.reset(events)
    return canon.dumps(fold.state.as_dict())


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(FACTS, max_size=14))
def test_folding_bit_by_bit_is_folding_at_once(facts):
    events = log_of(facts)
    fold = Fold()
    for event in events:
        fold.add([event])
    assert canon.dumps(fold.state.as_dict()) == state_text(events)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(FACTS, max_size=14))
def test_after_any_prefix_each_unit_is_at_one_place_and_each_position_holds_one(facts):
    events = log_of(facts)
    for length in range(1, len(events) + 1):
        fold = Fold()
        fold.reset(events[:length])
        state = fold.state
        for vehicle in state.vehicles.values():
            held = [unit for unit in vehicle["holds"].values() if unit]
            assert len(held) == len(set(held))
            for position, unit in vehicle["holds"].items():
                if unit:
                    record = state.units[unit]
                    assert (record["place"], record["position"]) == ("fitted", position)
        for unit in state.units.values():
            if unit["place"] == "fitted":
                assert state.vehicles[unit["vehicle"]]["holds"][unit["position"]] == unit["id"]


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(FACTS, max_size=10))
def test_the_state_survives_json(facts):
    text = state_text(log_of(facts))
    assert canon.dumps(json.loads(text)) == text


def test_a_long_random_log_folds_to_the_same_bytes_on_both_hosts(core):
    facts = [
        ("unit_pulled", {"unit": UNITS[i % 5], "position": POSITIONS[i * 7 % 4], "how": "scanned"})
        if i % 3
        else (
            "unit_fitted",
            {"unit": UNITS[i % 4], "position": POSITIONS[i % 4], "how": "typed", "override": ""},
        )
        for i in range(60)
    ]
    events = log_of(facts)
    core("reset", events=[{"event": event} for event in events])
    assert canon.dumps(core("state")) == state_text(events)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(FACTS, max_size=14))
def test_whatever_was_folded_can_be_shown(facts):
    core = Core()
    core("reset", events=[{"event": event} for event in log_of(facts)])
    assert core("job", job=JOB)["step"]["title"]
    assert core("jobs")
    for unit in core("state")["units"]:
        assert core("unit", unit=unit)["where"]
        assert core("counter", unit=unit, now=0)["headline"]
    assert core("decided", start=0, end=2**50)["total"] == sum(
        len(entry["decisions"]) for unit in core("state")["units"].values() for entry in unit["returns"]
    )
    assert core("find", text="estate")
