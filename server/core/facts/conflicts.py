"""Flags for what contradicts: nothing is dropped, and a person sees it."""

from ..log import envelope


def conflict(state, event, job, about):
    """Flag something about the job as a whole; unlike a unit in dispute, no scan settles it."""
    _add(state, event, job, None, about, None, False)


def flag(state, event, job, identity, about, code):
    """Put a conflict on record, to be settled."""
    _add(state, event, job["id"] if job else None, identity, about, code, True)


def remark(state, event, job, identity, about):
    """Put on record what a person should know of a unit; it keeps nothing from going on."""
    _add(state, event, job["id"] if job else None, identity, about, None, False)


def settled(state, unit: str) -> None:
    """Close what is on record against the place of a unit."""
    for conflict in state.conflicts_of(unit):
        if conflict["about"] == "place":
            conflict["open"] = False


def _add(state, event, job, unit, about, code, is_open) -> None:
    """Put it on record; job and unit are ids or None."""
    state.add_conflict(
        {
            "event": envelope.identity(event),
            "job": job,
            "unit": unit,
            "about": about,
            "code": code,
            "open": is_open,
        }
    )
