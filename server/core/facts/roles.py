"""Who may record what: phones at the bench do jobs, phones at the parts counter decide returns.

One table for the phone, which says no before anything is recorded, and for the server, which does not
take what a phone was not asked to record.
"""

from . import kinds

BENCH, COUNTER = "bench", "counter"
ROLES = (BENCH, COUNTER)

# decided at the counter and nowhere else
_COUNTER_ALONE = ("return_received", "return_decided")
# what a counter needs besides: where a unit goes, what it saw, a picture
_COUNTER_TOO = ("unit_moved", "unit_seen", "photo_taken")


def may_record(role: str, kind: str) -> bool:
    """Tell whether phones of a role record this kind; a correction is as its target.

    A kind that is not known here is the bench's: it may come from a newer app.
    """
    if role == COUNTER:
        return kind in _COUNTER_ALONE or kind in _COUNTER_TOO
    return kind not in _COUNTER_ALONE


def reason_against(role: str, kind: str) -> str:
    """Return why a phone of this role does not record this kind, in a sentence."""
    what = kinds.KINDS[kind][0].rstrip(".") if kind in kinds.KINDS else "An entry of the kind " + kind
    if role == COUNTER:
        return '"{}" is recorded at the bench; this phone is at the parts counter.'.format(what)
    return '"{}" is recorded at the parts counter; this phone is at the bench.'.format(what)
