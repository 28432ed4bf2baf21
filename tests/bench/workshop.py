"""A workshop's log of any length: two phones and a counter, job after job, as the app itself records them.

Two jobs are gone through once with the core, step by step, about fifty entries each: a fault that follows
its sensor, with a slip taken back and a mix-up stopped, and a fault that stays, with its wiring measured and
repaired. The log tells them again and again, with vehicles, sensors, labels and jobs of their own, two at a
time. Each job takes a spare from stock for good or puts it back; what is bad goes to the counter and is
decided on there.
"""

import functools
import hashlib
import json
import random

from tests.core.driver import DEVICE
from tests.core.driver import JOB
from tests.core.driver import START
from tests.core.driver import Driver
from tests.core.driver import home
from tests.hosts import Core
from tests.server.phone import entry_of

PHONES = ("d00000000000000a1", "d00000000000000a2")
CLERK = "d00000000000000c1"
SPARE = "u0000000spare"
BAD, NEXT = "rear-right-outer", "rear-right-inner"
_CODES_AT_ONCE = 200
_CODE_BYTES = 16_000


def log(count: int) -> list[dict]:
    """Return the first `count` entries, {"event", "hash"} each, in the order in which a server got them."""
    workshop = _Workshop()
    while len(workshop.entries) < count:
        workshop.two_jobs()
    return workshop.entries[:count]


class _Workshop:
    """What was recorded so far, and where each phone's chain ends."""

    def __init__(self):
        """Begin with an empty log."""
        self.entries: list[dict] = []
        self._ends = dict.fromkeys((*PHONES, CLERK), (0, ""))
        self._jobs = 0
        self._core = Core()
        self._dice = random.Random(1)
        self._unused: list[str] = []
        self._used: set[str] = set()

    def two_jobs(self) -> None:
        """Let both phones do a job at once; then the counter decides on what was found bad."""
        under_way = [self._told(phone, self._jobs + at) for at, phone in enumerate(PHONES)]
        self._jobs += len(under_way)
        done = object()
        while under_way:
            for job in list(under_way):
                for _ in range(3):
                    if next(job, done) is done:
                        under_way.remove(job)
                        break

    def _told(self, device, number):
        """Record the job of this number, an entry each time it is asked."""
        facts, codes = _template(number % 2)
        text = json.dumps(facts)
        for code in codes:
            text = text.replace(f'"{code}"', f'"{self._fresh_code()}"')
        text = text.replace(JOB, f"j{number:012x}").replace(SPARE, f"u{number:012x}")
        text = text.replace('"v1"', f'"v{number:012x}"').replace('"v1.', f'"v{number:012x}.')
        text = text.replace("ab" * 32, hashlib.sha256(text.encode()).hexdigest())
        first, _ = self._ends[device]
        for by_clerk, job, kind, data in json.loads(text):
            if kind == "corrected":
                data = {"device": device, "seq": first + data["seq"], "reason": data["reason"]}
            self._record(CLERK if by_clerk else device, job, kind, data)
            yield

    def _record(self, device, job, kind, data):
        seq, prev = self._ends[device]
        event = {
            "device": device,
            "seq": seq + 1,
            "prev": prev,
            "v": 1,
            "at": START + len(self.entries) * 60_000,
            "actor": "Jo" if device == CLERK else "Mara",
            "job": job,
            "kind": kind,
            "data": data,
        }
        entry = entry_of(event)
        self._ends[device] = (seq + 1, entry["hash"])
        self.entries.append(entry)

    def _fresh_code(self):
        while not self._unused:
            drawn = list(self._dice.randbytes(_CODE_BYTES))
            codes = self._core("codes", random=drawn, count=_CODES_AT_ONCE)
            self._unused = [code for code in codes if code not in self._used]
            self._used.update(codes)
        return self._unused.pop()


