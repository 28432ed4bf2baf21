"""Random logs of a few jobs at once: two phones and a counter contradict each other, mix up, take back.

A fold of its own says what a next entry may plausibly name; some entries are made without asking it.
"""

import random

from server.core.facts.fold import Fold
from tests.core.driver import START

PHONES = ("d00000000000000a1", "d00000000000000a2", "d00000000000000c1")
JOBS = ("j1", "j2", "j3", "j4")
VEHICLES = {"j1": "v1", "j2": "v2", "j3": "v1", "j4": "v3"}
POSITIONS = ("left", "middle", "right")
CODES = ("A1", "B2", "C3", "D4")
SERIALS = ("", "S-1", "s 1", "S2", "--")
ADDED = ("u1", "u2", "u3", "u4")
PLACES = ("out", "stock", "counter", "customer", "scrapped")
HOW = ("scanned", "typed", "tapped")


def random_log(seed: int, length: int) -> list[dict]:
    """Return that many envelopes in their agreed order; what each `prev` says is made up."""
    return _Maker(seed).log(length)


class _Maker:
    """The dice, the log so far and what it comes to."""

    def __init__(self, seed: int):
        self.dice = random.Random(seed)
        self.fold = Fold()
        self.seqs = dict.fromkeys(PHONES, 0)
        # A log of which parts have nothing to do with each other, or one in which everything meets.
        self.jobs = JOBS[: self.dice.randint(1, len(JOBS))]
        self.apart = self.dice.random() < 0.6

    def log(self, length):
        for job in self.jobs:
            if self.dice.random() < 0.9:
                self.record(job, *self.opening(job))
        while len(self.fold.events) < length:
            job = self.dice.choice(self.jobs)
            make = self.dice.choice(_MAKERS)
            kind, data = make(self, job)
            if kind in _ANYWHERE and self.dice.random() < 0.4:
                job = None
            self.record(job, kind, data)
        return self.fold.events

    def record(self, job, kind, data):
        device = self.dice.choice(PHONES)
        self.seqs[device] += 1
        event = {
            "device": device,
            "seq": self.seqs[device],
            "prev": "0" * 64 if self.seqs[device] > 1 else "",
            "v": 2 if self.dice.random() < 0.02 else 1,
            "at": START + len(self.fold.events) * 1000,
            "actor": self.dice.choice(("Mara", "Jo")),
            "job": job,
            "kind": kind,
            "data": data,
        }
        if self.dice.random() < 0.02:
            event["kind"] = "not_known_yet"
        elif self.dice.random() < 0.02 and data:
            data.pop(sorted(data)[0])
        self.fold.add([event])

    # --- what may be named

    def unit(self, job, *places):
        """Return a unit, as a rule one at one of these places."""
        units = self.fold.state.units
        known = [unit for unit in sorted(units) if not places or units[unit]["place"] in places]
        if self.apart:
            known = [unit for unit in known if units[unit]["jobs"][:1] == [job]]
        if known and self.dice.random() < 0.85:
            return self.dice.choice(known)
        if self.apart:
            return self.dice.choice((f"{VEHICLES[job]}.left", f"unknown-{job}"))
        return self.dice.choice((*ADDED, "v1.left", "v2.right", "unknown", *self.bodies()))

    def bodies(self):
        """Return what bodies were called, also those that have been told apart."""
        return sorted(self.fold.state.aliases)

    def position(self):
        return self.dice.choice(POSITIONS) if self.dice.random() < 0.97 else "nowhere"

    def code(self, job):
        return self.dice.choice(CODES) + (job if self.apart else "")

    def serial(self):
        return SERIALS[len(self.fold.events) % len(SERIALS)]

    # --- facts

    def opening(self, job):
        vehicle = {"id": VEHICLES[job], "name": f"Car {job}", "vin": self.dice.choice(("", "X"))}
        if job in ("j2", "j3"):  # of one vehicle that has two jobs, the later one names its plate
            vehicle["plate"] = f"PL {job}"
        positions = [
            {"id": each, "name": each, "group": "rear", "x": 1, "y": 1, "edge": "rear", "reach_minutes": 1}
            for each in POSITIONS
        ]
        return "job_opened", {
            "vehicle": vehicle,
            "complaint": "",
            "layout": "",
            "part": "P",
            "positions": positions,
        }

    def pulled(self, job):
        unit = self.unit(job, "fitted")
        position = self.fold.state.units.get(unit, {}).get("position") or self.position()
        return "unit_pulled", {"unit": unit, "position": position, "how": "scanned"}

    def fitted(self, job):
        return "unit_fitted", {
            "unit": self.unit(job, "out"),
            "position": self.position(),
            "how": "scanned",
            "override": "",
        }

    def moved(self, job):
        return "unit_moved", {
            "unit": self.unit(job, "out", "stock"),
            "place": self.dice.choice(PLACES),
            "how": "scanned",
            "note": "",
        }

    def seen(self, job):
        place = self.dice.choice(("fitted", "out", "out", "stock"))
        unit = self.unit(job, "mixed") if self.dice.random() < 0.5 else self.unit(job)
        return "unit_seen", {
            "unit": unit,
            "place": place,
            "position": self.position() if place == "fitted" else "",
            "how": "scanned",
        }

    def labelled(self, job):
        return "unit_labelled", {"unit": self.unit(job), "code": self.code(job), "how": "scanned"}

    def voided(self, job):
        return "label_voided", {"unit": self.unit(job), "code": self.code(job), "reason": "torn"}

    def added(self, job):
        return "unit_added", {
            "unit": self.dice.choice(ADDED) + (job if self.apart else ""),
            "part": "P",
            "serial": self.serial(),
            "how": "scanned",
            "code": self.dice.choice(("", self.code(job))),
            "place": self.dice.choice(("out", "stock")),
        }

    def mixed(self, job):
        units = {self.unit(job, "out", "stock") for _ in range(self.dice.randint(2, 4))}
        return "units_mixed", {"units": sorted(units), "note": ""}

    def started(self, job):
        fitted = {self.position(): self.unit(job) for _ in range(self.dice.randint(0, 2))}
        return "move_started", {"move": "exchange", "fitted": fitted, "position": "", "reason": ""}

    def tested(self, job):
        return "test_run", {
            "heard": True,
            "faulted": [self.position()],
            "silent": [],
            "unplugged": [],
            "codes": [],
            "came_and_went": False,
            "note": "",
        }

    def pictured(self, job):
        return "photo_taken", {
            "sha256": "ab" * 32,
            "mime": "image/jpeg",
            "bytes": 1,
            "width": 1,
            "height": 1,
            "shows": "unit",
            "position": self.position(),
            "unit": self.unit(job),
        }

    def received(self, job):
        return "return_received", {
            "unit": self.unit(job),
            "how": "scanned",
            "code": "",
            "part": "",
            "serial": self.serial(),
            "compared": "",
            "note": "",
        }

    def decided(self, job):
        decision = self.dice.choice(("accept", "hold", "refuse"))
        return "return_decided", {
            "unit": self.unit(job, "counter"),
            "decision": decision,
            "proposed": decision,
            "reasons": [],
            "overrule": "",
            "signed": "Jo",
        }

    def printed(self, job):
        return "labels_printed", {
            "batch": self.dice.choice(("b1", "b2", "b3")),
            "codes": [self.code(job)],
            "host": "h",
            "layout": {},
        }

    def spoiled(self, job):
        batches = [batch for batch in self.fold.state.printed if batch["codes"]]
        batch = self.dice.choice(batches) if batches else {"id": "b1", "codes": [self.code(job)]}
        return "labels_spoiled", {
            "batch": batch["id"],
            "codes": [self.dice.choice(batch["codes"])],
            "reason": "torn",
        }

    def closed(self, job):
        return "job_closed", {"note": ""}

    def corrected(self, job):
        """Take back any entry, also one that is still to come, or one that was taken back."""
        events = self.fold.events
        if events and self.dice.random() < 0.9:
            event = self.dice.choice(events[-12:] if self.dice.random() < 0.6 else events)
            return "corrected", self.correction(event["device"], event["seq"])
        device = self.dice.choice(PHONES)
        return "corrected", self.correction(device, self.seqs[device] + 2)

    def correction(self, device, seq):
        """Name an entry, and of its corrections all or none; an older app names none."""
        known = [
            f"{event['device']}:{event['seq']}"
            for event in self.fold.events
            if event["kind"] in ("corrected", "put_right")
            and (event["data"].get("device"), event["data"].get("seq")) == (device, seq)
        ]
        over = ({}, {"over": []}, {"over": known})[len(self.fold.events) % 3]
        return {"device": device, "seq": seq, "reason": "slip", **over}

    def righted(self, job):
        """Say what any entry should have said, also one that was put right or taken back, or is to come."""
        events = [event for event in self.fold.events if event["kind"] in _BY_KIND]
        if self.apart:  # what puts an entry right hangs together with it
            events = [event for event in events if event["job"] == job]
        if not events or (not self.apart and self.dice.random() < 0.1):
            device = self.dice.choice(PHONES)
            target = {"device": device, "seq": self.seqs[device] + 2}
            kind, data = self.dice.choice(_MAKERS)(self, job)
        else:
            target = self.dice.choice(events[-12:] if self.dice.random() < 0.6 else events)
            kind, data = _BY_KIND[target["kind"]](self, target["job"] or job)
        entry = {"kind": kind, "data": data}
        return "put_right", {**self.correction(target["device"], target["seq"]), "entry": entry}


