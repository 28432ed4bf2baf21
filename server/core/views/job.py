"""What the screens draw of jobs, as JSON in which every sentence is a message; one unit is in `unit.py`."""

from ..codes import labels
from ..evidence import proof
from ..evidence import readings
from ..evidence import unit_history
from ..evidence import verdict
from ..evidence import who_is_who
from ..guide import listening
from ..guide import moves
from ..guide import next_step
from ..guide import ways
from ..messages import message
from ..parts import cautions
from ..parts import layouts
from ..rules.closing import blocked_by
from ..state import own_label
from ..state.job import Job
from ..state.unit import Unit
from ..words import words
from . import history
from . import others
from . import pictures
from . import returning
from . import summary
from . import trail


def job_view(job: Job, result: dict | None) -> dict:
    """Return everything the app shows of a job; `result` is the reasoning over it, None without tests.

    A result that was not worked out to its next moves and its proof serves for what hangs on neither.
    """
    vehicle = job.vehicle
    planned = result is None or "proof" in result
    next_moves = moves.in_words(job, result) if result else []
    unit_history.tell_of_spares(job, next_moves)
    stage, step = next_step.next_step(job, result, next_moves if planned else None)
    return {
        "id": job.id,
        "title": vehicle["name"],
        "complaint": job.complaint,
        "sort": job.sort.identity,
        "vehicle": {"id": vehicle["id"], "name": vehicle["name"], "vin": vehicle["vin"]},
        "back": returning.returning(job),
        "stage": stage,
        "stages": _stages(stage, job.is_closed()),
        "closed": job.is_closed(),
        "comes_and_goes": job.comes_and_goes,
        "board": board(job, result),
        "step": step,
        "doing": others.doing(job, step),
        "ways": ways.ways(job, result),
        "listen": listening.listening(job),
        "paused": job.pause is not None,
        "handed": job.handed,
        "cautions": cautions.for_step(job.sort, step["id"], job.cautions_read),
        "trail": trail.trail(job, result),
        "reasoning": verdict.reasoning(job, result) if result else None,
        "planned": planned,
        "moves": next_moves,
        "may_choose": bool(next_moves) and job.move is None and not job.is_closed(),
        "reopened": job.is_reopened(),
        "proof": proof.proof(job, result),
        "out": [_unit_line(job, unit) for unit in job.in_hand()],
        "mixed": who_is_who.job_view(job, result),
        "disputes": [_unit_line(job, unit) for unit in job.disputed()],
        "close": {"ready": not blocked_by(job), "blockers": blocked_by(job)},
        "photos": pictures.pictures(job),
        "units": [_unit_line(job, unit) for unit in summary.handled(job)],
        "replaced": summary.replaced(job),
        "history": history.history(job),
        "knows": job.known_entries,
    }


def small_board(job: Job) -> dict:
    """Return the board as a list of jobs has it: where each position lies and its mark, without reasoning."""
    whole = board(job, None)
    names = ("id", "edge", "index", "mark", "x", "y")
    positions = [{name: position[name] for name in names} for position in whole["positions"]]
    return {"kind": whole["kind"], "positions": positions}


def board(job: Job, result: dict | None) -> dict:
    """Return the board: each position with what sits there and how it stands."""
    edges = {}
    for position in job.positions:
        edges[position["edge"]] = edges.get(position["edge"], 0) + 1
    kind = sorted(edges)[0] if len(edges) == 1 and sorted(edges)[0] in ("rear", "front") else "around"
    placed = layouts.are_placed(job.positions)
    if placed:
        kind = job.sort.outline
    seen, shown = {}, []
    photos = {photo["position"]: photo["sha256"] for photo in job.photos
              if photo["shows"] == "position"}  # fmt: skip
    for position in job.positions:
        edge = position["edge"]
        unit = job.fitted_at(position["id"])
        mark = _mark(job, result, position["id"], unit)
        shown.append(
            {
                "id": position["id"],
                "name": words.called(job, position),
                "edge": edge,
                "index": seen.get(edge, 0),
                "count_on_edge": edges[edge],
                "x": position["x"] if placed else 0,
                "y": position["y"] if placed else 0,
                "pins": position.get("pins", ""),
                "mark": mark,
                "word": message("views-job-mark", mark=mark),
                "unit": _unit_brief(job.state, unit) if unit else None,
                "photo": photos.get(position["id"], ""),
                "reach_minutes": readings.reach(job, position),
            }
        )
        seen[edge] = seen.get(edge, 0) + 1
    return {"kind": kind, "positions": shown}


def _mark(job: Job, result, position, unit) -> str:
    """Return how a position stands: its last counted reading with the unit that sits there now."""
    if unit is None:
        return "empty"
    if job.unit(unit).is_disputed():
        return "aside"
    aside = {}
    if result:
        aside = {entry["test"]: True for entry in result["ignored"]}
    for index in range(len(job.tests) - 1, -1, -1):
        if job.tests[index]["fitted"].get(position) != unit:
            return "untested"
        mark = trail.reading(job, index, position, aside)
        if mark != "aside":
            return mark
    return "untested"


def unit_line(state, identity: str) -> dict:
    """Return a unit in one line: code, part, where it is."""
    line = _unit_brief(state, identity)
    line["where"] = words.place_words(Unit(state, identity))
    line["bad"] = bad_at_hand(state, identity)
    return line


def bad_at_hand(state, unit):
    """Return that a unit was found bad and where, of one that lies where it could be taken for a spare."""
    return bad_words(state, unit) if state.units[unit]["place"] in ("stock", "out") else ""


def bad_words(state, unit):
    """Return on which vehicle a unit was found bad, "" where it never was."""
    vehicle = unit_history.condemned(state, unit)
    return message("views-unit-bad", vehicle=vehicle) if vehicle else ""


def _unit_brief(state, unit) -> dict:
    known = state.units[unit]
    return {"id": unit, "shown": labels.shown(known["code"]), "part": known["part"]}


def readings_known(unit: dict) -> list[str]:
    """Return the readings of a unit's numbers that stand: who reads them now knows of these."""
    return [each["by"] for each in unit.get("noted", [])]


def _unit_line(job: Job, unit) -> dict:
    line = _unit_brief(job.state, unit)
    line["noted"] = readings_known(job.state.units[unit])
    line["name"] = words.unit_name(job.unit(unit))
    line["where"] = words.place_words(job.unit(unit))
    line["bad"] = bad_at_hand(job.state, unit)
    line["written"] = own_label.is_written(job.unit(unit))
    pulled_from = job.unit(unit).pulled_from
    line["came_from"] = words.position_name(job, pulled_from) if pulled_from else ""
    line["claims"] = [
        {
            "place": claim["place"],
            "position": claim["position"],
            "words": words.position_name(job, claim["position"]) if claim["position"]
            else words.place_name(claim["place"]),
        }
        for claim in job.unit(unit)["claims"]
    ]  # fmt: skip
    return line


def _stages(stage, closed) -> list[dict]:
    names = [entry[0] for entry in next_step.STAGES]
    at = names.index(stage)
    shown = []
    for index in range(len(names)):
        standing = "now" if index == at else "done" if index < at else "to_come"
        shown.append(
            {
                "id": names[index],
                "word": message(next_step.STAGES[index][1]),
                "state": "done" if closed else standing,
            }
        )
    return shown
