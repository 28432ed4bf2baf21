"""The sorts of part there are, and which one a job is about.

A further sort is a module beside this one and its name in `SORTS`.
"""

from ..errors import BadInput
from ..messages import message
from .door_speaker import DOOR_SPEAKER
from .ignition_coil import IGNITION_COIL
from .parking_sensor import PARKING_SENSOR
from .sort import Sort
from .wheel_sender import WHEEL_SENDER

SORTS = [PARKING_SENSOR, IGNITION_COIL, WHEEL_SENDER, DOOR_SPEAKER]


def by_identity(identity: str) -> Sort | None:
    """Return a sort by its id, or None."""
    for sort in SORTS:
        if sort.identity == identity:
            return sort
    return None


def named(identity) -> Sort:
    """Return the sort that a "sort" names; raise BadInput, which lists those there are."""
    sort = by_identity(identity) if isinstance(identity, str) else None
    if sort is None:
        choices = ", ".join([known.identity for known in SORTS])
        raise BadInput("sort", identity, message("refusals-one-of", choices=choices))
    return sort


def by_layout(layout: str) -> Sort:
    """Return the sort that the id of a job's layout names before its "/".

    Parking sensors came first: their layouts name no sort. They also stand in for a sort that only a newer
    version knows, so that its jobs open here as well.
    """
    identity, slash, _ = layout.partition("/")
    return (by_identity(identity) if slash else None) or PARKING_SENSOR


def layout_of(sort: Sort, name: str) -> str:
    """Return the id under which a job records a layout of a sort, which `by_layout` reads."""
    return name if sort is PARKING_SENSOR else sort.identity + "/" + name


def all_layouts() -> list[dict]:
    """Return the ready-made layouts of every sort as [{"id", "name", "positions", "called", ...}].

    The positions are as a job that begins on them is recorded; `called` is what they are called, by id,
    `outline` what they are drawn on, `complaints` what customers mostly say of such parts.
    """
    listed = []
    for sort in SORTS:
        for each in sort.layouts():
            each["id"] = layout_of(sort, each["id"])
            each["sort"] = sort.identity
            each["outline"] = sort.outline
            each["complaints"] = list(sort.complaints)
            each["called"] = {known["id"]: sort.called(known) for known in each["positions"]}
            listed.append(each)
    return listed


def findings() -> list[tuple]:
    """Return (id, words) of all that can be found by a look from outside, whatever the sort, each id once."""
    listed, seen = [], {}
    for sort in SORTS:
        for identity, words in sort.look.found:
            if identity not in seen:
                seen[identity] = True
                listed.append((identity, words))
    return listed
