"""Which entries the record of a sensor or a job rests on, and which others it leaves at home.

In it are whole jobs: those that the sensor took part in (or the one job), and earlier jobs on the
same vehicle, for who sat where follows from them. Beside them what happened outside jobs: to the
sensor itself everything, to others only what came before. Another customer's job is never in it; a
sensor that came from one is introduced by what was known of it then.
"""

import json
import re
from typing import NamedTuple

from sqlite_utils import Database

from server import named
from server.core import kinds
from server.core import labels
from server.core.errors import shorten
from server.folded import FoldedState
from server.refusals import CommandRefused

_UNIT = re.compile(r"u[0-9a-f]{12}|v[0-9a-f]{12}\.\S{1,80}")
_LABELS = ("unit_added", "unit_labelled", "label_voided")
_PLACES = ("unit_pulled", "unit_fitted", "unit_moved", "unit_seen")


class Unknown(CommandRefused):
    """Nothing on record goes by the name."""


class BadName(CommandRefused):
    """The name can be none of a sensor, label or job."""


class Subject(NamedTuple):
    """Whose record it is: a unit or a job, the other one ""."""

    unit: str
    job: str


class Entry(NamedTuple):
    """An event of the log with its place in it."""

    n: int
    device: str
    seq: int
    hash: str
    body: str
    event: dict


class Gathered(NamedTuple):
    """What goes into a record, but for the photos' bytes."""

    subject: Subject
    jobs: list[str]
    entries: list[Entry]
    elsewhere: list[dict]


def subject_of(state: FoldedState, name: str) -> Subject:
    """Returns what a unit's id, the code on a label or a job's id means; refuses what means nothing."""
    if name in state.jobs:
        return Subject("", name)
    unit = state.now(name)
    if unit in state.units:
        return Subject(unit, "")
    read = labels.parse(name)
    if read["outcome"] == "ours":
        if read["code"] not in state.codes:
            raise Unknown(f"No sensor on record has the label {read['shown']}.")
        return Subject(state.codes[read["code"]], "")
    if _UNIT.fullmatch(name) or re.fullmatch(r"j[0-9a-f]{12}", name):
        raise Unknown(f"{name} is not on record here.")
    said = read["sentence"] if read["outcome"] == "mistyped" else f"{shorten(name)} is no name of anything."
    raise BadName(f"{said} Give the code on a label, a sensor's id or a job's id.")


def gather(db: Database, state: FoldedState, subject: Subject) -> Gathered:
    """Picks the entries, in order of receipt."""
    own = _own(state, subject.unit)
    outside = [entry for unit in sorted(own) for entry in _outside_jobs(db, unit, None)]
    jobs = _jobs(state, subject)
    if not jobs and not outside:  # all that is known of it is that a job names it
        jobs = [job for job in _naming(db, subject.unit) if job in state.jobs]
    found = {entry.n: entry for job in jobs for entry in _rows(db, "WHERE job = ?", [job])}
    last = max(found, default=0)
    others = {unit for entry in found.values() for unit in named.units(entry.event, entry.body)} - own
    for unit in sorted(others):
        outside += _outside_jobs(db, unit, last)
    found.update((entry.n, entry) for entry in outside)
    found.update((entry.n, entry) for entry in _corrections(db, found))
    entries = [found[n] for n in sorted(found)]
    return Gathered(subject, jobs, entries, _elsewhere(db, state, jobs, entries))


def chains(db: Database, entries: list[Entry]) -> dict[str, dict]:
    """Returns of each device the hashes of all entries from the first to the last one gathered."""
    ends: dict[str, list[int]] = {}
    for entry in entries:
        ends.setdefault(entry.device, []).append(entry.seq)
    return {
        device: {
            "first": min(seqs),
            "hashes": [
                digest
                for (digest,) in db.conn.execute(
                    "SELECT hash FROM events WHERE device = ? AND seq BETWEEN ? AND ? ORDER BY seq",
                    [device, min(seqs), max(seqs)],
                )
            ],
        }
        for device, seqs in ends.items()
    }