@functools.cache
def _template(which: int) -> tuple[list, list[str]]:
    """Return a job's facts, (by the clerk, job, kind, data) each, and the label codes in them."""
    driver = Driver(Core())
    facts = [_follows, _stays][which](driver)
    return facts, sorted({code for code in driver.codes if f'"{code}"' in json.dumps(facts)})


def _follows(job: Driver) -> list:
    """Exchange two of eight sensors, fit a spare from stock for the one that is bad, hand that one in."""
    _spare(job)
    _found(job, BAD)
    job.fact("part_noted", unit=home(BAD), part="PS-1", serial="S-1")
    _exchange(job)
    job.test("rear-left-outer")
    job.fact("corrected", device=DEVICE, seq=job.seq, reason="Tapped the wrong side.")
    job.test(NEXT)
    job.test(NEXT)
    _fit(job, "replace", NEXT, SPARE)
    _prove(job)
    facts = _facts(job)
    clerk = {"how": "scanned", "code": job.labels[home(BAD)], "part": "PS-1", "serial": "S-1"}
    told = {**clerk, "unit": home(BAD), "compared": "same", "note": ""}
    facts.append((True, None, "return_received", told))
    decided = {"unit": home(BAD), "decision": "accept", "proposed": "accept", "reasons": [], "overrule": ""}
    facts.append((True, None, "return_decided", {**decided, "signed": "Jo"}))
    return facts


def _stays(job: Driver) -> list:
    """Exchange two of eight sensors, find the fault stays, measure and repair its wiring."""
    _spare(job)
    _found(job, BAD)
    _exchange(job)
    job.test(BAD)
    _fit(job, "exchange", BAD, SPARE)
    job.test(BAD)
    for check in ("connector", "supply", "ground"):
        job.fact("circuit_measured", position=BAD, check=check, value="", reads="good")
    job.fact("circuit_measured", position=BAD, check="signal", value="OL", reads="bad")
    job.fact("circuit_repaired", cause=f"circuit:{BAD}", what="A crushed wire")
    _fit(job, "exchange", BAD, home(NEXT))
    job.fact("unit_moved", unit=SPARE, place="stock", how="scanned", note="")
    _prove(job)
    return _facts(job)


def _spare(job: Driver) -> None:
    code = job.labels[SPARE] = job.codes[0]
    data = {"unit": SPARE, "part": "PS-1", "serial": "", "code": code, "how": "scanned", "place": "stock"}
    job.core("add", events=[{"event": job.envelope("unit_added", data, job=None)}])


def _found(job: Driver, faulted: str) -> None:
    """Go as far as the pictures before the first exchange."""
    job.begin(layout="both-8")
    job.test(faulted)
    job.photograph()
    screen = {"sha256": "ab" * 32, "mime": "image/jpeg", "bytes": 90_000, "width": 1024, "height": 768}
    job.fact("photo_taken", **screen, shows="screen", position="", unit="")


def _exchange(job: Driver) -> None:
    """Exchange the suspect with its neighbour; the wrong one is held up once."""
    fitted = {BAD: home(NEXT), NEXT: home(BAD)}
    job.fact("move_started", move="exchange", fitted=fitted, position="", reason="To see what follows")
    while not job.step()["id"].startswith("fit"):
        job.scan_wanted()
    wrong = next(unit for unit in fitted.values() if unit != job.step()["expects"]["unit"])
    job.scan(job.labels[wrong])
    job.guided()


def _fit(job: Driver, move: str, position: str, unit: str) -> None:
    job.fact("move_started", move=move, fitted={position: unit}, position=position, reason="")
    job.guided()


def _prove(job: Driver) -> None:
    """Test until nothing is left to test, and two times more than that; then close."""
    while job.step()["form"] == "test":
        job.test()
    for _ in range(2):
        job.test()
    job.finish()


def _facts(job: Driver) -> list:
    return [(False, event["job"], event["kind"], event["data"]) for event in job.events]
