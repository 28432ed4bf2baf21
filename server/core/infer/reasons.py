"""What the reasoning says, as messages: short, second person, position names instead of ids."""

from ..messages import message
from ..messages import minutes as lasting
from ..messages import percent
from ..parts.sort import Sort
from . import causes_named
from .causes_named import together
from .figures import WHOLE

# What an outcome would mean; they stand behind the result, so they start small.
UNLIKELY = message("reasons-then-unlikely")
OPEN = message("reasons-then-open")
GONE = message("reasons-then-gone")
NO_FAULT = message("reasons-then-no-fault")
UNPLUGGED_SHOWS = message("reasons-then-watched")
UNPLUGGED_HIDES = message("reasons-then-not-watched")

# Why a move is proposed: the id of the sentence.
_WHY = {
    "first": "reasons-why-first",
    "no fault": "reasons-why-no-fault",
    "aside": "reasons-why-aside",
    "changed": "reasons-why-changed",
    "gone": "reasons-why-gone",
    "shared": "reasons-why-shared",
    "repair": "reasons-why-repair",
    "retest": "reasons-why-retest",
    "before buying": "reasons-why-before-buying",
    "elsewhere": "reasons-why-before-buying-elsewhere",
    "before a spare": "reasons-why-before-a-spare",
    "clean": "reasons-why-clean",
    "clean several": "reasons-why-clean-several",
    "meter": "reasons-why-meter",
    "listen": "reasons-why-listen",
    "verdict replace": "reasons-why-verdict-replace",
    "verdict spare": "reasons-why-verdict-spare",
    "verdict clean": "reasons-why-verdict-clean",
    "unplug": "reasons-why-unplug",
    "unplug doubt": "reasons-why-unplug-doubt",
    "replace": "reasons-why-replace",
    "spare": "reasons-why-spare",
    "easiest": "reasons-why-easiest",
    "cleared": "reasons-why-cleared",
    "same part, easiest": "reasons-why-same-part-easiest",
    "same part": "reasons-why-same-part",
    "bench": "reasons-why-bench",
    "back": "reasons-why-back",
    "fill": "reasons-why-fill",
    "fill elsewhere": "reasons-why-fill-elsewhere",
    "several": "reasons-why-several",
    "ring": "reasons-why-ring",
    "chain": "reasons-why-chain",
    "spares": "reasons-why-spares",
    "suspects first": "reasons-why-suspects-first",
    "suspects": "reasons-why-suspects",
}


def not_heard(sort: Sort) -> dict:
    """Say why a test that nobody noticed to run proves nothing."""
    return message("reasons-not-heard", why=sort.self_test.was_not_heard)


def waits() -> dict:
    """Say why a test proves nothing while what two phones entered contradicts."""
    return message("reasons-waits")


def not_watching(position) -> dict:
    """Say why a test with an unplugged position that tests clean proves nothing."""
    return message("reasons-not-watching", position=position)


def reason(why: str, about, minutes: int, with_test: bool, sort: Sort) -> dict:
    """Say why a move is proposed and how long it takes (hundredths of a minute)."""
    blocked, check = sort.obstruction.words, sort.obstruction.check
    return message(
        "reasons-with-retest" if with_test else "reasons-without-test",
        why=message(_WHY[why], about=about, blocked=blocked, check=check, sort=sort.identity),
        length=lasting(minutes) if minutes >= 50 else message("reasons-half-minute"),
    )


def cause(model, number: int):
    """Return a cause as a part of a sentence; a number below 0 is a unit not bought yet.

    One behind all that are there is what a repair would leave, named as what it takes the place of.
    """
    case = model.case
    sort = case.sort
    if number < 0:
        return message("causes-new", sort=sort.identity)
    number = number % len(model.kinds)
    kind = model.kinds[number]
    if kind == "unit":
        name = case.units[model.unit.index(number)].name
        # 'the sensor from right outer' is a name already; a code or an id is not.
        return name if isinstance(name, dict) or " " in name else causes_named.labelled(sort, name)
    if kind == "feed":
        for group, rows in enumerate(model.feeds):
            if number in rows:
                return causes_named.feed(sort, case.groups[group])
    if kind == "blocked":
        return causes_named.blocked(sort, case.positions[model.blocked.index(number)].name)
    for place, rows in enumerate(model.circuits):
        if number in rows:
            return causes_named.circuit(sort, case.positions[place].name)
    return causes_named.control()


def settled(names: list, share: int) -> dict:
    """Say that a result would settle the question."""
    return message(
        "reasons-then-it-is" if len(names) == 1 else "reasons-then-causes",
        cause=together(names),
        share=percent(share),
    )


def leading(names: list, share: int) -> dict:
    """Say what a result would make the likeliest, without settling it."""
    return message("reasons-then-likely", cause=together(names), share=percent(share))


def nothing_left(share: int) -> dict:
    """Say that a result would prove that nothing is left to fix."""
    return message("reasons-then-nothing-left", share=percent(share))


def circuit_after(position, share: int, stands: bool) -> dict:
    """Say what the checks of a circuit would leave of it as a suspect; `stands`: it may be acted on then."""
    if stands:
        said = "reasons-then-circuit"
    elif share * 20 < WHOLE:
        said = "reasons-then-circuit-out"
    elif share * 2 < WHOLE:
        said = "reasons-then-circuit-stays"
    else:
        said = "reasons-then-circuit-likely"
    return message(said, position=position, share=percent(share))
