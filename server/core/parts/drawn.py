"""Layouts that a person drew on the plan: what a job records of them, and the file that carries one.

A drawn position is {"name", "group", "reach_minutes", "x", "y", "part", "pins"}: `part` is the number of the
unit there and `pins` says what is where in its plug, both "" where nobody typed them. The file is JSON:
{"file": "swaptrail-layout", "v": 1, "model", "sort", "positions"}, `model` in a person's own words.
"""

import json

from ..errors import BadInput
from ..log import canon
from ..messages import message
from . import layouts
from . import sorts
from .layouts import FAR_END
from .layouts import OWN
from .sort import Sort

_FILE, _VERSION = "swaptrail-layout", 1
_FIELDS = ("name", "group", "reach_minutes", "x", "y", "part", "pins")
_MOST_TEXT, _MOST_MODEL = 100000, 80


def of_job(sort: Sort) -> str:
    """Return the layout that a job records which begins on drawn positions."""
    return sorts.layout_of(sort, "own")


def positions_of(sort: Sort, drawn: list) -> list[dict]:
    """Return drawn positions as a job records them; raise BadInput with the place of what is wrong.

    The id is that of the place in the list, the edge the one that is nearest on the plan.
    """
    begin = OWN + ("plan" if sort is sorts.PARKING_SENSOR else sort.identity) + "-"
    made = []
    for index in range(len(drawn)):
        each = drawn[index]
        if not isinstance(each, dict):
            raise BadInput("positions[{}]".format(index), each, message("refusals-object"))
        position = {field: each[field] for field in _FIELDS if each.get(field, "") != ""}
        if isinstance(position.get("name"), str):
            position["name"] = position["name"].strip()
        position["id"] = begin + str(index + 1)
        position["edge"] = _edge(each)
        made.append(position)
    layouts.check_positions(made)
    for index in range(len(made)):
        if not layouts.are_placed([made[index]]):
            path = "positions[{}].x".format(index)
            raise BadInput(path, None, message("refusals-place-on-plan"))
    return made


def _edge(drawn: dict) -> str:
    x, y = drawn.get("x"), drawn.get("y")
    if not isinstance(x, int) or not isinstance(y, int):
        return "rear"
    ways = [(y, 1, "front"), (FAR_END - y, 0, "rear"), (x, 2, "left"), (FAR_END - x, 3, "right")]
    return sorted(ways)[0][2]


def as_drawn(positions: list) -> list[dict]:
    """Return the positions of a job as they were drawn."""
    return [{field: each.get(field, "") for field in _FIELDS} for each in positions]


def file_of(sort: Sort, model: str, drawn: list) -> str:
    """Return the text of a layout's file; raise BadInput where it could not be read back."""
    _check_model(model)
    positions_of(sort, drawn)
    kept = {"file": _FILE, "v": _VERSION, "model": model, "sort": sort.identity, "positions": drawn}
    return canon.dumps(kept) + "\n"


def read_file(text: str) -> dict:
    """Return {"model", "sort", "positions"} of a file's text; raise BadInput that says what is wrong."""
    if len(text) > _MOST_TEXT:
        raise BadInput("file", str(len(text)), message("refusals-layout-size", most=_MOST_TEXT))
    kept = _parsed(text)
    if not isinstance(kept, dict) or kept.get("file") != _FILE:
        raise BadInput("file", text[:20], message("refusals-layout-file"))
    if kept.get("v") != _VERSION:
        raise BadInput("v", kept.get("v"), message("refusals-layout-version"))
    sort = sorts.named(kept.get("sort"))
    _check_model(kept.get("model"))
    drawn = kept.get("positions")
    if not isinstance(drawn, list):
        raise BadInput("positions", drawn, message("refusals-positions", most=layouts.MOST_POSITIONS))
    return {
        "model": kept["model"],
        "sort": sort.identity,
        "positions": as_drawn(positions_of(sort, drawn)),
    }


def _parsed(text: str):
    try:
        return json.loads(text)
    except (ValueError, RuntimeError):  # no JSON, or nested too deep for the host
        return None


def _check_model(model) -> None:
    if not isinstance(model, str) or len(model) > _MOST_MODEL:
        raise BadInput("model", model, message("refusals-text", least=0, most=_MOST_MODEL))
