"""Which units are in hand, in stock, in dispute, have a serial number: found without going through all units.

A cache beside the state, never part of its canonical form. `State` keeps it true: whoever changes the
place, the claims, the jobs or the serial numbers of a unit, or puts a conflict on record, does so by a method
of `State`.
"""

from .serials import serials_by_eye

LABEL = "label"  # what a conflict is about when one code is on two units


class Index:
    """Units and conflicts by what is asked for; of a dict of ids only the keys matter."""

    def __init__(self):
        """Start with nothing on record."""
        self.out = {}  # job -> the units that are in hand on it
        self.stock = {}
        self.claimed_at = {}  # vehicle -> the units that a claim says are there
        self.of_job = {}  # job -> the units that it has to do with
        self.conflicts = {}  # unit -> its conflicts, in order
        self.labels = []  # the conflicts about one label on two units
        # Serial number, as the eye tells it -> the units that it was read off. Not before somebody asks:
        # only a counter does, and all other phones start sooner without.
        self.serials: dict = {}
        self.has_serials = False
        self._noted = {}  # unit -> the numbers under which it is noted
        self._shared = False

    def copy(self, conflicts: list) -> "Index":
        """Return a copy for a trial state whose conflicts are these."""
        other = Index()
        other.out = {job: self.out[job].copy() for job in self.out}
        other.stock = self.stock.copy()
        other.claimed_at = {vehicle: self.claimed_at[vehicle].copy() for vehicle in self.claimed_at}
        other.of_job = self.of_job.copy()
        if self.has_serials:
            other.serials, other._noted = self.serials.copy(), self._noted.copy()
            other.has_serials = True
        other._shared = True
        for conflict in conflicts:
            other.add_conflict(conflict)
        return other

    def add_unit(self, unit: dict) -> None:
        """Note all that is known of a unit."""
        self.add_place(unit)
        for claim in unit["claims"]:
            self.add_claim(unit, claim)
        for job in unit["jobs"]:
            self.add_job(unit, job)
        self.note_serials(unit)

    def remove_unit(self, unit: dict) -> None:
        """Forget a unit."""
        self.remove_place(unit)
        self.remove_claims(unit)
        for job in unit["jobs"]:
            if self._shared and job in self.of_job:
                self.of_job[job] = self.of_job[job].copy()
            _remove(self.of_job, job, unit["id"])
        self._forget_serials(unit["id"])

    def add_place(self, unit: dict) -> None:
        """Note that a unit is in hand or in stock, if it is."""
        if unit["place"] == "stock":
            self.stock[unit["id"]] = True
        elif unit["place"] == "out" and unit["job"]:
            _add(self.out, unit["job"], unit["id"])

    def remove_place(self, unit: dict) -> None:
        """Forget where a unit is."""
        if unit["place"] == "stock":
            self.stock.pop(unit["id"], None)
        elif unit["place"] == "out" and unit["job"]:
            _remove(self.out, unit["job"], unit["id"])

    def add_claim(self, unit: dict, claim: dict) -> None:
        """Note a place that someone says a unit is at."""
        if claim["vehicle"]:
            _add(self.claimed_at, claim["vehicle"], unit["id"])

    def remove_claims(self, unit: dict) -> None:
        """Forget the places that someone says a unit is at."""
        for claim in unit["claims"]:
            if claim["vehicle"]:
                _remove(self.claimed_at, claim["vehicle"], unit["id"])

    def add_job(self, unit: dict, job: str) -> None:
        """Note that a job has to do with a unit."""
        if self._shared and job in self.of_job:
            self.of_job[job] = self.of_job[job].copy()
        _add(self.of_job, job, unit["id"])

    def with_serial(self, serial: str, units) -> list[str]:
        """Return the ids of the units that a number was read off that looks so; `units` are all."""
        if not self.has_serials:
            self.has_serials = True
            for unit in units:
                if unit["serial"] or unit["returns"]:
                    self.note_serials(unit)
        return sorted(self.serials.get(serial, ()))

    def note_serials(self, unit: dict) -> None:
        """Note the numbers that were read off a unit, in place of those known so far."""
        if not self.has_serials:
            return
        if unit["id"] in self._noted:
            self._forget_serials(unit["id"])
        serials = serials_by_eye(unit)
        for serial in serials:
            if self._shared and serial in self.serials:
                self.serials[serial] = self.serials[serial].copy()
            _add(self.serials, serial, unit["id"])
        if serials:
            self._noted[unit["id"]] = serials

    def _forget_serials(self, unit: str) -> None:
        for serial in self._noted.pop(unit, ()):
            if self._shared:
                self.serials[serial] = self.serials[serial].copy()
            _remove(self.serials, serial, unit)

    def add_conflict(self, conflict: dict) -> None:
        """Note a conflict under the unit that it is about."""
        unit = conflict["unit"]
        if unit is None:
            return
        if unit in self.conflicts:
            self.conflicts[unit].append(conflict)
        else:
            self.conflicts[unit] = [conflict]
        if conflict["about"] == LABEL:
            self.labels.append(conflict)

    def renew_conflicts(self, conflicts: list) -> None:
        """Take these conflicts in place of those known so far."""
        self.conflicts, self.labels = {}, []
        for conflict in conflicts:
            self.add_conflict(conflict)

    def open_labels(self) -> list[dict]:
        """Return the open conflicts about one label on two units; one that is closed stays closed."""
        self.labels = [conflict for conflict in self.labels if conflict["open"]]
        return self.labels


def _add(groups: dict, name: str, unit: str) -> None:
    if name in groups:
        groups[name][unit] = True
    else:
        groups[name] = {unit: True}


def _remove(groups: dict, name: str, unit: str) -> None:
    """Take a unit out of a group, and the group away with its last one."""
    if name in groups:
        groups[name].pop(unit, None)
        if not groups[name]:
            del groups[name]
