"""Which entries the record of a sensor or a job rests on, and which others it leaves at home.

In it are whole jobs: those that the sensor took part in (or the one job), and earlier jobs on the
same vehicle, for who sat where follows from them. Beside them what happened outside jobs: to the
sensor itself everything, to others only what came before. Another customer's job is never in it; a
sensor that came from one is introduced by what was known of it then.

The log is asked, not read: a server finds these few entries among millions by its indexes. A log is
an object with `of_job(job)`, `outside_jobs(unit)`, `naming(unit)` and `corrections()`; each returns
entries in order of receipt, with `n` (their place in the log), `event` and `units` (what it names).
"""

from collections import namedtuple

from ..facts.corrections import KINDS_OF_CORRECTION
from ..facts.kinds import KINDS
from . import named

_LABELS = ("unit_added", "unit_labelled", "label_voided")
_PLACES = ("unit_pulled", "unit_fitted", "unit_moved", "unit_seen")

Entry = namedtuple("Entry", ("n", "event", "units"))
# What goes into a record, but for the photos' bytes.
Gathered = namedtuple("Gathered", ("jobs", "entries", "elsewhere"))


class FoldedLog:
    """The log as the fold has it: all of it in memory, as on a phone."""

    def __init__(self, events: list):
        """Note what each event names."""
        self._entries = [Entry(n, events[n], named.units(events[n])) for n in range(len(events))]

    def of_job(self, job):
        """Return the entries of a job."""
        return [entry for entry in self._entries if entry.event["job"] == job]

    def outside_jobs(self, unit):
        """Return the entries outside jobs that name a unit."""
        return [entry for entry in self.naming(unit) if entry.event["job"] is None]

    def naming(self, unit):
        """Return the entries that name a unit."""
        return [entry for entry in self._entries if unit in entry.units]

    def corrections(self):
        """Return the entries that take another back or put it right."""
        return [entry for entry in self._entries if entry.event["kind"] in KINDS_OF_CORRECTION]


def gather(state, log, unit: str, job: str) -> Gathered:
    """Pick the entries of the record of a unit, or of a job; the other one is ""."""
    own = _own(state, unit)
    outside = []
    for each in sorted(own):
        outside.extend(log.outside_jobs(each))
    jobs = _jobs(state, unit, job)
    if not jobs and not outside:  # all that is known of it is that a job names it
        for entry in log.naming(unit):
            if entry.event["job"] in state.jobs and entry.event["job"] not in jobs:
                jobs.append(entry.event["job"])
    found = {}
    others = {}
    for each in jobs:
        for entry in log.of_job(each):
            found[entry.n] = entry
            for name in entry.units:
                others[name] = True
    last = max(found) if found else 0
    for each in sorted(others):
        if each not in own:
            outside.extend([entry for entry in log.outside_jobs(each) if entry.n < last])
    for entry in outside:
        found[entry.n] = entry
    for entry in _corrections(log, found):
        found[entry.n] = entry
    entries = [found[n] for n in sorted(found)]
    return Gathered(jobs, entries, _elsewhere(state, log, jobs, entries))


def _jobs(state, unit: str, job: str) -> list[str]:
    """Return the jobs, in the order in which they are on record."""
    found = []
    for wanted in [job] if job else state.units[unit]["jobs"]:
        on_vehicle = state.vehicles[state.jobs[wanted]["vehicle"]]["jobs"]
        for each in on_vehicle[: on_vehicle.index(wanted) + 1]:
            if each not in found:
                found.append(each)
    return found


def _own(state, unit: str) -> dict:
    """Return the ids a unit goes by: those of every sensor it was, or may be, mixed up with too."""
    if not unit:
        return {}
    own = {unit: True}
    for lost in state.units[unit]["lost"]:
        mixup = state.mixed[lost["set"]]
        for each in mixup["units"] + mixup["bodies"]:
            own[each] = True
    for alias in sorted(state.aliases):
        if state.now(alias) in own:
            own[alias] = True
    return own


def _corrections(log, found: dict) -> list:
    """Return what takes back or puts right an entry that is in the record, from whichever job it was sent."""
    targets = {}
    for n in sorted(found):
        event = found[n].event
        targets["{}:{}".format(event["device"], event["seq"])] = True
    return [
        entry
        for entry in log.corrections()
        if "{}:{}".format(entry.event["data"].get("device"), entry.event["data"].get("seq")) in targets
    ]


def _elsewhere(state, log, jobs: list, entries: list) -> list[dict]:
    """Return what was known of each sensor that these entries name and other work introduced."""
    here = {}
    introduced = {}
    for entry in entries:
        event = entry.event
        if event["kind"] == "unit_added" and isinstance(event["data"].get("unit"), str):
            introduced[event["data"]["unit"]] = True
        for unit in entry.units:
            here.setdefault(unit, []).append(event)
            if event["kind"] == "job_opened":
                introduced[unit] = True
    found = []
    for unit in sorted(here):
        if unit in introduced or unit not in state.units:
            continue
        before = log.naming(unit)
        if all([entry.event["job"] is None or entry.event["job"] in jobs for entry in before]):
            continue
        found.append(
            {
                "unit": unit,
                "code": _code_before(before, here[unit][0]),
                "part": state.units[unit]["part"],
                "serial": state.units[unit]["serial"],
                "place": _place_before(here[unit]),
            }
        )
    return found


def _code_before(entries: list, event: dict) -> str:
    """Return the label that a unit had when `event`, the first of it in the record, was received."""
    code = ""
    for entry in entries:
        kind, data = entry.event["kind"], entry.event["data"]
        if entry.event == event:
            break
        if kind in _LABELS and not KINDS[kind].problem(data):
            code = "" if kind == "label_voided" else data["code"]
    return code


def _place_before(events: list) -> str:
    """Return from where a unit came: in hand where it was fitted first, else out of stock."""
    moves = [event["kind"] for event in events if event["kind"] in _PLACES]
    return "out" if moves[:1] == ["unit_fitted"] else "stock"
