"""Who may record what: phones at the bench do jobs, phones at the parts counter decide returns.

The one place where an entry is judged by the role of the phone that records it: its kind, what it says and,
of a correction, what it names. The phone asks before anything is recorded, and the server does not take
what a phone was not asked to record. What is kept already is folded as it is.
"""

from ..messages import message
from .corrections import KINDS_OF_CORRECTION
from .corrections import PUT_RIGHT
from .kind import BENCH
from .kind import BOTH
from .kind import COUNTER
from .kinds import KINDS

ROLES = (BENCH, COUNTER)
# Where the counter says that a unit is; in hand on a job and fitted on a vehicle are the bench's to say.
COUNTER_PLACES = ("counter", "customer", "scrapped", "stock")
_PLACED = ("unit_moved", "unit_seen")


def against(role: str, entry: dict, target: dict | None = None) -> dict | None:
    """Return why a phone of a role does not record an entry, or None.

    `entry` has kind, data and actor. `target`, {"kind", "own", "role"}, is what a well-formed correction
    names: the kind is "" where it is not on record; `own` tells whether this very phone recorded it; the role
    is that of whoever did, "" where nobody knows. A correction counts as its target and, where it says what
    should have been said, as that too.
    """
    kind, data = entry["kind"], entry["data"]
    if kind not in KINDS_OF_CORRECTION or target is None:
        return _against(role, kind, data, entry["actor"])
    why = _against_target(role, target)
    if why is None and kind == PUT_RIGHT:
        why = _against(role, data["entry"]["kind"], data["entry"]["data"], entry["actor"])
    return why


def _may_record(role: str, kind: str) -> bool:
    """Tell whether phones of a role record this kind; one not known here, of a newer app, is the bench's."""
    return (KINDS[kind].role if kind in KINDS else BENCH) in (role, BOTH)


def _against(role: str, kind: str, data: dict, actor: str) -> dict | None:
    """Return what stands against the kind, the place or the name that an entry says, or None."""
    if not _may_record(role, kind):
        return _of_the_other(role, kind)
    if role != COUNTER or KINDS[kind].problem(data):  # what is malformed says nothing
        return None
    if kind in _PLACED and data["place"] not in COUNTER_PLACES:
        return message("refusals-place-of-the-bench")
    if kind == "return_decided" and data["signed"] != actor:
        return message("refusals-signed-by-another", actor=actor, signed=data["signed"])
    return None


def _against_target(role: str, target: dict) -> dict | None:
    kind = target["kind"]
    if not kind:
        is_other = role == COUNTER or target["role"] not in (role, "")
        return message("refusals-corrects-unknown") if is_other else None
    if not _may_record(role, kind):
        return _of_the_other(role, kind)
    # Kinds of both roles do not tell who recorded them, and a custody that the bench recorded is proof.
    if role == COUNTER and KINDS[kind].role == BOTH and not target["own"]:
        return message("refusals-of-another-phone", what=message("refusals-kind", kind=kind))
    return None


def _of_the_other(role: str, kind: str) -> dict:
    what = message("refusals-kind", kind=kind)
    if role == COUNTER:
        return message("refusals-at-the-bench", what=what)
    return message("refusals-at-the-counter", what=what)
