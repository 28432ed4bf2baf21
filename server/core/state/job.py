"""A job and what the trade asks of it: what is fitted, what is in hand, what happened since the last test."""

from .state import position_of
from .unit import Unit


class Job:
    """A job on record; `facts` is the plain dict that the state keeps, so it is never out of date."""

    def __init__(self, state, facts: dict):
        """Ask one job of a state."""
        self.state = state
        self.facts = facts
        self.id = facts["id"]

    def __getitem__(self, name: str):
        """Return a fact as the state keeps it."""
        return self.facts[name]

    @property
    def positions(self) -> list[dict]:
        """The positions of its layout, in the order in which they are shown."""
        return self.facts["positions"]

    @property
    def tests(self) -> list[dict]:
        """Its self-tests, the first one first."""
        return self.facts["tests"]

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
    def holds(self) -> dict:
        """Position -> id of the unit that sits there now, None or no entry where it is empty."""
        return self.vehicle["holds"]

    def is_closed(self) -> bool:
        """Tell whether it was closed and not opened again."""
        return self.facts["closed"] is not None

    def position(self, identity: str) -> dict | None:
        """Return a position by its id, or None."""
        return position_of(self.facts, identity)

    def fitted_at(self, position: str) -> str | None:
        """Return the id of the unit that sits at a position, or None."""
        return self.holds.get(position)

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
        """Return the ids of the units in stock or in hand on it, in order of id."""
        return self.state.at_hand(self.id)

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
