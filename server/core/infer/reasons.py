"""What the reasoning says in words: short, second person, position names instead of ids."""

from .. import phrases
from ..messages import message
from ..messages import percent
from ..parts.sort import Sort
from .causes_named import together
from .figures import WHOLE

# What an outcome would mean; they stand behind the result, so they start small.
UNLIKELY = message("reasons-then-unlikely")
OPEN = message("reasons-then-open")
GONE = message("reasons-then-gone")
NO_FAULT = message("reasons-then-no-fault")
UNPLUGGED_SHOWS = message("reasons-then-watched")
UNPLUGGED_HIDES = message("reasons-then-not-watched")

_REASONS = {
    "first": "Nothing has been tested yet.",
    "no fault": "No test that counts has shown a fault. If it comes and goes, test again.",
    "aside": "The last test does not count.",
    "changed": "Something was changed since the last test.",
    "gone": "The causes found are dealt with. Clean tests now prove it.",
    "shared": "Most likely it is {}: check there first, then test again.",
    "repair": "Find and repair {}, then test again.",
    "retest": "Nothing to take apart: it shows whether the fault is still there.",
    "clean": "{Blocked} would show the same.",
    "clean several": "{Blocked} would show the same, and one retest serves for all of them.",
    "meter": "Connector and wire of {} are still suspects.",
    "verdict meter": "It is {}: the checks show where.",
    "verdict replace": "Replace {}, then prove it with a clean test.",
    "verdict spare": "It is {}: your spare takes its place.",
    "verdict clean": "It is {}: clean it, {check}, then prove it.",
    "unplug": "Shows whether the test watches {} at all; nothing about the cause.",
    "unplug doubt": "No test has ever shown a fault at {}: does the test watch it at all?",
    "stop": "More testing would cost more than it saves: fit a new one, then prove it.",
    "replace": "Only if you have no working {unit} to exchange it with.",
    "spare": "Your spare goes in: only one position to take apart.",
    "easiest": "It tested clean, and it is the easiest to reach.",
    "cleared": "It tested clean, so the fault can show where it belongs.",
    "same part, easiest": "Same part, and the easiest to reach.",
    "same part": "Same part, and it tested clean.",
    "bench": "A suspect lies on the bench: where all works, a test clears it or convicts it.",
    "several": "Settles several suspects in one retest, each with one that tested clean.",
    "ring": "Settles several suspects in one retest: each {unit} moves on to the next place.",
    "chain": "Your spare goes in, the suspects move on by one place.",
    "spares": "Your spares go in, all in one retest.",
    "suspects first": "Fewest to take apart. If all fault again, it is the {units}: wires fail less often.",
    "suspects": "Two suspects with each other: if both are bad, nothing moves.",
}


def not_heard(sort: Sort) -> str:
    """Say why a test that nobody noticed to run proves nothing."""
    return phrases.sentence_case(sort.self_test.was_not_heard) + ", so nothing proves that the test ran."


def not_watching(position: str) -> str:
    """Say why a test with an unplugged position that tests clean proves nothing."""
    return "{} was unplugged and still tested clean, so the test was not watching.".format(
        position[:1].upper() + position[1:]
    )


def reason(why: str, about: str, minutes: int, with_test: bool, sort: Sort) -> str:
    """Say why a move is proposed and how long it takes (hundredths of a minute)."""
    length = phrases.minutes(minutes) if minutes >= 50 else "half a minute"
    said = _REASONS[why].format(
        about,
        unit=sort.unit,
        units=sort.units,
        Blocked=phrases.sentence_case(sort.obstruction.words),
        check=sort.obstruction.check,
    )
    ending = " with the retest." if with_test else "."
    return "{} About {}{}".format(said, length, ending)


def cause(model, number: int) -> str:
    """Return a cause as a part of a sentence; a number below 0 is a unit not bought yet."""
    case = model.case
    sort = case.sort
    if number < 0:
        return "the new " + sort.unit
    kind = model.kinds[number]
    if kind == "unit":
        name = case.units[model.unit.index(number)].name
        # 'the sensor from right outer' is a name already; a code or an id is not.
        return name if " " in name else "{} {}".format(sort.unit, name)
    if kind == "control":
        return "the control unit"
    if kind == "feed":
        for group, rows in enumerate(model.feeds):
            if number in rows:
                return "the supply or ground of the {} {}".format(case.groups[group], sort.units)
    if kind == "blocked":
        place = model.blocked.index(number)
        return "{} at {}".format(sort.obstruction.words, case.positions[place].name)
    for place, rows in enumerate(model.circuits):
        if number in rows:
            return "the wiring at " + case.positions[place].name
    return model.names[number]


def settled(names: list, share: int, sort: Sort) -> dict:
    """Say that a result would settle the question."""
    return message(
        "reasons-then-it-is" if len(names) == 1 else "reasons-then-causes",
        cause=together(names, sort),
        share=percent(share),
    )


def leading(names: list, share: int, sort: Sort) -> dict:
    """Say what a result would make the likeliest, without settling it."""
    return message("reasons-then-likely", cause=together(names, sort), share=percent(share))


def nothing_left(share: int) -> dict:
    """Say that a result would prove that nothing is left to fix."""
    return message("reasons-then-nothing-left", share=percent(share))


def circuit_after(position: str, share: int) -> dict:
    """Say what the checks of a circuit would leave of it as a suspect."""
    if share * 20 < WHOLE:
        said = "reasons-then-circuit-out"
    elif share * 2 < WHOLE:
        said = "reasons-then-circuit-stays"
    elif share * 20 < WHOLE * 19:
        said = "reasons-then-circuit-likely"
    else:
        said = "reasons-then-circuit"
    return message(said, position=position, share=percent(share))
