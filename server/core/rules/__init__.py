"""What may not be done, one rule a file. The first rule that stands against a fact refuses it.

In this order: `form` (is it a fact we understand), `role` (is this phone for it, and for what it corrects),
`too_old` (an old app begins no new job), `job_open` (a closed job stays closed), `code_use` (a label code
belongs to one unit), `printing` (a code is printed for one label), `label_as_part` (a label's code is no
part number), `mixed` (what got mixed up is moved by its body, and only what is in hand gets mixed up),
`rates` (a rate that no rate can be), `bounds` (what every host can show), `figure` (what a meter shows),
`reading` (a reading agrees with its figure; may be overridden with a reason), `label_first` (no second unit
without a label on the ground), `bad_stock` (a bad unit goes into stock only with a reason), `one_place` (a
unit is at one place, a position holds one unit), `planned_unit` (the exchange puts this unit here and no
other), `same_part` (may be overridden with a reason), `returns` (a decision at the counter is about a return
that waits), `closing` (everything accounted for), `correction` (taking back leaves no hole, what is put
right is on record). What an entry should have said is judged as of its place in the log.

A rule is `refuse(fold, draft, job) -> refusal | None`; a refusal is made by `refusal()`. Rules speak
only before a fact is recorded on a phone; the fold never refuses.
"""

from ..facts.apply import known_by
from ..facts.corrections import PUT_RIGHT
from ..facts.corrections import right
from ..facts.corrections import target_of
from ..facts.kinds import KINDS
from ..state.job import find_job
from . import bad_stock
from . import bounds
from . import closing
from . import code_use
from . import correction
from . import figure
from . import form
from . import job_open
from . import label_as_part
from . import label_first
from . import mixed
from . import one_place
from . import planned_unit
from . import printing
from . import rates
from . import reading
from . import returns
from . import role
from . import same_part
from . import too_old

# Rules on what was planned, or on an order of work, say nothing of what happened.
_IN_ITS_PLACE = (form, code_use, printing, mixed, rates, bounds, figure, reading, one_place,
                 returns)  # fmt: skip
_ORDER = (form, role, too_old, job_open, code_use, printing, label_as_part, mixed, rates, bounds, figure,
          reading, label_first, bad_stock, one_place, planned_unit, same_part, returns, closing,
          correction)  # fmt: skip


def first_refusal(fold, draft: dict) -> dict | None:
    """Return the refusal of the first rule that stands against `draft`, or None.

    `draft` is {"kind", "data", "job", ...}. The answer is {"rule", "title", "sentence", "do", "override"}.
    """
    found = _first_of(_ORDER, fold, draft)
    if found is None and draft["kind"] == PUT_RIGHT:
        return _against_what_is_right(fold, draft)
    return found


def _first_of(rules: tuple, fold, draft: dict) -> dict | None:
    job = find_job(fold.state, draft.get("job"))
    if draft["kind"] in KINDS and not KINDS[draft["kind"]].problem(draft["data"]):
        draft = known_by(fold.state, draft)
    for rule in rules:
        found = rule.refuse(fold, draft, job)
        if found:
            return found
    return None


def _against_what_is_right(fold, draft: dict) -> dict | None:
    """Return the refusal of what is right, unless the same rule stood against what the entry said."""
    identity, entry = target_of(draft["data"]), draft["data"]["entry"]
    target = fold.find(identity)
    earlier = fold.as_of(identity, entry)
    asked = {"job": target["job"]}
    asked.update(entry)
    found = _first_of(_IN_ITS_PLACE, earlier, asked)
    if found is None:
        return None
    asked.update(right(target, fold.corrections.righted.get(identity)))
    before = _first_of(_IN_ITS_PLACE, earlier, asked)
    return None if before and before["rule"] == found["rule"] else found
