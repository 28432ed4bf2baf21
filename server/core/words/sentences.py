"""The sentence of an event, for the history of a job and the record: its kind tells it with these names."""

from ..codes import labels
from ..facts.kinds import KINDS
from ..messages import all_of
from ..state.job import Job
from ..state.unit import Unit
from . import causes
from . import words
from .noted import noted


def sentence(job: Job, kind: str, data: dict) -> dict:
    """Return what an event of a known kind says."""
    return KINDS[kind].sentence(_Names(job), data)


def sentence_beside(unit: Unit, kind: str, data: dict) -> dict:
    """Return what an event of a known kind says of a unit that it names outside any job."""
    return KINDS[kind].sentence(_NamesBeside(unit), data)


class _Names:
    """How the things that an event names are called, on one job."""

    code = staticmethod(labels.shown)

    def __init__(self, job: Job):
        self._job = job
        self.sort = job.sort

    def position(self, identity: str):
        return words.position_name(self._job, identity)

    def positions(self, identities: list) -> dict:
        return all_of([self.position(identity) for identity in identities])

    def unit(self, identity: str):
        return words.unit_name(self._job.unit(identity))

    def units(self, identities: list) -> dict:
        return all_of([self.unit(identity) for identity in identities])

    def tests(self, events: list) -> list[str]:
        return [str(n + 1) for n, test in enumerate(self._job.tests) if test["event"] in events]

    def cause(self, identity: str) -> dict:
        return causes.phrase(self._job, identity)

    def noted(self, reason: str):
        return noted(self.sort, reason)

    def place(self, place: str) -> dict:
        return words.place_name(place)


class _NamesBeside:
    """How the things are called that an event outside any job can name."""

    code = staticmethod(labels.shown)

    def __init__(self, unit: Unit):
        self._unit = unit
        self.sort = unit.sort

    def unit(self, identity: str):
        return words.unit_name(Unit(self._unit.state, identity))

    def noted(self, reason: str):
        return noted(self.sort, reason)

    def place(self, place: str) -> dict:
        return words.place_name(place)
