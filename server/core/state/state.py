"""What is true: vehicles, units, labels, jobs, conflicts. Built by the fold, read by everyone else."""

from ..codes.numbers import by_eye
from ..codes.numbers import plain
from .index import Index
from .jobs_in_part import JobsInPart
from .jobs_in_part import kept_line
from .jobs_in_part import line_of
from .serials import serials_of

MIXED = "mixed"  # the place of a unit that is in hand, but nobody knows which of several it is

EMPTY = "empty"  # stands for the unit where a position is left empty deliberately


class State:
    """The folded state; plain dicts inside, so that it is also its own canonical JSON."""

    def __init__(self):
        """Start with nothing known."""
        self.vehicles = {}
        self.units = {}
        self.codes = {}
        self.jobs: dict | JobsInPart = {}
        self.printed = []
        self.learned = {}
        self.mixed = []
        self.aliases = {}
        self.conflicts = []
        self.not_understood = []
        self.index = Index()  # no state, but found from it
        self.verdicts = {}  # no state: what was concluded from it, kept because it is asked again
        self.phones = {}  # no state: what certificates say of the phones, `facts.whose`
        self.recorded = _none  # which kind an entry before another one is

    def as_dict(self) -> dict:
        """Return the whole state as one JSON-able object."""
        return {
            "vehicles": self.vehicles,
            "units": self.units,
            "codes": self.codes,
            "jobs": self.jobs.all() if isinstance(self.jobs, JobsInPart) else self.jobs,
            "printed": self.printed,
            "learned": self.learned,
            "mixed": self.mixed,
            "aliases": self.aliases,
            "conflicts": self.conflicts,
            "not_understood": self.not_understood,
        }

    def scratch(self, names: list) -> "State":
        """Return a copy to try facts on that name these jobs, vehicles and units; the rest is shared.

        Such facts may also change the units of a job or vehicle, and all of a mix-up.
        """
        other = State()
        other.phones, other.recorded = self.phones, self.recorded
        other.vehicles = self.vehicles.copy()
        other.units = self.units.copy()
        other.codes = self.codes.copy()
        other.jobs = self.jobs.copy()
        other.printed = _copied(self.printed)
        other.learned = dict(self.learned)
        other.mixed = _copied(self.mixed)
        other.aliases = self.aliases.copy()
        other.conflicts = [dict(conflict) for conflict in self.conflicts]
        other.not_understood = list(self.not_understood)
        units = {self.now(name): True for name in names}
        vehicles = {name: True for name in names if name in self.vehicles}
        for job in names:
            if job in self.jobs:
                other.jobs[job] = _copied(self.jobs[job])
                vehicles[self.jobs[job]["vehicle"]] = True
                units.update(self.index.of_job.get(job, {}))
        for vehicle in vehicles:
            for unit in self.vehicles[vehicle]["holds"].values():
                units[unit] = True
        for unit in sorted([unit for unit in units if unit in self.units]):
            if self.units[unit]["mixed"] is not None:
                entry = self.mixed[self.units[unit]["mixed"]]
                units.update({each: True for each in entry["open"] + entry["bodies"]})
        for unit in units:
            if unit in self.units:
                other.units[unit] = _copied(self.units[unit])
                if self.units[unit]["vehicle"]:
                    vehicles[self.units[unit]["vehicle"]] = True
        for vehicle in vehicles:
            other.vehicles[vehicle] = _copied(self.vehicles[vehicle])
        other.index = self.index.copy(other.conflicts)
        return other

    def add_unit(self, unit: dict) -> None:
        """Put a unit on record."""
        if unit["id"] in self.units:
            self.index.remove_unit(self.units[unit["id"]])
        self.units[unit["id"]] = unit
        self.index.add_unit(unit)

    def remove_unit(self, unit: str) -> None:
        """Take a unit off the record: a body that turned out to be another unit."""
        self.index.remove_unit(self.units[unit])
        del self.units[unit]

    def place_unit(self, unit: dict, place: str, vehicle, position, job) -> None:
        """Say where a unit is; vehicle, position and job are ids or None."""
        self.index.remove_place(unit)
        unit["place"] = place
        unit["vehicle"] = vehicle
        unit["position"] = position
        unit["job"] = job
        self.index.add_place(unit)

    def join_unit(self, unit: dict, job: str) -> None:
        """Note that a job has to do with a unit."""
        if job not in unit["jobs"]:
            unit["jobs"].append(job)
            self.index.add_job(unit, job)

    def claim_unit(self, unit: dict, claim: dict) -> None:
        """Add a place that someone says a unit is at."""
        unit["claims"].append(claim)
        self.index.add_claim(unit, claim)

    def settle_unit(self, unit: dict, claims: list) -> None:
        """Let a unit have these claims, as a rule none, in place of those it has."""
        self.index.remove_claims(unit)
        unit["claims"] = claims
        for claim in claims:
            self.index.add_claim(unit, claim)

    def note_serials(self, unit: dict) -> None:
        """Take note that a serial number was read off a unit."""
        self.index.note_serials(unit)

    def add_conflict(self, conflict: dict) -> None:
        """Put a conflict on record."""
        self.conflicts.append(conflict)
        self.index.add_conflict(conflict)

    def renew_conflicts(self, conflicts: list) -> None:
        """Let these be the conflicts on record."""
        self.conflicts = conflicts
        self.index.renew_conflicts(conflicts)

    def conflicts_of(self, unit: str) -> list[dict]:
        """Return the conflicts about a unit."""
        return self.index.conflicts.get(unit, [])

    def job_line(self, identity: str) -> dict:
        """Return what the lists say of a job, in the form of `line_of`; all of them are in memory."""
        if isinstance(self.jobs, JobsInPart) and identity in self.jobs.lines:
            return self.jobs.lines[identity]
        return line_of(self.jobs[identity])

    def kept_line(self, identity: str) -> dict:
        """Return the line of a job as it stays in memory without the job, in the form of `kept_line`."""
        if isinstance(self.jobs, JobsInPart) and identity in self.jobs.lines:
            return self.jobs.lines[identity]
        return kept_line(self.jobs[identity])

    def now(self, unit: str) -> str:
        """Return the id under which a unit is on record: what a body of a mix-up turned out to be."""
        while unit in self.aliases:
            unit = self.aliases[unit]
        return unit

    def mixup(self, unit: str) -> dict | None:
        """Return the mix-up that a unit is a body of, while nobody knows which unit it is."""
        for entry in self.mixed:
            if unit in entry["bodies"]:
                return entry
        return None

    def occupant(self, vehicle: str, position: str) -> str | None:
        """Return the id of the unit that sits at a position, or None."""
        return self.vehicles[vehicle]["holds"].get(position)

    def units_of(self, job: str) -> list[str]:
        """Return the ids of the units that a job has to do with, in order of id."""
        return sorted(self.index.of_job.get(job, {}))

    def units_out(self, job: str) -> list[str]:
        """Return the ids of the units that are in hand on a job, in order of id."""
        return sorted(self.index.out.get(job, {}))

    def at_hand(self, job: str) -> list[str]:
        """Return the ids of the units in stock or in hand on a job, in order of id."""
        return sorted(list(self.index.stock) + self.units_out(job))

    def sharing_a_label(self) -> list[str]:
        """Return the ids of units that carry one label between them, in order of id."""
        sharing = {}
        for conflict in self.index.open_labels():
            for unit in (conflict["unit"], self.codes.get(conflict["code"])):
                if unit:
                    sharing[unit] = True
        return sorted(sharing)

    def with_serial(self, serial: str) -> list[str]:
        """Return the ids of the units that a serial number was ever read off, in order of id."""
        wanted = plain(serial)
        return [
            name
            for name in self.with_serial_by_eye(serial)
            if wanted in [plain(each) for each in serials_of(self.units[name])]
        ]

    def with_serial_by_eye(self, serial: str) -> list[str]:
        """Return the ids of the units that a serial number was ever read off that looks so, by id."""
        wanted = by_eye(serial)
        return self.index.with_serial(wanted, self.units.values()) if wanted else []

    def is_on_record(self, field: str, number: str) -> bool:
        """Tell whether a number is on record as the "part" or the "serial" number of any unit."""
        if field == "serial":
            return bool(self.with_serial(number))
        parts = {unit["part"]: True for unit in self.units.values()}  # few, however many units there are
        return plain(number) != "" and plain(number) in [plain(part) for part in parts]

    def disputed(self, job: str) -> list[str]:
        """Return the ids of disputed units that the job has to do with, in order of id."""
        return [unit for unit in self.units_of(job) if self.units[unit]["claims"]]

    def claimed_at(self, vehicle: str) -> list[str]:
        """Return the ids of disputed units that a claim says are on a vehicle, in order of id."""
        return sorted(self.index.claimed_at.get(vehicle, {}))


def _none(device: str, seq: int, before: dict) -> str | None:
    """Return the kind of an entry that comes before another one, None where there is none: none does."""


def _copied(value):
    """Return a deep copy of plain JSON data."""
    if isinstance(value, dict):
        return {key: _copied(value[key]) for key in value}
    if isinstance(value, list):
        return [_copied(item) for item in value]
    return value
