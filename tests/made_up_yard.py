"""The log of a made-up yard: closed jobs with a known truth, as a server gets their entries."""

from demo_db.dice import Dice
from demo_db.yard import Hands
from demo_db.yard import Truth
from demo_db.yard import Visit
from demo_db.yard import Worker
from server.core.codes import labels
from server.core.parts import sorts
from server.log import events
from tests.server.phone import entry_of

DAY_MS = 86_400_000
START = 1_770_000_000_000
LAYOUTS = {each["id"]: each["positions"] for each in sorts.all_layouts()}


class Yard:
    """Closed jobs of one phone, one a day: `entries` as they are sent, `causes` the truth by job."""

    def __init__(
        self, seed: str, count: int, truth: Truth | None = None, layouts=("rear-4", "both-8"), **more
    ):
        """Do `count` jobs; `more` may have `hands`, `start` in ms, `device`."""
        self.device = more.get("device", "d00000000000000aa")
        self.entries: list[dict] = []
        self.causes: dict[str, tuple[str, str]] = {}
        dice = Dice("yard", seed)
        self._dice = dice
        self._codes: list[str] = []
        self._taken: set[str] = set()
        for number in range(count):
            at = more.get("start", START) + number * DAY_MS
            visit = _visit(seed, number, layouts[number % len(layouts)])
            worker = Worker(visit, truth or Truth(), more.get("hands") or Hands(), dice, self._label)
            self.causes[visit.job] = worker.cause
            for after, drafts in worker.work():
                at += after
                for draft in drafts:
                    self.record(visit.job, draft["kind"], draft["data"], at)

    def record(self, job, kind, data, at) -> dict:
        """Append an entry to the phone's chain and return it."""
        event = {
            "device": self.device,
            "seq": len(self.entries) + 1,
            "prev": self.entries[-1]["hash"] if self.entries else "",
            "v": 1,
            "at": at,
            "actor": "Mara",
            "job": job,
            "kind": kind,
            "data": data,
        }
        self.entries.append(entry_of(event))
        return self.entries[-1]

    def _label(self) -> str:
        while not self._codes:
            drawn = labels.codes_from(list(self._dice.bytes(16_000)), 500)
            self._codes = [code for code in drawn if code not in self._taken]
            self._taken.update(self._codes)
        return self._codes.pop()


def receive(db, entries: list[dict]) -> None:
    """Put entries into a server's log."""
    assert events.receive(db, entries, None, 1).refused == []


def _visit(seed: str, number: int, layout: str) -> Visit:
    identity = f"{sum(seed.encode()) % 0xFFFF:04x}{number:08x}"
    vehicle = {"id": f"v{identity}", "name": f"Grey van {number}", "vin": ""}
    return Visit(f"j{identity}", vehicle, "It beeps", layout, LAYOUTS[layout], "PS-1")
