"""Many simulated yards cheaply: a job that goes as one did before contributes what that one did.

What a job contributes to the rates follows from its steps but for the names of its units, the labels and the
times, so the core works out each course of a job once. Nothing is hashed, signed or stored on the way.
"""

import json

from demo_db.dice import Dice
from demo_db.yard import Hands
from demo_db.yard import Truth
from demo_db.yard import Visit
from demo_db.yard import Worker
from server.core.codes import labels
from server.core.facts.fold import Fold
from server.core.infer.variations import CLASSES
from server.core.state.job import known_job
from server.lessons import contribution
from server.lessons.sums import causes_of
from server.lessons.sums import readings_of
from tests.made_up_yard import LAYOUTS
from tests.made_up_yard import START

_CODES = labels.codes_from(list(Dice("codes").bytes(16_000)), 500)
_BOARDS = ("rear-4", "both-8")
# Of these kinds and fields what a job says of the rates is made.
_TELLING = {"job_opened": ("layout",), "test_run": ("faulted",), "cleaned": ("position",),
            "unit_fitted": ("unit", "position"), "unit_pulled": ("unit", "position"),
            "circuit_repaired": ("cause",), "job_closed": ("why",)}  # fmt: skip
_known: dict[str, tuple] = {}


class Visitor(Worker):
    """A visitor as the model has them: now and then nothing is wrong, and a false alarm is why it came.

    Beside a cause, which shows with the chance s, none at all comes with the odds of a false alarm at one of
    its positions, n f / s.
    """

    def _drawn(self) -> tuple[str, str]:
        truth, places = self._truth, len(self._places)
        groups = len({each["group"] for each in self.visit.positions})
        numbers = [places, places, places, groups, 1]
        rates = [getattr(truth, name) for name in CLASSES]
        causes = sum(n * rate / (1 - rate) for n, rate in zip(numbers, rates, strict=True))
        alarms = places * truth.false_alarm / truth.shows
        self._comes_for_nothing = self._dice.between(0, causes + alarms) < alarms
        return ("", "") if self._comes_for_nothing else super()._drawn()

    def _first_fault(self) -> list[str]:
        if not self._comes_for_nothing:
            return super()._first_fault()
        faulted = [self._dice.pick(self._places)]
        self._spend("test", "test_run", heard=True, faulted=faulted, silent=[], unplugged=[], codes=[],
                    came_and_went=False, note="")  # fmt: skip
        return faulted


def jobs_of(seed: str, count: int, truth: Truth) -> list[tuple]:
    """Return what each job of a yard that counts says of causes and of readings (`server/lessons/sums`)."""
    dice = Dice("yard", seed)
    found = []
    for number in range(count):
        layout = _BOARDS[number % len(_BOARDS)]
        vehicle = {"id": "v000000000000", "name": "Grey van", "vin": ""}
        visit = Visit("j000000000000", vehicle, "It beeps", layout, LAYOUTS[layout], "PS-1")
        codes = iter(_CODES)
        steps = Visitor(visit, truth, Hands(), dice, lambda codes=codes: next(codes)).work()
        drafts = [draft for _, drafts in steps for draft in drafts]
        course = _course(drafts)
        if course not in _known:
            _known[course] = _said(drafts)
        if _known[course]:
            found.append(_known[course])
    return found


def _course(drafts: list[dict]) -> str:
    units: dict[str, int] = {}
    lines = []
    for draft in drafts:
        fields = _TELLING.get(draft["kind"], ())
        line = [draft["kind"]] if fields else []
        for field in fields:
            value = draft["data"].get(field)
            line.append(units.setdefault(value, len(units)) if field == "unit" else value)
        lines.append(line)
    return json.dumps([line for line in lines if line])


def _said(drafts: list[dict]) -> tuple:
    events = [
        {"device": "d00000000000000aa", "seq": n + 1, "prev": "", "v": 1, "at": START + n * 60_000,
         "actor": "Mara", "job": "j000000000000", **draft}
        for n, draft in enumerate(drafts)
    ]  # fmt: skip
    fold = Fold()
    fold.reset(events)
    job = contribution.of_job(known_job(fold.state, "j000000000000"))
    return () if job["why"] else (causes_of(job), readings_of(job))
