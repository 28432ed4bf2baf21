"""A job and what the trade asks of it: what is fitted, what is in hand, what happened since the last test.

One list of short answers, and so one module, however long.
"""

from ..parts import sorts
from ..parts.sort import Sort
from . import stories
from .kept_facts import position_of
from .state import EMPTY
from .unit import Unit
from .unit import sort_on_record


class Job:
    """A job on record; `facts` is the plain dict that the state keeps, so it is never out of date."""

    def __init__(self, state, facts: dict):
        """Ask one job of a state."""
        self.state = state
        self.facts = facts
        self.id = facts["id"]

    def __getitem__(self, name: str):
        """Return a fact as the state keeps it: `facts/` asks a job so, as a dict or as this."""
        return self.facts[name]

    @property
    def complaint(self) -> str:
        """What the customer said."""
        return self.facts["complaint"]

    @property
    def layout(self) -> str:
        """The id of the layout that it was opened with."""
        return self.facts["layout"]

    @property
    def part(self) -> str:
        """The part number that its units were opened with, "" where it was not known."""
        return self.facts["part"]

    @property
    def sort(self) -> Sort:
        """The sort of part that it is about: its words, checks and cautions."""
        return sorts.by_layout(self.facts["layout"])

    @property
    def opened_at(self) -> int:
        """When it was opened, in milliseconds."""
        return self.facts["opened_at"]

    @property
    def closing(self) -> dict | None:
        """How it was closed, as {"at", "actor", "note"}; None while it is open."""
        return self.facts["closed"]

    @property
    def closed_by(self) -> str:
        """Who closed it, "" where nobody is named or it is open."""
        return self.facts["closed"]["actor"] if self.facts["closed"] else ""

    @property
    def positions(self) -> list[dict]:
        """The positions of its layout, in the order in which they are shown."""
        return self.facts["positions"]

    @property
    def tests(self) -> list[dict]:
        """Its self-tests, the first one first."""
        return self.facts["tests"]

    @property
    def cleaned_since_test(self) -> list[str]:
        """The positions that were cleaned since the last self-test."""
        return self.facts["pending"]["cleaned"]

    @property
    def repaired_since_test(self) -> list[str]:
        """The causes that were repaired since the last self-test."""
        return self.facts["pending"]["repaired"]

    @property
    def repairs(self) -> list[dict]:
        """All its repairs as {"cause", "what", "at"}, the first one first; newer ones have "segment", too."""
        return self.facts["repairs"]

    @property
    def measurements(self) -> list[dict]:
        """What was measured on circuits as {"position", "check", "value", "reads", "repairs_before"}."""
        return self.facts["meter"]

    def wire_at(self, position: str) -> dict | None:
        """Return what was noted of the wire at a position, as the data of `wire_noted`; None for nothing."""
        return self.facts.get("wires", {}).get(position)

    def marks_at(self, position: str) -> dict:
        """Return the colours and pins of the wires at a position, as `wires_marked` has them, or {}."""
        return self.facts.get("marks", {}).get(position) or self.wire_at(position) or {}

    @property
    def not_retaken(self) -> list[dict]:
        """The bad readings that a repair left as they are, each with its reason (facts/repairing.py)."""
        return self.facts.get("not_retaken", [])

    @property
    def sounder_checks(self) -> list[dict]:
        """What was gone through for want of a sounder, as {"check", "found", "tests_before"}."""
        return self.facts.get("sounder", [])

    @property
    def listened(self) -> list[dict]:
        """What was heard, as {"tests_before", "fitted", "heard", "repaired"}: see facts/listening.py."""
        return self.facts.get("listened", [])

    @property
    def photos(self) -> list[dict]:
        """Its pictures, the first one first."""
        return self.facts["photos"]

    @property
    def photos_skipped(self) -> list[str]:
        """The positions that were left without a picture on purpose."""
        return self.facts.get("photos_skipped", [])

    @property
    def cautions_read(self) -> dict:
        """Caution -> who read it."""
        return self.facts["cautions"]

    @property
    def walk_check(self) -> dict | None:
        """What the walk-behind check heard, as {"positions", "missed"}; None where none holds."""
        return self.facts["walk"]

    @property
    def stayed_quiet(self) -> list[str]:
        """The positions at which the walk-behind check heard nothing."""
        return self.facts["walk"]["missed"] if self.facts["walk"] else []

    @property
    def plugged_off(self) -> list[str]:
        """The positions whose plug was off for the last self-test and is not known to be on again."""
        return self.facts["plugged_off"]

    @property
    def units_at_opening(self) -> list[str]:
        """The ids of the units that sat on the vehicle when it was opened."""
        return self.facts["at_opening"]

    @property
    def comes_and_goes(self) -> bool:
        """Whether its fault comes and goes."""
        return self.facts["comes_and_goes"]

    @property
    def rates_ppm(self) -> dict:
        """The rates that were set on it, in parts per million."""
        return self.facts["rates"]

    def learned(self, kind: str) -> dict:
        """Return what its yard had learned, as the data of an entry of a kind; {} for nothing."""
        return self.facts.get("learned", {}).get(kind, {})

    @property
    def confidence_ppm(self) -> int:
        """The confidence asked for, in parts per million."""
        return self.facts["confidence_ppm"]

    @property
    def confidence_ppb(self) -> int:
        """The confidence asked for, in parts per billion, as the reasoning counts."""
        return self.facts["confidence_ppm"] * 1000

    @property
    def reach_set(self) -> dict:
        """Position -> minutes until a hand is on its unit, where somebody set them."""
        return self.facts["reach"]

    @property
    def comeback(self) -> tuple | None:
        """How earlier jobs of its vehicle count, as (factor, months), where somebody set it."""
        told = self.facts.get("comeback")
        return (told["factor"], told["months"]) if told else None

    @property
    def money(self) -> dict:
        """Labour and prices as far as they were given, in minor units."""
        return self.facts["money"]

    @property
    def move(self):
        """The move under way as {"move", "fitted", "before", ...}, or None."""
        return self.facts["move"]

    @property
    def history(self) -> list[dict]:
        """What was recorded on it, the first event first."""
        return self.facts["history"]

    @property
    def vehicle(self) -> dict:
        """The vehicle it is on."""
        return self.state.vehicles[self.facts["vehicle"]]

    @property
    def vehicle_id(self) -> str:
        """The id of the vehicle it is on."""
        return self.facts["vehicle"]

    @property
    def holds(self) -> dict:
        """Position -> id of the unit that sits there now, None or no entry where it is empty."""
        return self.vehicle["holds"]

    @property
    def pause(self) -> dict | None:
        """Why it rests, as {"why", "part", "note", "at"}; None while it does not."""
        return self.facts.get("paused")

    @property
    def handed(self) -> dict | None:
        """Who works on from here, as {"to", "by", "at"}; None where it was not handed over."""
        return self.facts.get("handed")

    def entries(self) -> list[dict]:
        """Return the entries of its history that count: understood, and not taken back."""
        return [each for each in self.history if each["understood"] and each["withdrawn"] is None]

    @property
    def known_entries(self) -> list[str]:
        """The last entry of each phone that counts on it: what whoever records on it now knows."""
        return stories.known(self.facts)

    def is_closed(self) -> bool:
        """Tell whether it was closed and not opened again."""
        return self.facts["closed"] is not None

    @property
    def reopened(self) -> dict | None:
        """Who closed it while another worked on, and what that did: {"closed", "went_on"}, or None."""
        return self.facts["reopened"]

    def is_reopened(self) -> bool:
        """Tell whether work on it went on after it was closed."""
        return self.facts["reopened"] is not None

    def was_lamp_checked(self, when: str) -> bool:
        """Tell whether the lamps were looked at, `when` being "key_on" or "reverse"."""
        return when in self.facts["lamps"]

    def lamp(self, when: str) -> str:
        """Return what the lamps showed, as a result of `lamp_checked`; "" where nobody looked."""
        seen = self.facts["lamps"].get(when)
        return seen["result"] if seen else ""

    def was_looked_at(self) -> bool:
        """Tell whether somebody noted what can be seen from outside."""
        return self.facts["looked"] is not None

    def position(self, identity: str) -> dict | None:
        """Return a position by its id, or None."""
        return position_of(self.facts, identity)

    def fitted_at(self, position: str) -> str | None:
        """Return the id of the unit that sits at a position, or None."""
        return self.holds.get(position)

    def left_at(self, position: str) -> str | None:
        """Return the id of the unit that was left at a position on purpose, EMPTY for none, or None."""
        return self.facts["left"].get(position)

    def is_left_empty(self, position: str) -> bool:
        """Tell whether nothing sits at a position, and somebody left it so on purpose."""
        return not self.fitted_at(position) and self.left_at(position) == EMPTY

    def is_empty_by_accident(self, position: str) -> bool:
        """Tell whether nothing sits at a position and nobody left it empty on purpose."""
        return not self.fitted_at(position) and self.left_at(position) != EMPTY

    def is_locked(self, position: str) -> bool:
        """Tell whether the connector at a position is known to be locked."""
        return position in self.facts["locked"]

    def fit_checked_at(self, position: str) -> str | None:
        """Return the id of the unit whose fit at a position was gone through last, or None."""
        checked = self.facts["fit_checks"].get(position)
        return checked["unit"] if checked else None

    def hanging(self) -> list[str]:
        """Return the positions at which a unit hangs on its wire, in the order in which they are shown."""
        holds = self.holds
        places = [each["id"] for each in self.positions]
        return [place for place in places if holds.get(place) and self.unit(holds[place]).is_hanging()]

    def code_counts(self, position: str) -> bool:
        """Tell whether the failure type of the code at a position counts towards the cause."""
        return self.facts["code_weights"].get(position, True)

    def repairs_of(self, cause: str) -> int:
        """Return how often a circuit, a feed or the control unit was repaired, once between two tests."""
        return len([each for each in self.repairs if each["cause"] == cause and "again" not in each])

    def unit(self, identity: str) -> Unit:
        """Return a unit as it is looked at from this job."""
        return Unit(self.state, identity, self)

    def units(self) -> list[str]:
        """Return the ids of the units that it has to do with, in order of id."""
        return self.state.units_of(self.id)

    def in_hand(self) -> list[str]:
        """Return the ids of the units that are in hand on it, in order of id."""
        return self.state.units_out(self.id)

    def at_hand(self) -> list[str]:
        """Return the ids of the units of its sort in stock or in hand on it, in order of id."""
        return [each for each in self.state.at_hand(self.id) if self._may_take(each)]

    def _may_take(self, unit: str) -> bool:
        """Tell whether a unit is of this sort; of one that was on no job yet the sort is not known."""
        other = sort_on_record(self.state, unit)
        return other is None or other is self.sort

    def disputed(self) -> list[str]:
        """Return the ids of disputed units that it has to do with, in order of id."""
        return self.state.disputed(self.id)

    def last_test(self) -> dict:
        """Return its latest self-test; there is one."""
        return self.facts["tests"][-1]


def find_job(state, identity: str | None) -> Job | None:
    """Return a job to ask, or None where none has this id."""
    facts = state.jobs.get(identity)
    return None if facts is None else Job(state, facts)


def known_job(state, identity: str) -> Job:
    """Return a job to ask that is on record for certain."""
    return Job(state, state.jobs[identity])
