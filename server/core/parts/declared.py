"""What each further sort declares alike: its messages are called by what they say, after its own name.

`say` is a sort's own function from the end of an id to the message: say("take-out").
"""

from ..meter.limits import AtMost
from ..meter.limits import Beside
from .sort import Caution
from .sort import Handling
from .sort import Lamp
from .sort import Look
from .sort import Obstruction
from .sort import SelfTest
from .sort import Sounder
from .sort import Walk
from .sort import Wire

OHM = 1000000  # micro-ohms
# A supply is good within half a volt of one that works, and below half a volt there is none.
LIKE_THE_OTHERS = Beside(500000, 500000)
# What a lamp showed -> how the id of its words ends.
_LAMP_ENDS = {
    "as_it_should": "right",
    "stays_on": "stays",
    "flashes": "flashes",
    "never_on": "never",
    "not_sure": "not-sure",
}


def at_most(ohms: int) -> AtMost:
    """Return the limit of a wire that has to be whole from end to end."""
    return AtMost(ohms * OHM, "good", 10**6 * OHM, "bad")


def key_on(say, *shown: str) -> Lamp:
    """Return the check of its lamp at key-on; `shown` is what that can show, as ids in order."""
    answers = tuple([(each, say("key-on-" + _LAMP_ENDS[each])) for each in shown])
    return Lamp("key_on", say("key-on-heading"), say("key-on-text"), answers)


def look(say, *found: str) -> Look:
    """Return the look from outside; `found` are ids that the kind `looked` has always known."""
    return Look(
        say("look-heading"),
        say("look-text"),
        tuple([(identity, say("found-" + identity.replace("_", "-"))) for identity in found]),
    )


def self_test(say) -> SelfTest:
    """Return how its test is started, and what proves that it ran."""
    return SelfTest(
        start=say("test-start"),
        start_again=say("test-start-again"),
        heard=say("test-heard"),
        not_heard=say("test-not-heard"),
        was_not_heard=say("test-was-not-heard"),
        whose_was_heard=say("test-whose-heard"),
        provoke=say("test-provoke"),
        question=say("test-question"),
        asked=say("test-asked"),
        yes=say("test-ran"),
        no=say("test-not-proven"),
    )


def unproven(say, *names: str) -> Sounder:
    """Return what is gone through in this order where nothing proves that its test ran."""
    return Sounder(
        checks=tuple(
            [
                {
                    "id": name,
                    "title": say("unproven-" + name),
                    "text": say("unproven-" + name + "-text"),
                    "good": say("unproven-" + name + "-good"),
                }
                for name in names
            ]
        ),
        order=(("", "", names),),
        rest=say("unproven-rest"),
        controls=(),
    )


def handling(say) -> Handling:
    """Return how a unit is taken out and put in."""
    return Handling(say("take-out"), say("put-in"), say("plug"))


def fit_checks(say, *names: str) -> tuple:
    """Return what is gone through once a unit is in."""
    return tuple([{"id": name, "words": say("fit-" + name)} for name in names])


def circuit_check(say, name: str, unit: str = "", limit=None, metres: int = 0) -> dict:
    """Return a check of the wiring; with `metres` on a wire of 0.5 mm² that is at most so long."""
    check = {
        "id": name,
        "title": say("check-" + name),
        "text": say("check-" + name + "-text"),
        "unit": unit,
        "good": say("check-" + name + "-good"),
        "bad": say("check-" + name + "-bad"),
    }
    if limit is not None:
        check["limit"] = limit
    if metres:
        check["wire"] = Wire("0.5", metres)
    return check


def obstruction(say, outside: bool = False) -> Obstruction:
    """Return what keeps a good unit from working; `outside`: it is cleaned with nothing opened."""
    return Obstruction(
        words=say("blocked"),
        for_customer=say("blocked-for-customer"),
        state=say("blocked-state"),
        clean=say("clean"),
        clean_and_look=say("clean-and-look"),
        check=say("blocked-check"),
        outside=outside,
    )


def walk(say) -> Walk:
    """Return the check in use that ends a job."""
    return Walk(
        heading=say("walk-heading"),
        text=say("walk-text"),
        button=say("walk-all"),
        again_heading=say("walk-again-heading"),
        again_text=say("walk-again-text")["msg"],
        accepted=say("walk-accepted"),
        name=say("walk-name"),
        missed=say("walk-missed")["msg"],
        all_well=say("walk-all-well"),
        report_name=say("walk-report-name"),
        report_all_well=say("walk-report-all-well"),
        works=say("walk-works"),
        fails=say("walk-fails"),
        left=say("walk-left"),
        first=say("walk-first"),
    )


def cautions(say, icons: tuple) -> dict:
    """Return the cautions by id; `icons` are (id, the icon beside it)."""
    found = {}
    for identity, icon in icons:
        name = "caution-" + identity.replace("_", "-")
        found[identity] = Caution(icon, say(name), say(name + "-short"))
    return found


def complaints(say, *names: str) -> tuple:
    """Return what customers mostly say."""
    return tuple([say("complaint-" + name) for name in names])
