"""What the record that another shop sealed proves of a unit, once it was checked and kept here.

Each rule was asked of that record as the counter there would ask it; what hangs on the part in hand, and on
this counter's own record, is for the rules here.
"""

from ..messages import all_of
from ..messages import message
from .about import about
from .check import check

# What a counter looks at by itself, whoever recorded the rest.
_OWN = ("label", "evidence", "part", "others", "unasked")


def look(state, case):
    """Refuse or hold for what the record itself leaves against the unit."""
    kept = of(case["unit"])
    if kept is None or not case["elsewhere"]:
        return None
    for field, standing, title, said in (
        ("fails", "fail", "returns-evidence-fail-title", "returns-evidence-fail"),
        ("holds", "hold", "returns-evidence-hold-title", "returns-evidence-hold"),
        ("passes", "pass", "returns-evidence-title", "returns-evidence"),
    ):
        if kept[field]:
            rules = all_of([about(rule) for rule in kept[field]])
            return check(standing, message(title), message(said, maker=kept["maker"], rules=rules))
    return None


def of(unit: dict | None) -> dict | None:
    """Return the record from elsewhere that is evidence for a unit, or None."""
    return unit.get("evidence") if unit else None


def weighed(checks: list, agrees: bool, has_pictures: bool = True) -> dict:
    """Return which rules a record passes, leaves open and fails, {"passes", "holds", "fails"}.

    `checks` are those of the unit by that record alone; one that does not come to what was sealed (`agrees`)
    leaves open whether it is as it was written. Where none of the pictures that it names is in its file
    (`has_pictures`), it leaves open that there are any.
    """
    found = {"passes": [], "holds": [], "fails": []}
    for each in checks:
        if each["rule"] in _OWN:
            continue
        standing = each["state"]
        if each["rule"] == "record" and standing == "pass" and not agrees:
            standing = "hold"
        if each["rule"] == "photos" and not has_pictures:
            standing = "hold"
        found[{"pass": "passes", "hold": "holds", "fail": "fails"}[standing]].append(each["rule"])
    return found
