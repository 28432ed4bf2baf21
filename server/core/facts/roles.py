"""Who may record what: phones at the bench do jobs, phones at the parts counter decide returns.

Each kind says whose it is; the phone says no before anything is recorded, and the server does not take
what a phone was not asked to record.
"""

from ..messages import message
from .kind import BENCH
from .kind import BOTH
from .kind import COUNTER
from .kinds import KINDS

ROLES = (BENCH, COUNTER)


def may_record(role: str, kind: str) -> bool:
    """Tell whether phones of a role record this kind; a correction is as its target.

    A kind that is not known here is the bench's: it may come from a newer app.
    """
    return (KINDS[kind].role if kind in KINDS else BENCH) in (role, BOTH)


def reason_against(role: str, kind: str) -> dict:
    """Return why a phone of this role does not record this kind."""
    what = message("refusals-kind", kind=kind)
    if role == COUNTER:
        return message("refusals-at-the-bench", what=what)
    return message("refusals-at-the-counter", what=what)
