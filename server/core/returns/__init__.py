"""What the counter looks at in a returned unit, one rule a file.

In this order: `label` (is it on record), `evidence` (what its record from another shop proves), `place`
(may it be here), `part` (is it the part claimed),
`serial` (is its serial number no other's), `verdict` (what proves that it is bad), `custody` (was its
label read at every handover), `photos`, `before` (was it returned before), `others` (did it come back at
another counter of the chain), `unasked` (could those be asked), `record` (is the log as it was written),
`job` (is it closed), `window` (is it in time).

A rule is `look(state, case) -> check | None`; None where it has nothing to look at, which is so for
most rules when no record is here. A check is made by `check()`: "pass", "hold" where something is
missing that may still come, "fail" where the record speaks against it, "note"
where something is to be known that speaks neither way. One "fail" proposes to
refuse, else one "hold" to hold, else the unit is accepted. The clerk decides.
"""

from . import before
from . import custody
from . import evidence
from . import job
from . import label
from . import others
from . import part
from . import photos
from . import place
from . import record
from . import serial
from . import unasked
from . import verdict
from . import window

RULES = (
    ("label", label),
    ("evidence", evidence),
    ("place", place),
    ("part", part),
    ("serial", serial),
    ("verdict", verdict),
    ("custody", custody),
    ("photos", photos),
    ("before", before),
    ("others", others),
    ("unasked", unasked),
    ("record", record),
    ("job", job),
    ("window", window),
)


def checks(state, case: dict) -> list[dict]:
    """Return the check of every rule that has something to look at, in the order of the rules."""
    made = []
    for name, rule in RULES:
        found = rule.look(state, case)
        if found:
            found["rule"] = name
            made.append(found)
    return made


def proposed(made: list) -> str:
    """Return what the checks come to: "accept", "hold" or "refuse"."""
    standings = [each["state"] for each in made]
    if "fail" in standings:
        return "refuse"
    return "hold" if "hold" in standings else "accept"
