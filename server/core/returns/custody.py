"""Custody is unbroken: at each handover the label was read, from the first pull to the counter."""

from ..messages import all_of
from ..messages import message
from ..messages import sentences
from ..words.custody import first_label_follows
from .check import check

_HANDOVERS = {
    "out": "returns-gap-out",
    "fitted": "returns-gap-fitted",
    "stock": "returns-gap-stock",
    "counter": "returns-gap-counter",
    "customer": "returns-gap-customer",
    "scrapped": "returns-gap-scrapped",
    "labelled": "returns-gap-labelled",
}
_BREAKS = {
    "label void": "returns-gap-void",
    "disputed": "returns-gap-disputed",
}


def look(state, case):
    """Hold a unit that once changed hands without its label being read, or got mixed up."""
    unit = case["unit"]
    if unit is None or case["unknown"]:
        return None
    moves = _since_its_job(unit, case["job"])
    gaps, read, typed, alone = [], 0, 0, 0
    for index in range(len(moves)):
        move = moves[index]
        if move["what"] in _BREAKS:
            _note(gaps, _BREAKS[move["what"]])
        elif move["what"] in _HANDOVERS:
            if move["how"] != "tapped":
                read += 1
                typed += move["how"] != "scanned"
            elif move.get("alone"):
                alone += 1
            elif not first_label_follows(unit, moves, index):
                _note(gaps, _HANDOVERS[move["what"]])
    if [lost for lost in unit["lost"] if lost["settled"] == "left"]:
        _note(gaps, "returns-gap-mixed")
    if gaps:
        said = message("returns-custody-gaps", gaps=all_of([message(gap) for gap in gaps]))
        return check("hold", message("returns-custody-gap-title"), said)
    if not read:
        return check("hold", message("returns-custody-gap-title"), message("returns-custody-none"))
    said = message("returns-custody-read", count=read)
    if typed:
        said = message("returns-custody-read-typed", count=read, typed=typed)
    if alone:
        said = sentences([said, message("returns-custody-alone")])
    return check("pass", message("returns-custody-title"), said)


def _since_its_job(unit, job) -> list:
    """Return the moves since the job began that the unit is returned from; without one, all."""
    for index in range(len(unit["moves"])):
        if job and unit["moves"][index]["job"] == job.id:
            return unit["moves"][index:]
    return unit["moves"]


def _note(gaps: list, gap: str) -> None:
    if gap not in gaps:
        gaps.append(gap)
