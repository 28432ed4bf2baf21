"""The explanations: which subset of the suspects is the one that is present.

There are too many subsets to weigh them all, but the likeliest ones can be listed without looking
at the rest: a branch is followed only while its best completion still reaches the threshold.
"""

from .figures import WHOLE
from .figures import parts
from .ordering import in_order

# Half a part per billion: anything below is shown as nothing.
_LEAST = 0.5 / WHOLE


def likeliest(belief, most: int) -> list:
    """Return the likeliest (probability, subset), at most `most`, best first, each exact."""
    least = _LEAST
    found = _at_least(belief, least, most)
    while found is None:
        least = least * 8
        found = _at_least(belief, least, most)
    return [(-less, mask) for less, mask in in_order([(-share, mask) for share, mask in found])]


def _at_least(belief, least: float, most: int):
    """Return the subsets that reach `least`; None when they are more than `most`."""
    found = []
    for branch in belief.branches:
        if branch.share < least:
            continue
        parts_of = []
        for c, members in enumerate(belief.members):
            entries = branch.components[c].likeliest(least / branch.share, most)
            if entries is None:
                return None
            parts_of.append([(share, _spread(mask, members)) for share, mask in entries])
        partial = _combined(parts_of, branch, least, most)
        if partial is None:
            return None
        found.extend(partial)
        if len(found) > most:
            return None
    return found


def _combined(parts_of: list, branch, least: float, most: int):
    """Return the subsets of one branch that reach `least`, one component after the other."""
    best = [1.0]
    for entries in reversed(parts_of):
        if not entries:
            return []
        best.append(best[-1] * entries[0][0])
    partial = [(branch.share, branch.present)]
    for n, entries in enumerate(parts_of):
        rest = best[len(parts_of) - 1 - n]
        longer = []
        for share, mask in partial:
            for chance, more in entries:
                together = share * chance
                if together * rest < least:
                    break
                longer.append((together, mask | more))
            if len(longer) > most:
                return None
        partial = longer
    return partial


def _spread(mask: int, members: list) -> int:
    """Return a component's subset as a subset of all suspects."""
    spread = 0
    for n, suspect in enumerate(members):
        if mask >> n & 1:
            spread |= 1 << suspect
    return spread


def named(belief, entries: list) -> list:
    """Return the explanations as they are shown, best first."""
    rows = []
    for chance, mask in entries:
        causes = []
        for n, cause in enumerate(belief.suspects):
            if mask >> n & 1:
                causes.append(belief.model.names[cause])
        causes.sort()
        rows.append((-parts(chance), len(causes), causes))
    return [{"causes": causes, "probability": -less} for less, _, causes in in_order(rows)]


def verdict(explanations: list, confidence: float):
    """Return the likeliest explanation when it names something and is likely enough."""
    if not explanations:
        return None
    best = explanations[0]
    if not best["causes"] or best["probability"] < parts(confidence):
        return None
    return {"causes": list(best["causes"]), "probability": best["probability"]}
