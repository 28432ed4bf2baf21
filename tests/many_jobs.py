"""A log of a yard that has worked for years: job after job, nearly all of them closed, each on a vehicle.

Few entries a job, so that a log of thousands is made and folded at once; the facts are those that a list and
a search look at: vehicle, plate, number, complaint, labels, a serial number, who worked, pauses and closings.
"""

import random

from server.core.codes import labels
from tests.server.phone import entry_of

DAY_MS = 86_400_000
POSITIONS = ("rear-left-outer", "rear-left-inner", "rear-right-inner", "rear-right-outer")
COLOURS = ("Blue", "Grey", "Red", "White", "Green", "Black", "Silver")
BODIES = ("estate", "van", "hatchback", "saloon", "pick-up", "coupe")
COMPLAINTS = ("It beeps all the time", "It says nothing", "The lamp is on", "It warns with nothing behind it")
PEOPLE = ("Mara", "Zoë", "Ben")
OPEN, WAITING = 12, 3  # the latest ones
_LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ"


class Yard:
    """The log of one device: `entries` as a server gets them, `jobs` what each is about, the oldest first."""

    def __init__(self, device: str, count: int, now: int, plates: bool = True):
        """Begin and end `count` jobs, one a day up to `now`."""
        self.device = device
        self.entries: list[dict] = []
        self.jobs: list[dict] = []
        self._dice = random.Random(1)
        self._codes = _codes(self._dice, 2 * count)
        self._plates = plates
        for number in range(count):
            left = count - number
            self._job(number, now - left * DAY_MS, closed=left > OPEN + WAITING, paused=left <= WAITING)

    def _job(self, number: int, at: int, closed: bool, paused: bool) -> None:
        job, vehicle = f"j{number:012x}", f"v{number:012x}"
        plate = f"{self._letters(2)}-{self._letters(2)} {100 + number}" if self._plates else ""
        told = {
            "id": vehicle,
            "name": f"{self._dice.choice(COLOURS)} {self._dice.choice(BODIES)} {number}",
            "vin": f"1M8GDM9A{number % 10}KP{number:06}",
            **({"plate": plate} if plate else {}),
        }
        complaint = self._dice.choice(COMPLAINTS)
        codes = self._codes[2 * number : 2 * number + 2]
        serial = f"SN-4{number:04}7"
        actor = self._dice.choice(PEOPLE)
        self.jobs.append(
            {
                "id": job,
                "vehicle": told,
                "complaint": complaint,
                "codes": codes,
                "serial": serial,
                "actor": actor,
                "closed": closed,
                "paused": paused,
            }
        )
        positions = [
            {"id": place, "name": place, "group": "rear", "edge": "rear", "reach_minutes": 3}
            for place in POSITIONS
        ]
        outer, inner = f"{vehicle}.{POSITIONS[3]}", f"{vehicle}.{POSITIONS[2]}"
        facts = [
            ("job_opened", {"vehicle": told, "complaint": complaint, "layout": "rear-4", "part": "PS-1",
                            "positions": positions}),
            ("test_run", _test([POSITIONS[3]])),
            ("unit_labelled", {"unit": outer, "code": codes[0], "how": "scanned"}),
            ("part_noted", {"unit": outer, "part": "PS-1", "serial": serial}),
            ("unit_labelled", {"unit": inner, "code": codes[1], "how": "scanned"}),
        ]  # fmt: skip
        if closed:
            facts += [("test_run", _test([])), ("job_closed", {"note": ""})]
        elif paused:
            facts.append(("job_paused", {"why": "part", "part": "PS-1", "note": ""}))
        for place, (kind, data) in enumerate(facts):
            self._record(job, kind, data, at + place * 60_000, actor)

    def _letters(self, count: int) -> str:
        return "".join(self._dice.choice(_LETTERS) for _ in range(count))

    def _record(self, job, kind, data, at, actor) -> None:
        event = {
            "device": self.device,
            "seq": len(self.entries) + 1,
            "prev": self.entries[-1]["hash"] if self.entries else "",
            "v": 1,
            "at": at,
            "actor": actor,
            "job": job,
            "kind": kind,
            "data": data,
        }
        self.entries.append(entry_of(event))


def _codes(dice: random.Random, count: int) -> list[str]:
    found: dict[str, bool] = {}
    while len(found) < count:
        found.update(dict.fromkeys(labels.codes_from(list(dice.randbytes(16_000)), 500), True))
    return list(found)[:count]


def _test(faulted: list) -> dict:
    return {"heard": True, "faulted": faulted, "silent": [], "unplugged": [], "codes": [],
            "came_and_went": False, "note": ""}  # fmt: skip
