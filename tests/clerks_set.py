"""The clerk's set: 120 returns at one counter, 30 of them wrong in 15 ways, with the log from before them.

Each job has a phone of its own: a log that was altered on one says nothing of the others. Ninety returns are
as they should be, eighty by their serial number and ten, without one, by the picture of sensor and label.
"""

import json
from collections import namedtuple
from functools import cache
from random import Random

from server.core.codes import labels
from server.core.log import envelope
from tests.core.counter_yard import BAD
from tests.core.counter_yard import DAY_MS
from tests.core.counter_yard import INNER
from tests.core.counter_yard import proven
from tests.core.driver import home
from tests.hosts import Core

HOST, ELSEWHERE = "yard.example:8765", "HTTPS://NORTH.EXAMPLE/U/"
PART, SERIAL = "PS-1", "SN-1"
PICTURE = "cd" * 32
RETURNS, WRONG = 120, 30
DECISIONS = {"accept": "wrong accepts", "refuse": "wrong refusals"}

#: What comes over the counter: how it is wrong ("" where it is not), the code or the text of its label, what
#: is read off the part and said of its picture, what is to be proposed, and the job that it comes from.
Shown = namedtuple("Shown", ["wrong", "label", "serial", "compared", "proposed", "number"])

#: Each way to be wrong, with what is right to propose: to refuse only what the record itself speaks against.
WAYS = {
    "label moved": "refuse",
    "serial cloned": "refuse",
    "next bag": "hold",
    "lingering label": None,
    "late": "refuse",
    "returned before": "refuse",
    "open job": "hold",
    "good sensor": "refuse",
    "unscanned handover": "hold",
    "handover taken back": "hold",
    "foreign label": "hold",
    "foreign record": "hold",
    "altered record": "refuse",
    "unused label": "hold",
    "two counters offline": "accept",
}
_NO_JOB = ("lingering label", "returned before", "foreign label", "foreign record", "unused label")
_HOW = {"open": {"close": False}, "unscanned": {"scanned": False}, "pictured": {"serial": ""}}
_MODELS = {"open job": "open", "unscanned handover": "unscanned", "handover taken back": "unscanned"}


@cache
def _model(name):
    """Return a job gone through for real, up to the counter: its events and the labels that it used."""
    job = proven(Core(), **{"serial": SERIAL, **_HOW.get(name, {})})
    if name == "pictured":
        picture = {"mime": "image/jpeg", "bytes": 9, "width": 9, "height": 9, "sha256": PICTURE}
        job.force("photo_taken", **picture, shows="unit", position="", unit=BAD)
    return job


class ClerksSet:
    """The entries from before, in order, and the returns as they come."""

    def __init__(self, now):
        """Put it together so that the units came off their vehicles the day before `now`, in ms."""
        self.entries: list[dict] = []
        self._now = now
        self._codes = iter(labels.codes_from(list(Random(15).randbytes(120_000)), 3 * RETURNS + 10))
        self._job(RETURNS)  # its sensor does not come back, but its serial number does
        good = [self._right(number) for number in range(RETURNS - WRONG)]
        wrong = [
            self._wrong(way, RETURNS - WRONG + 2 * place + nth, good)
            for place, way in enumerate(WAYS)
            for nth in range(2)
        ]
        self.shown = self._mixed(good, wrong)

    def _right(self, number):
        if number % 9 == 4:
            return Shown("", self._job(number, "pictured")[BAD], "", "same", "accept", number)
        return Shown("", self._job(number)[BAD], serial_of(number), "", "accept", number)

    def _wrong(self, way, number, good):
        """Return one that is wrong in this way, the first of the two where `number` is even."""
        proposed, serial, first = WAYS[way], serial_of(number), number % 2 == 0
        if way in _NO_JOB:
            label = next(self._codes)
            if way.startswith("foreign"):
                label = ELSEWHERE + label
            if proposed != "hold":
                # Of those that are right one that the camera sees, and one that a hand scanner reads.
                label, serial = good[number % 5 + 6].label, good[number % 5 + 6].serial
            return Shown(way, label, serial, "", proposed, number)
        if way == "label moved" and not first:
            # The part that it sits on now has no serial number to be read: the picture tells.
            return Shown(way, self._job(number, "pictured")[BAD], "", "other", proposed, number)
        if way == "serial cloned":
            codes = self._job(number, serial=serial_of(number - number % 2))
            return Shown(way, codes[BAD], serial_of(number - number % 2), "", proposed, number)
        codes = self._job(number, _MODELS.get(way, "whole"), days=40 if way == "late" else 0)
        if way == "label moved":
            serial = serial_of(RETURNS)
        if way == "good sensor":
            return Shown(way, codes[home(INNER)], "", "same", proposed, number)
        return Shown(way, codes[BAD], "" if way == "next bag" else serial, "", proposed, number)

    def _job(self, number, model="whole", serial="", days=0):
        """Put the events of a job on record, and return the label of each of its sensors."""
        job = _model(model)
        used = sorted(set(job.labels.values()))
        renamed = {code: next(self._codes) for code in used}
        names = {"v1": f"v{number:012x}", job.job: f"j{number:012x}", "u00000000new1": f"u{number:012x}"}
        names.update(renamed)
        names.update({"Blue estate": f"Estate {number + 1}", SERIAL: serial or serial_of(number)})
        prev, start = "", self._now - 30 * 3_600_000 - days * DAY_MS
        for seq, event in enumerate(job.events, 1):
            text = json.dumps(event)
            for old, new in names.items():
                text = text.replace(f'"{old}"', f'"{new}"').replace(f'"{old}.', f'"{new}.')
            changed = json.loads(text)
            changed.update(device=phone_of(number), seq=seq, prev=prev, at=start + seq * 1000)
            prev = envelope.hash_of(changed)
            self.entries.append({"event": changed, "hash": prev})
        return {unit: renamed[code] for unit, code in job.labels.items()}

    def _mixed(self, good, wrong):
        """Return the order in which they come: a lingering label after its decision, what was here last."""
        later = [each for each in wrong if each.wrong == "returned before"]
        lingering = {each.label: each for each in wrong if each.wrong == "lingering label"}
        rest = good + [each for each in wrong if each not in later and each.label not in lingering]
        Random(15).shuffle(rest)
        shown = []
        for each in rest:
            shown.append(each)
            if each.label in lingering:
                shown.append(lingering[each.label])
        return shown + later


def phone_of(number):
    """Return the phone at the bench that a job was recorded on."""
    return f"d{number:016x}"


def serial_of(number):
    """Return the serial number of the bad sensor of a job."""
    return f"{SERIAL}-{number:03}"
