"""Flags for what contradicts: nothing is dropped, and a person sees it."""

from ..log import envelope


def conflict(state, event, job, about):
    """Flag something about the job as a whole; unlike a unit in dispute, no scan settles it."""
    state.add_conflict(
        {
            "event": envelope.identity(event),
            "job": job,
            "unit": None,
            "about": about,
            "code": None,
            "open": False,
        }
    )


def flag(state, event, job, identity, about, code):
    """Put a conflict on record, to be settled."""
    state.add_conflict(
        {
            "event": envelope.identity(event),
            "job": job["id"] if job else None,
            "unit": identity,
            "about": about,
            "code": code,
            "open": True,
        }
    )
