"""Custody is unbroken: at each handover the label was read, from the first pull to the counter."""

from .. import phrases
from ..words.custody import first_label_follows
from .check import check

_HANDOVERS = {
    "out": "when it came into the hand",
    "fitted": "when it was fitted",
    "stock": "when it went into stock",
    "counter": "when it came to the counter",
    "customer": "when it went to the customer",
    "scrapped": "when it was scrapped",
    "labelled": "when it was labelled",
}
_BREAKS = {
    "label void": "its label was replaced on someone's word",
    "disputed": "two places were on record for a time",
}


def look(state, case):
    """Hold a unit that once changed hands without its label being read, or got mixed up."""
    unit = case["unit"]
    if unit is None or case["unknown"]:
        return None
    moves = _since_its_job(unit, case["job"])
    gaps, read, typed = [], 0, 0
    for index in range(len(moves)):
        move = moves[index]
        if move["what"] in _BREAKS:
            _note(gaps, _BREAKS[move["what"]])
        elif move["what"] in _HANDOVERS:
            if move["how"] != "tapped":
                read += 1
                typed += move["how"] != "scanned"
            elif not first_label_follows(unit, moves, index):
                _note(gaps, "not scanned " + _HANDOVERS[move["what"]])
    if [lost for lost in unit["lost"] if lost["settled"] == "left"]:
        _note(gaps, "it got mixed up, and was told apart only as the last one left")
    if gaps:
        return check("hold", "A gap in custody", phrases.sentence_case(phrases.listed(gaps)) + ".")
    if not read:
        return check("hold", "A gap in custody", "No handover is on record.")
    said = "Label read at {}".format("each of {} handovers".format(read) if read > 1 else "its one handover")
    if typed:
        said += ", {} of them typed".format(typed)
    return check("pass", "Custody unbroken", said + ".")


def _since_its_job(unit, job) -> list:
    """Return the moves since the job began that the unit is returned from; without one, all."""
    for index in range(len(unit["moves"])):
        if job and unit["moves"][index]["job"] == job.id:
            return unit["moves"][index:]
    return unit["moves"]


def _note(gaps, words_of_it) -> None:
    if words_of_it not in gaps:
        gaps.append(words_of_it)
