"""The circuit of a parking sensor as a chain, and its checks: since when there is each, what it is made on.

How often which part is at fault, how surely a check sees it, minutes and limits are common practice, no
source. A plug at the bumper is assumed, and that supply and ground branch off there; a check of what a
vehicle has not is answered "can't tell" and says nothing.
"""

from ..harness.chain import WARM
from ..harness.chain import Chain
from ..harness.chain import Probe
from ..harness.chain import Segment
from ..messages import message
from ..meter.limits import AtMost
from . import declared
from .sort import Harness

# A round stays complete by the list that it was made by: the four checks that there were at first; the chain
# without the checks of each wire alone; with them, the loom's cold only; all, but a fault that moved with its
# wires was one more good reading; as now. What is recorded now says this.
SINCE = 5
_LOOM_WARM = 4

_VOLT = 1000000  # microvolts
_MEGOHM = 10**6 * declared.OHM
# Along each wire and then to others: little is good of the one and bad of the other, so is OL.
_ALONG_AND_ACROSS = AtMost(2 * declared.OHM, None, _MEGOHM, None)
_APART = AtMost(0, "bad", _MEGOHM, "good")

_PLUG = ("pins", "connector")
_LINE = _PLUG + ("wire", "splice", "loom", "control-plug")
_FED = _LINE + ("shared",)
_MEASURED = ("open", "high", "supply", "ground", "to-ground", "to-supply", "neighbour")
# Contacts and breaks that open when warm, in one of the wires; what else there is shows warm as cold.
_WARM = ("warm", "warm-supply", "warm-ground")
SPLICE, CONTROL = "splice", "control"
# Minutes until a hand is there; the sensor's own plug is reached as it stands.
REACH = {SPLICE: 4, CONTROL: 8}


def _say(end: str) -> dict:
    return message("parking-sensor-{}".format(end))


def _segment(identity: str, branch: bool = False, **faults) -> Segment:
    return Segment(identity, {kind.replace("_", "-"): faults[kind] for kind in faults}, branch)


_SEGMENTS = (
    _segment("pins", open=10, high=8, supply=3, ground=4, loose=5, neighbour=1),
    _segment("connector", open=5, high=6, supply=2, ground=3, loose=4, to_ground=1),
    _segment("wire", open=6, high=1, supply=2, ground=2, loose=3, to_ground=4, to_supply=1, neighbour=1),
    _segment("splice", open=3, high=3, supply=1, ground=1, loose=2),
    _segment("loom", open=2, to_ground=1, loose=1),
    _segment("control-plug", open=2, high=2, loose=1),
    _segment("channel", dead=8),
    _segment("shared", branch=True, supply=1, ground=2),
)


def _look(identity: str, segments: tuple, minutes: int, places: tuple = ()) -> Probe:
    return Probe(identity, segments, (), 0.95, 0.005, minutes, places, segments[0])


def _meter(identity: str, segments: tuple, kinds: tuple, minutes: int, places=(), to="", sees=0.95) -> Probe:
    return Probe(identity, segments, kinds, sees, 0.02, minutes, places, to)


# Two channels exchanged: the fault shows at the one or at the other. A self-test that misses it, or gives a
# false alarm, shows it at neither or at both, which is "can't tell". So where a dead channel's fault is said
# to have moved, somebody told it amiss, as rarely as a look. That it stayed says less: nothing may have been
# exchanged. `tests/core/test_harness.py` enumerates it.
_TOLD = 0.995
_TOLD_BEFORE = (SINCE, 0.95)

_CHAIN = Chain(
    _SEGMENTS,
    (
        _look("connector", _PLUG, 0),
        _meter("ground", _FED, ("ground",), 0),
        _meter("signal", _LINE, ("open", "high", "to-ground"), 0),
        _look("seated", ("connector",), 1),
        _look("pins", ("pins",), 1),
        _meter("supply", _FED, ("supply",), 2, to="ground"),
        _meter("ground-drop", _FED, ("ground",), 2, to="ground"),
        _meter("elsewhere", ("shared",), (), 5, to="shared"),
        _meter("wiggle", _PLUG, ("loose",), 2, sees=0.85),
        _meter("wiggle-line", _LINE[2:], ("loose",), 4, sees=0.85),
        _look("splice", ("splice",), 1, (SPLICE,)),
        _meter("half", _LINE[:3], _MEASURED, 3, (SPLICE,), "splice"),
        _meter("continuity", _LINE, ("open", "high"), 2, (CONTROL,), "control-plug"),
        _meter("to-ground", _LINE, ("to-ground",), 1, (CONTROL,), "ground"),
        _meter("to-supply", _LINE, ("to-supply",), 1, (CONTROL,), "ground"),
        _meter("neighbour", _LINE, ("neighbour",), 1, (CONTROL,), "neighbour"),
        _look("control-plug", ("control-plug",), 1, (CONTROL,)),
        _meter("channels", ("channel",), (), 8, (CONTROL,), "channel", sees=_TOLD),
        _meter("wire", ("wire",), _MEASURED, 2, (SPLICE,), "wire"),
        _meter("loom", ("loom",), _MEASURED, 2, (SPLICE, CONTROL), "loom"),
        _meter("wiggle-wire", ("wire",), ("loose",), 2, sees=0.85),
    ),
    before={"channels": _TOLD_BEFORE},
)
_OPENS_WARM = {
    "pins": (5, 2, 2),
    "wire": (1, 0, 0),
    "splice": (2, 1, 1),
    "loom": (0.4, 0, 0),
    "control-plug": (2, 0, 0),
    "channel": (4, 0, 0),
}
# What is read again once it is warm.
_AGAIN_WARM = ("supply", "ground-drop", "half", "wire", "loom", "continuity", "channels")
# A kind that a check sees -> which of `_WARM` it sees, too, once it is warm.
_ALSO = {"open": _WARM[:1], "supply": _WARM[1:2], "ground": _WARM[2:]}


