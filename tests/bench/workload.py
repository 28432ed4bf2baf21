"""Entries as a workshop makes them: job after job, a few open at once, spares that go round.

Fast and plain: the facts are the ones of a guided exchange, without asking the core for each.
"""

import random

from tests.server.phone import entry_after

POSITIONS = ("rear-left-outer", "rear-left-inner", "rear-right-inner", "rear-right-outer")
OPEN_AT_ONCE = 3
SPARES = 5
USES_OF_A_SPARE = 8  # on other vehicles, until it is fitted for good


class Workload:
    """An endless log of one device; `entries` hands out the next ones."""

    open_jobs = OPEN_AT_ONCE

    def __init__(self, device: str):
        """Begins an empty log."""
        self.device = device
        self.jobs: list[str] = []
        self.units: list[str] = []
        self._dice = random.Random(1)
        self._last: list[dict] = []
        self._seq = 0
        self._seq_of: dict[str | None, int] = {}
        self._spares: list[list] = []
        self._made = 0
        self._facts = self._work()

    def entries(self, count: int) -> list[dict]:
        """Returns the next entries of the log."""
        found = []
        for _ in range(count):
            job, kind, data = next(self._facts)
            entry = entry_after(self._last, self.device, kind, data, job, seq=self._seq + 1)
            self._seq += 1
            self._last = [entry]
            self._seq_of[job] = self._seq
            found.append(entry)
        return found

    def _work(self):
        for _ in range(SPARES):
            yield self._new_spare()
        open_jobs = [self._job() for _ in range(OPEN_AT_ONCE)]
        while True:
            which = self._dice.randrange(OPEN_AT_ONCE)
            fact = next(open_jobs[which], None)
            if fact is None:
                open_jobs[which] = self._job()
            else:
                yield fact

    def _new_spare(self):
        self._made += 1
        unit = f"u{self._made:012x}"
        self._spares.append([unit, 0])
        self.units.append(unit)
        data = {"unit": unit, "part": "PS-1", "serial": "", "code": "", "how": "scanned", "place": "stock"}
        return (None, "unit_added", data)

    def _job(self):
        number = len(self.jobs) + 1
        job, vehicle = f"j{number:012x}", f"v{number:012x}"
        self.jobs.append(job)
        units = {place: f"{vehicle}.{place}" for place in POSITIONS}
        positions = [
            {"id": place, "name": place, "group": "rear", "edge": "rear", "reach_minutes": 3}
            for place in POSITIONS
        ]
        yield (
            job,
            "job_opened",
            {"vehicle": {"id": vehicle, "name": f"Estate {number}", "vin": ""}, "complaint": "It beeps",
             "layout": "rear-4", "part": "PS-1", "positions": positions},
        )  # fmt: skip
        self.units.append(units[POSITIONS[0]])
        for caution in ("level", "brake", "chocks", "key_off", "airbag", "hot"):
            yield job, "caution_acknowledged", {"caution": caution}
        for when in ("key_on", "reverse"):
            yield job, "lamp_checked", {"when": when, "result": "as_it_should", "note": ""}
        yield job, "looked", {"positions": [], "note": ""}
        faulted = self._dice.choice(POSITIONS)
        yield job, "test_run", self._test([faulted])
        for place in POSITIONS:
            yield job, "photo_taken", self._photo(place)
        partner = self._dice.choice([place for place in POSITIONS if place != faulted])
        yield from self._exchange(job, {faulted: units[partner], partner: units[faulted]}, units)
        yield job, "test_run", self._test([partner])
        if self._dice.random() < 0.2:
            yield job, "corrected", {"device": self.device, "seq": self._seq_of[job], "reason": "a slip"}
            yield job, "test_run", self._test([partner])
        spare = self._spares.pop(self._dice.randrange(len(self._spares)))
        spare[1] += 1
        yield from self._replace(job, partner, spare[0], units[faulted])
        for _ in range(3):
            yield job, "test_run", self._test([])
        yield job, "walk_checked", {"positions": list(POSITIONS), "missed": []}
        if spare[1] > USES_OF_A_SPARE:
            yield self._new_spare()
        else:
            yield job, "unit_pulled", {"unit": spare[0], "position": partner, "how": "scanned"}
            yield job, "unit_moved", {"unit": spare[0], "place": "stock", "how": "scanned", "note": ""}
            self._spares.append(spare)
        moved = {"unit": units[faulted], "place": "counter", "how": "scanned", "note": ""}
        yield job, "unit_moved", moved
        yield job, "job_closed", {"note": ""}

    def _exchange(self, job, fitted, units):
        started = {"move": "exchange", "fitted": fitted, "position": "", "reason": "to see what follows"}
        yield job, "move_started", started
        at = {unit: place for place, unit in units.items()}
        for unit in fitted.values():
            yield job, "unit_pulled", {"unit": unit, "position": at[unit], "how": "scanned"}
        for place, unit in fitted.items():
            yield job, "unit_fitted", {"unit": unit, "position": place, "how": "scanned", "override": ""}
            yield job, "connector_locked", {"position": place}

    def _replace(self, job, place, spare, bad):
        started = {"move": "replace", "fitted": {place: spare}, "position": place, "reason": ""}
        yield job, "move_started", started
        yield job, "unit_pulled", {"unit": bad, "position": place, "how": "scanned"}
        yield job, "unit_moved", {"unit": spare, "place": "out", "how": "scanned", "note": ""}
        yield job, "unit_fitted", {"unit": spare, "position": place, "how": "scanned", "override": ""}
        yield job, "connector_locked", {"position": place}
        yield job, "fit_checked", {"unit": spare, "position": place, "checks": ["bore", "flush"]}

    def _test(self, faulted):
        return {"heard": True, "faulted": faulted, "silent": [], "unplugged": [], "codes": [],
                "came_and_went": False, "note": ""}  # fmt: skip

    def _photo(self, place):
        digest = f"{self._dice.getrandbits(256):064x}"
        size = {"mime": "image/jpeg", "bytes": 200_000, "width": 2048, "height": 1536}
        return {"sha256": digest, "shows": "position", "position": place, "unit": "", **size}
