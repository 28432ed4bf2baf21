"""The words that jobs, units and vehicles are found by, kept beside the state.

A search runs with every letter typed. On a phone with years of jobs the words are made once; what is recorded
after that has those made again of what it names. As with `Conclusions`, no answer depends on what is kept.
"""

from ..facts.connected import names
from ..facts.corrections import KINDS_OF_CORRECTION
from ..state.jobs_in_part import Order
from ..state.jobs_in_part import codes_of
from ..state.jobs_in_part import in_order
from ..state.jobs_in_part import means_of
from ..state.jobs_in_part import people_of
from ..state.state import State
from . import search

# Whose words are made in one go: whoever taps meanwhile comes in between. Most units have no label.
_JOBS_AT_ONCE, _UNITS_AT_ONCE = 100, 400


class Findable:
    """What is found by which words in a fold."""

    def __init__(self):
        """Start with nothing."""
        self.state = State()
        self.before = 0
        self.read = 0
        self.last = None
        self.jobs_in_order = None
        self._forget_all()

    def keep_up(self, fold) -> None:
        """Note what entries since the last time may have changed."""
        events = fold.events
        same = fold.state is self.state and fold.before == self.before and len(events) >= self.read
        if not same or (self.read and events[self.read - 1] is not self.last):
            self._forget_all()
        elif len(events) > self.read:
            self.jobs_in_order = None
            for event in events[self.read :]:
                self._note(fold.state, event)
        self.state, self.before, self.read = fold.state, fold.before, len(events)
        self.last = events[-1] if events else None

    def make_some(self) -> bool:
        """Make some of the words that are missing for a search of jobs; tell whether all are there."""
        if not self._jobs.make(self.state.jobs, self._of_job, _JOBS_AT_ONCE):
            return False
        if not self._numbers.make(self.state.units, self._of_label, _UNITS_AT_ONCE):
            return False
        return self._vehicles.make(self.state.vehicles, self._of_vehicle, _UNITS_AT_ONCE)

    def jobs(self) -> dict:
        """Return job -> its words: of its vehicle, its complaint, its people and its units' labels."""
        self._jobs.make(self.state.jobs, self._of_job)
        return self._jobs.words

    def numbers(self) -> dict:
        """Return unit -> the words of its labels and serial numbers, where it has any."""
        self._numbers.make(self.state.units, self._of_label)
        return self._numbers.words

    def units(self) -> dict:
        """Return unit -> its words, those of the vehicles and complaints of its jobs included."""
        self._units.make(self.state.units, self._of_unit)
        return self._units.words

    def vehicles(self) -> dict:
        """Return vehicle -> its words."""
        self._vehicles.make(self.state.vehicles, self._of_vehicle)
        return self._vehicles.words

    def order(self) -> Order:
        """Return the jobs by how they stand."""
        if self.jobs_in_order is None:
            self.jobs_in_order = in_order(self.state.jobs)
        return self.jobs_in_order

    def _of_job(self, identity: str):
        line = self.state.job_line(identity)
        people, codes = said_of(self.state, line)
        texts, numbers = search.of_job(self.state.vehicles[line["vehicle"]], line)
        numbers.extend(codes)
        texts.extend(means_said(self.state, line))
        for unit in self.state.index.of_job.get(identity, {}):
            numbers.extend(search.numbers_of_unit(self.state.units[unit]))
        return search.raw(texts + people, numbers)

    def _of_label(self, identity: str):
        numbers = search.numbers_of_unit(self.state.units[identity])
        return search.raw([], numbers) if numbers else None

    def _of_unit(self, identity: str):
        unit = self.state.units[identity]
        texts, numbers = search.of_unit(unit)
        for job in unit["jobs"]:
            line = self.state.job_line(job)
            more = search.of_job(self.state.vehicles[line["vehicle"]], line)
            texts.extend(more[0])
            numbers.extend(more[1])
        return search.raw(texts, numbers)

    def _of_vehicle(self, identity: str):
        return search.raw(*search.of_vehicle(self.state.vehicles[identity]))

    def _forget_all(self) -> None:
        self.jobs_in_order = None
        self._jobs, self._numbers, self._units, self._vehicles = _Table(), _Table(), _Table(), _Table()

    def _note(self, state, event: dict) -> None:
        """Have the words made again of what an entry names, and of what hangs together with that."""
        if event["kind"] in KINDS_OF_CORRECTION:
            self._forget_all()
            return
        named = names(event)
        for entry in state.mixed:  # what one of them turns out to be says something of the others
            named.extend(entry["open"] + entry["bodies"])
        named.extend(state.aliases)  # and the one that it was taken for is no more
        for name in named:
            if name in state.vehicles:
                self._vehicles.left[name] = True
                for job in state.vehicles[name]["jobs"]:
                    self._note_job(state, job)
            if name in state.jobs:
                self._note_job(state, name)
            for unit in (name, state.now(name), state.codes.get(name)):
                if unit:
                    self._note_unit(state, unit)

    def _note_job(self, state, job: str) -> None:
        self._jobs.left[job] = True
        for unit in state.units_of(job):
            self._units.left[unit] = True

    def _note_unit(self, state, unit: str) -> None:
        self._units.left[unit] = self._numbers.left[unit] = True
        for job in state.units[unit]["jobs"] if unit in state.units else []:
            self._jobs.left[job] = True


class _Table:
    """Words by id; of those in `left` they are to be made again, of all before the first time."""

    def __init__(self):
        """Start with no words."""
        self.words = {}
        self.left = {}
        self.begun = False

    def make(self, known, pair_of, most: int = 0) -> bool:
        """Make the words that are left, of `most` ids at once where that is no 0; tell whether all are there.

        `pair_of` gives the pair of an id, None where there is nothing to find it by.
        """
        if not self.begun:
            self.begun = True
            self.left = {name: True for name in known}
        if not self.left:
            return True
        names_left = sorted(self.left)
        now = names_left[:most] if most else names_left
        found = {}
        for name in now:
            del self.left[name]
            self.words.pop(name, None)
            pair = pair_of(name) if name in known else None
            if pair:
                found[name] = pair
        if found:
            made = sorted(found)
            texts = search.fold_all([found[name] for name in made])
            for at in range(len(made)):
                self.words[made[at]] = texts[at]
        return not self.left


def said_of(state, line: dict) -> tuple[list[str], list[str]]:
    """Return (who worked on a job, the trouble codes of its tests), in memory or not."""
    if "people" in line:
        return line["people"], line["codes"]
    job = state.jobs[line["id"]]
    return people_of(job), codes_of(job)


def means_in(state, line: dict) -> dict:
    """Return what was said on a job of its trouble codes, as `means_of` has it."""
    return line["means"] if "means" in line else means_of(state.jobs[line["id"]])


def means_said(state, line: dict) -> list[str]:
    """Return what was said on a job of its trouble codes, in order."""
    means = means_in(state, line)
    return [means[code]["means"] for code in sorted(means)]