def _segment_warm(segment: Segment) -> Segment:
    faults, shares = dict(segment.faults), _OPENS_WARM.get(segment.id, ())
    for n in range(len(shares)):
        if shares[n]:
            faults[_WARM[n]] = shares[n]
    return Segment(segment.id, faults, segment.branch)


def _probe_cold(probe: Probe, segments: tuple) -> Probe:
    """Return a check that sees nothing of what shows only warm."""
    kinds = {kind: True for segment in segments for kind in segment.faults}
    return Probe(
        probe.id, probe.segments, probe.kinds or tuple(sorted(kinds)), probe.sees, probe.false,
        probe.minutes, probe.places, probe.to,
    )  # fmt: skip


def _probe_warm(probe: Probe) -> Probe:
    kinds = probe.kinds
    for kind in probe.kinds:
        kinds += tuple([each for each in _ALSO.get(kind, ()) if each not in kinds])
    return Probe(
        probe.id + WARM, probe.segments, kinds, probe.sees, probe.false, probe.minutes, probe.places, probe.to
    )


def _one_place(identity: str, segments: tuple, places: tuple = ()) -> Probe:
    """Return the check that warms one place alone while the self-test repeats."""
    return Probe(identity + WARM, segments, _WARM, 0.9, 0.02, 3, places, "")


_CHAIN_WARM = Chain(
    tuple([_segment_warm(each) for each in _SEGMENTS]),
    tuple([_probe_cold(each, _SEGMENTS) for each in _CHAIN.probes])
    + tuple([_probe_warm(each) for each in _CHAIN.probes if each.id in _AGAIN_WARM])
    + (
        _one_place("warm-plug", _PLUG),
        _one_place("warm-splice", ("splice",), (SPLICE,)),
        _one_place("warm-control", ("control-plug", "channel"), (CONTROL,)),
    ),
    {("loom", _WARM[0]): _LOOM_WARM},
    {"channels": _TOLD_BEFORE, "channels" + WARM: _TOLD_BEFORE},
)
HARNESS = Harness(
    _CHAIN,
    _CHAIN_WARM,
    REACH,
    SINCE,
    {each.id: _say("segment-" + each.id) for each in _SEGMENTS},
    {each.id: _say("mend-" + each.id) for each in _SEGMENTS},
    bought=("channel",),
    # Worked out from the chain by its order of checks, which takes too long for a phone.
    found=10.3,
    all_good=51.0,
)


def _check(name: str, unit: str = "", limit=None, metres: int = 0, since: int = 2, warm: int = 0) -> dict:
    check = declared.circuit_check(_say, name, unit, limit, metres)
    check["since"], check["since_warm"] = since, warm or since
    return check


CHECKS = (
    _check("connector", since=1),
    _check("ground", "Ω", declared.at_most(1), 5, since=1),
    _check("supply", "V", declared.LIKE_THE_OTHERS, since=1),
    _check("signal", "Ω", _ALONG_AND_ACROSS, 5, since=1),
    _check("seated"),
    _check("pins"),
    _check("ground-drop", "V", AtMost(_VOLT // 10, "good", 60 * _VOLT, "bad")),
    _check("elsewhere"),
    _check("wiggle"),
    _check("wiggle-line"),
    _check("splice"),
    _check("half", "Ω", _ALONG_AND_ACROSS, 2),
    _check("continuity", "Ω", declared.at_most(2), 5),
    _check("to-ground", "Ω", _APART),
    _check("to-supply", "V", AtMost(_VOLT // 2, "good", 60 * _VOLT, "bad")),
    _check("neighbour", "Ω", _APART),
    _check("control-plug"),
    _check("channels"),
    _check("wire", "Ω", _ALONG_AND_ACROSS, 2, since=3),
    _check("loom", "Ω", _ALONG_AND_ACROSS, 3, since=3, warm=_LOOM_WARM),
    _check("wiggle-wire", since=3),
    _check("warm-plug"),
    _check("warm-splice"),
    _check("warm-control"),
)
# They are warm by what is done at them.
for _each in CHECKS[-3:]:
    _each["warms"] = True
