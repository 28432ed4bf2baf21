"""Which sensors a serial number was read off is found by an index, and is what going through all finds."""

from hypothesis import given
from hypothesis import strategies as st

from server.core.codes.numbers import plain
from server.core.facts.fold import Fold
from server.core.state.serials import serials_of
from tests.core.driver import START

DEVICE = "d0123456789abcdef"
UNITS = ("u1", "u2", "u3")
SERIALS = ("", "S-1", "s1", "S 2", "-/", "S0-1", "SO-1")


def going_through(state, serial):
    wanted = plain(serial)
    units = [] if not wanted else state.units.values()
    return sorted(unit["id"] for unit in units if wanted in [plain(each) for each in serials_of(unit)])


def added(unit, serial):
    return "unit_added", {
        "unit": unit, "part": "P", "serial": serial, "code": "", "how": "tapped", "place": "stock"
    }  # fmt: skip


def noted(unit, serial):
    return "part_noted", {"unit": unit, "part": "P", "serial": serial}


def received(unit, serial):
    return "return_received", {
        "unit": unit, "how": "scanned", "code": "", "part": "", "serial": serial, "compared": "", "note": ""
    }  # fmt: skip


def from_elsewhere(unit, serial):
    return "record_received", {
        "unit": unit, "maker": "yard", "fingerprint": "aa", "file": "0" * 64, "part": "P",
        "serial": serial, "passes": [], "holds": [], "fails": [],
    }  # fmt: skip


FACTS = st.builds(
    lambda make, unit, serial: make(unit, serial),
    st.sampled_from((added, noted, received, from_elsewhere)),
    st.sampled_from(UNITS),
    st.sampled_from(SERIALS),
)
STEPS = st.lists(
    st.one_of(
        FACTS,
        st.tuples(st.just("corrected"), st.integers(0, 20)),
        st.tuples(st.just("put_right"), st.integers(0, 20), st.sampled_from(SERIALS)),
    ),
    max_size=25,
)


def log_of(steps):
    """Returns the envelopes; a correction names one of the entries before it."""
    log = []
    for step in steps:
        kind, data = step[0], step[1]
        if kind in ("corrected", "put_right"):
            facts = [each for each in log if "serial" in each["data"]]
            if not facts:
                continue
            target = facts[data % len(facts)]
            data = {"device": DEVICE, "seq": target["seq"], "reason": "slip"}
            if kind == "put_right":
                data["entry"] = {"kind": target["kind"], "data": {**target["data"], "serial": step[2]}}
        log.append(
            {
                "device": DEVICE,
                "seq": len(log) + 1,
                "prev": "0" * 64 if log else "",
                "v": 1,
                "at": START + len(log),
                "actor": "Mara",
                "job": None,
                "kind": kind,
                "data": data,
            }
        )
    return log


@given(STEPS, st.integers(0, 25), st.integers(0, 10))
def test_the_index_finds_what_going_through_all_units_finds(steps, asked_from, late):
    """Whenever it is asked first, after corrections, and after entries that come in before others."""
    log = log_of(steps)
    fold = Fold()
    for event in log[: len(log) - late]:
        fold.add([event])
        if fold.count() >= asked_from:
            for serial in SERIALS:
                assert fold.state.with_serial(serial) == going_through(fold.state, serial)
    rest = log[max(0, len(log) - late) :]
    fold.insert(rest, max(0, fold.count() - 2))
    for serial in SERIALS:
        assert fold.state.with_serial(serial) == going_through(fold.state, serial)


def test_a_counter_hears_of_the_same_number_on_another_sensor(core):
    """The answer in both hosts, before and after a reading is taken back or put right."""
    steps = [received("u1", "S-1"), received("u2", "s1"), received("u3", "S 2")]
    core("reset", events=[{"event": event} for event in log_of(steps)])

    def others(unit):
        return "serial" in core("counter", unit=unit, now=START + 1000)["against"]

    def log(*more):
        whole = log_of([*steps, *more])
        return [{"event": event} for event in whole[len(steps) :]]

    assert [others(unit) for unit in UNITS] == [True, True, False]
    more = [("put_right", 1, "S 2")]
    core("add", events=log(*more))
    assert [others(unit) for unit in UNITS] == [False, True, True]
    more.append(("corrected", 2))
    core("add", events=log(*more)[1:])
    assert [others(unit) for unit in UNITS[:2]] == [False, False]