_ANYWHERE = (
    "unit_added",
    "unit_labelled",
    "label_voided",
    "unit_moved",
    "unit_seen",
    "return_received",
    "return_decided",
    "labels_printed",
    "labels_spoiled",
    "corrected",
    "put_right",
)
_MAKERS = (
    [_Maker.pulled, _Maker.fitted, _Maker.moved, _Maker.seen, _Maker.labelled, _Maker.added] * 3
    + [_Maker.mixed, _Maker.corrected, _Maker.tested, _Maker.started] * 2
    + [
        _Maker.voided,
        _Maker.pictured,
        _Maker.received,
        _Maker.decided,
        _Maker.printed,
        _Maker.spoiled,
        _Maker.closed,
    ]
    + [_Maker.opening, _Maker.righted]
)
_BY_KIND = {
    "unit_pulled": _Maker.pulled,
    "unit_fitted": _Maker.fitted,
    "unit_moved": _Maker.moved,
    "unit_seen": _Maker.seen,
    "unit_labelled": _Maker.labelled,
    "unit_added": _Maker.added,
    "units_mixed": _Maker.mixed,
    "test_run": _Maker.tested,
    "move_started": _Maker.started,
    "label_voided": _Maker.voided,
    "photo_taken": _Maker.pictured,
    "return_received": _Maker.received,
    "return_decided": _Maker.decided,
    "labels_printed": _Maker.printed,
    "labels_spoiled": _Maker.spoiled,
    "job_opened": _Maker.opening,
}
