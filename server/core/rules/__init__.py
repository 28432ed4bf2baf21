"""What may not be done, one rule a file. The first rule that stands against a fact refuses it.

In this order: `form` (is it a fact we understand), `role` (is this phone for it), `too_old` (an old app
begins no new job), `job_open` (a closed job stays closed), `code_use` (a label code belongs to one
unit), `printing` (a code is printed for one label), `mixed` (what got mixed up is moved by its body, and
only what is in hand gets mixed up), `rates` (a rate that no rate can be), `label_first` (no second unit
without a label on the ground), `bad_stock` (a bad unit goes into stock only with a reason), `one_place` (a
unit is at one place, a position holds one unit), `planned_unit` (the exchange puts this unit here and no
other), `same_part` (may be overridden with a reason), `returns` (a decision at the counter is about a
return that waits), `closing` (everything accounted for), `correction` (taking back leaves no hole).

A rule is `refuse(fold, draft, job) -> refusal | None`; a refusal is made by `refusal()`. Rules speak
only before a fact is recorded on a phone; the fold never refuses.
"""

from ..facts.fold import known_by
from ..facts.kinds import KINDS
from ..state.job import find_job
from . import bad_stock
from . import closing
from . import code_use
from . import correction
from . import form
from . import job_open
from . import label_first
from . import mixed
from . import one_place
from . import planned_unit
from . import printing
from . import rates
from . import returns
from . import role
from . import same_part
from . import too_old

_ORDER = (form, role, too_old, job_open, code_use, printing, mixed, rates, label_first, bad_stock, one_place,
          planned_unit, same_part, returns, closing, correction)  # fmt: skip


def first_refusal(fold, draft: dict) -> dict | None:
    """Return the refusal of the first rule that stands against `draft`, or None.

    `draft` is {"kind", "data", "job", ...}. The answer is {"rule", "title", "sentence", "do", "override"}.
    """
    job = find_job(fold.state, draft.get("job"))
    if draft["kind"] in KINDS and not KINDS[draft["kind"]].problem(draft["data"]):
        draft = known_by(fold.state, draft)
    for rule in _ORDER:
        found = rule.refuse(fold, draft, job)
        if found:
            return found
    return None
