"""What is true: vehicles, units, labels, jobs, conflicts. Built by the fold, read by everyone else."""

from .jobs_in_part import JobsInPart
from .jobs_in_part import line_of

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
        self.mixed = []
        self.aliases = {}
        self.conflicts = []
        self.not_understood = []
        self.verdicts = {}  # no state: what was concluded from it, kept because it is asked again

    def as_dict(self) -> dict:
        """Return the whole state as one JSON-able object."""
        return {
            "vehicles": self.vehicles,
            "units": self.units,
            "codes": self.codes,
            "jobs": self.jobs.all() if isinstance(self.jobs, JobsInPart) else self.jobs,
            "printed": self.printed,
            "mixed": self.mixed,
            "aliases": self.aliases,
            "conflicts": self.conflicts,
            "not_understood": self.not_understood,
        }

    def scratch(self, job: str | None) -> "State":
        """Return a copy to try facts of one job on; what the job does not touch is shared."""
        other = State()
        other.vehicles = dict(self.vehicles)
        other.units = dict(self.units)
        other.codes = dict(self.codes)
        other.jobs = self.jobs.copy()
        other.printed = _copied(self.printed)
        other.mixed = _copied(self.mixed)
        other.aliases = dict(self.aliases)
        other.conflicts = [dict(conflict) for conflict in self.conflicts]
        other.not_understood = list(self.not_understood)
        if job in self.jobs:
            vehicle = self.jobs[job]["vehicle"]
            other.jobs[job] = _copied(self.jobs[job])
            other.vehicles[vehicle] = _copied(self.vehicles[vehicle])
        for unit in self.units:
            if job is None or job in self.units[unit]["jobs"] or self.units[unit]["place"] != "fitted":
                other.units[unit] = _copied(self.units[unit])
        return other

    def job_line(self, identity: str) -> dict:
        """Return what the lists say of a job, in the form of `line_of`; all of them are in memory."""
        if isinstance(self.jobs, JobsInPart) and identity in self.jobs.lines:
            return self.jobs.lines[identity]
        return line_of(self.jobs[identity])

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

    def units_out(self, job: str) -> list[str]:
        """Return the ids of the units that are in hand on a job, in order of id."""
        return [
            unit
            for unit in sorted(self.units)
            if self.units[unit]["place"] == "out" and self.units[unit]["job"] == job
        ]

    def sharing_a_label(self) -> list[str]:
        """Return the ids of units that carry one label between them, in order of id."""
        found = []
        for conflict in self.conflicts:
            if conflict["open"] and conflict["about"] == "label":
                for unit in (conflict["unit"], self.codes.get(conflict["code"])):
                    if unit and unit not in found:
                        found.append(unit)
        return sorted(found)

    def disputed(self, job: str) -> list[str]:
        """Return the ids of disputed units that the job has to do with, in order of id."""
        return [
            unit
            for unit in sorted(self.units)
            if self.units[unit]["claims"] and job in self.units[unit]["jobs"]
        ]


def _copied(value):
    """Return a deep copy of plain JSON data."""
    if isinstance(value, dict):
        return {key: _copied(value[key]) for key in value}
    if isinstance(value, list):
        return [_copied(item) for item in value]
    return value


def new_unit(identity: str, part: str = "", serial: str = "") -> dict:
    """Return a unit that has no place yet; the caller puts it somewhere at once.

    `code` is its label, `also` are further ones that two phones put on it, `old_codes` the void ones.
    """
    return {
        "id": identity,
        "code": "",
        "also": [],
        "old_codes": [],
        "part": part,
        "serial": serial,
        "place": "out",
        "vehicle": None,
        "position": None,
        "job": None,
        "pulled_from": None,
        "claims": [],
        "jobs": [],
        "moves": [],
        "mixed": None,
        "lost": [],
        "returns": [],
    }


def new_vehicle(vehicle: dict) -> dict:
    """Return a vehicle; `holds` is position -> unit now, `home` position -> unit when first seen."""
    return {
        "id": vehicle["id"],
        "name": vehicle["name"],
        "vin": vehicle["vin"],
        "holds": {},
        "home": {},
        "jobs": [],
    }


def new_job(identity: str, data: dict, at: int) -> dict:
    """Return a job as it stands right after it was opened."""
    return {
        "id": identity,
        "vehicle": data["vehicle"]["id"],
        "complaint": data["complaint"],
        "layout": data["layout"],
        "part": data["part"],
        "positions": data["positions"],
        "opened_at": at,
        "cautions": {},
        "lamps": {},
        "looked": None,
        "photos": [],
        "tests": [],
        "meter": [],
        "pending": {"cleaned": [], "repaired": []},
        "repairs": [],
        "comes_and_goes": False,
        "rates": {},
        "reach": {},
        "code_weights": {},
        "money": {},
        "at_opening": [],
        "confidence_ppm": 950000,
        "move": None,
        "locked": {},
        "plugged_off": [],
        "fit_checks": {},
        "walk": None,
        "left": {},
        "stops": [],
        "closed": None,
        "reopened": None,
        "history": [],
    }


def position_of(job: dict, identity: str) -> dict | None:
    """Return a position of the job by its id, or None."""
    for position in job["positions"]:
        if position["id"] == identity:
            return position
    return None