def _jobs(state: FoldedState, subject: Subject) -> list[str]:
    """Returns the jobs, in the order in which they are on record."""
    wanted = [subject.job] if subject.job else state.units[subject.unit]["jobs"]
    found: list[str] = []
    for job in wanted:
        on_vehicle = state.vehicles[state.jobs[job]["vehicle"]]["jobs"]
        found += on_vehicle[: on_vehicle.index(job) + 1]
    return list(dict.fromkeys(found))


def _naming(db: Database, unit: str) -> list[str]:
    """Returns the jobs with an entry that names a unit."""
    rows = db.conn.execute(
        "SELECT DISTINCT job FROM event_units JOIN events USING (n) WHERE unit = ? AND job IS NOT NULL",
        [unit],
    )
    return [job for (job,) in rows]


def _own(state: FoldedState, unit: str) -> set[str]:
    """Returns the ids a unit goes by: those of every sensor it was, or may be, mixed up with too."""
    if not unit:
        return set()
    own = {unit}
    for lost in state.units[unit]["lost"]:
        mixup = state.mixed[lost["set"]]
        own.update([*mixup["units"], *mixup["bodies"]])
    return own | {alias for alias in state.aliases if state.now(alias) in own}


def _rows(db: Database, where: str, values: list) -> list[Entry]:
    rows = db.conn.execute(f"SELECT n, device, seq, hash, body FROM events {where} ORDER BY n", values)
    return [Entry(n, device, seq, digest, body, json.loads(body)) for n, device, seq, digest, body in rows]


def _outside_jobs(db: Database, unit: str, until: int | None) -> list[Entry]:
    where = "JOIN event_units USING (n) WHERE unit = ? AND job IS NULL"
    if until is not None:
        return _rows(db, f"{where} AND n < ?", [unit, until])
    return _rows(db, where, [unit])


def _corrections(db: Database, found: dict[int, Entry]) -> list[Entry]:
    """Returns what takes back an entry that is in the record, from whichever job it was sent."""
    targets = {(entry.device, entry.seq) for entry in found.values()}
    return [
        entry
        for entry in _rows(db, "WHERE kind = 'corrected'", [])
        if (entry.event["data"].get("device"), entry.event["data"].get("seq")) in targets
    ]


def _elsewhere(db: Database, state: FoldedState, jobs: list[str], entries: list[Entry]) -> list[dict]:
    """Returns what was known of each sensor that these entries name and other work introduced."""
    here: dict[str, list[dict]] = {}
    introduced = set()
    for entry in entries:
        event = entry.event
        if event["kind"] == "unit_added":
            introduced.add(event["data"].get("unit"))
        if event["kind"] == "job_opened":
            introduced.update(named.units(event, entry.body))
        for unit in named.units(event, entry.body):
            here.setdefault(unit, []).append(event)
    found = []
    for unit in sorted(here.keys() - introduced):
        if unit not in state.units:
            continue
        before = _rows(db, "JOIN event_units USING (n) WHERE unit = ?", [unit])
        if all(entry.event["job"] in {None, *jobs} for entry in before):
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


def _code_before(entries: list[Entry], event: dict) -> str:
    """Returns the label that a unit had when `event`, the first of it in the record, was received."""
    code = ""
    for entry in entries:
        kind, data = entry.event["kind"], entry.event["data"]
        if entry.event == event:
            break
        if kind in _LABELS and not kinds.problem(kind, data):
            code = "" if kind == "label_voided" else data["code"]
    return code


def _place_before(events: list[dict]) -> str:
    """Returns from where a unit came: in hand where it was fitted first, else out of stock."""
    moves = [event["kind"] for event in events if event["kind"] in _PLACES]
    return "out" if moves[:1] == ["unit_fitted"] else "stock"
