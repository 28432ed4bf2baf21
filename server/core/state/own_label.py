"""Whose label a text is, by what is on record too.

Somebody who began without a server keeps the labels that are on the sensors: they name the address of
then, and the log that the server took in says who printed them.
"""

from ..codes import labels
from .printed import printed_for
from .unit import Unit


def read(state, text: str, host: str) -> dict:
    """Return what `labels.parse` says; a label printed for an address of this log's past is ours."""
    said = labels.parse(text, host)
    if said["outcome"] != "other_host":
        return said
    ours = labels.upper_ascii(printed_for(state, said["code"])) == said["host"]
    return labels.ours(said["code"]) if ours else said


def is_written(unit: Unit) -> bool:
    """Tell whether the label that a unit carries was written by hand, so that no camera reads it."""
    labelled = [move for move in unit.transfers if move["what"] == "labelled" or move.get("code")]
    return unit.is_labelled() and bool(labelled) and labelled[-1]["how"] == "written"
