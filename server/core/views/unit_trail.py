"""The trail of one unit over all jobs and vehicles: a station for each job and each place it lay at.

The station of a job is a picture as `trail.py` makes it, cut down to the positions where the unit sat:
its own line is the thick one, and beside it stands what the other sensors read at the same places.
"""

from ..messages import message
from ..state.job import Job
from ..state.job import find_job
from ..state.job import known_job
from ..state.unit import Unit
from ..words import words
from ..words.words import unit_name
from . import trail

_STAYS = ("stock", "counter", "customer", "scrapped")


def stations(state, unit: dict, results: dict) -> list[dict]:
    """Return the stations of a unit from first to last: {"kind": "job" | "place" | "now", ...}.

    A job has {"job", "title", "complaint", "at", "trail"}, `trail` None where no test saw the unit; a
    place has {"words", "at"}; the last station is where it is now.
    """
    before, after = _segments(unit)
    listed = _stay(before)
    for job_id in unit["jobs"]:
        job = known_job(state, job_id)
        listed.append(
            {
                "kind": "job",
                "job": job_id,
                "title": job.vehicle["name"],
                "complaint": job.complaint,
                "at": job.opened_at,
                "trail": band(job, unit["id"], results.get(job_id)),
            }
        )
        listed.extend(_stay(after.get(job_id, [])))
    where = words.place_words(Unit(state, unit["id"], find_job(state, unit["job"])))
    if listed and listed[-1]["kind"] == "place":
        listed.pop()
    listed.append({"kind": "now", "words": message("views-heading", words=where), "at": _since(unit)})
    return listed


def band(job: Job, identity: str, result: dict | None) -> dict | None:
    """Return the trail of a job as far as it is about one unit, None where no test saw it."""
    seats = _seats(job, identity)
    if not seats:
        return None
    aside = trail.set_aside(result)
    whole = trail.trail(job, result)
    rows = [row for row in whole["rows"] if row["position"] in seats.values()]
    named = {row["position"]: True for row in rows}
    lines = [_own_line(job, identity, seats, aside)]
    for line in whole["lines"]:
        if line["unit"] != identity:
            others = [point for point in line["points"] if seats.get(point["test"], "") != point["position"]]
            lines.extend(_runs(dict(line, points=others), named))
    return {
        "tests": whole["tests"],
        "rows": [{"position": row["position"], "name": row["name"], "suspect": False} for row in rows],
        "lines": lines,
        "joins": [],
        "mixed_words": "",
    }


def _seats(job, identity) -> dict:
    """Return number of the test -> position at which the unit sat in it."""
    found = {}
    for index in range(len(job.tests)):
        fitted = job.tests[index]["fitted"]
        for position in sorted(fitted):
            if fitted[position] == identity:
                found[index] = position
    return found


def _own_line(job: Job, identity, seats, aside) -> dict:
    """The line ends where the unit was last tested: where it went from there is the next station."""
    points = [
        {"test": index, "position": seats[index], "mark": trail.reading(job, index, seats[index], aside)}
        for index in sorted(seats)
    ]
    return {"unit": identity, "shown": unit_name(job.unit(identity)), "suspect": True, "points": points}


def _runs(line, named) -> list:
    """Return another unit's line in pieces: only where it sits at the positions that are shown."""
    pieces, points = [], []
    for point in line["points"]:
        if point["position"] in named:
            points.append(point)
        elif points:
            pieces.append(points)
            points = []
    if points:
        pieces.append(points)
    found = []
    for piece in pieces:
        cut = dict(line)
        cut["suspect"] = False
        cut["points"] = piece
        found.append(cut)
    return found


def _segments(unit) -> tuple:
    """Return (moves before any job, job id -> its moves and those made away from any job after it)."""
    before, after, at = [], {}, None
    for move in unit["moves"]:
        at = move["job"] or at
        if at is None:
            before.append(move)
        else:
            after.setdefault(at, []).append(move)
    return before, after


def _stay(moves) -> list:
    """Return the place where a unit lay after these moves, as a station; none while it was on a job."""
    handed = [move for move in moves if move["what"] in _STAYS + ("out", "fitted")]
    if not handed or handed[-1]["what"] not in _STAYS:
        return []
    place = words.place_name(handed[-1]["what"])
    return [{"kind": "place", "words": message("views-heading", words=place), "at": handed[-1]["at"]}]


def _since(unit) -> int | None:
    for move in reversed(unit["moves"]):
        if move["what"] in _STAYS + ("out", "fitted"):
            return move["at"]
    return None
