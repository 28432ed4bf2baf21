"""The explanations: which subset of the suspects is the one that is present.

There are too many subsets to weigh them all, but the likeliest ones can be listed without looking
at the rest, because components are independent of each other within a branch.
"""

from .figures import WHOLE
from .figures import parts
from .ordering import in_order

# Half a part per billion: anything below is shown as nothing.
_LEAST = 0.5 / WHOLE


def likeliest(belief, most: int) -> list:
    """Return the likeliest (probability, subset), at most `most`, best first, each exact."""
    rows = []
    for branch in belief.branches:
        if branch.share < _LEAST:
            continue
        partial = [(branch.share, branch.present)]
        for c, members in enumerate(belief.members):
            entries = branch.components[c].likeliest(_LEAST / branch.share, most)
            entries = [(share, _spread(mask, members)) for share, mask in entries]
            partial = _products(partial, entries, most)
        rows.extend(partial)
    return _best(rows, most)


def _products(left: list, right: list, most: int) -> list:
    """Return the best `most` products of two lists, both best first.

    The pair at places i and j has at least (i + 1) * (j + 1) - 1 others that are as good, so only
    the first few pairs of each row need a look.
    """
    pairs = []
    for i, (share, mask) in enumerate(left):
        for j in range(min(len(right), most // (i + 1))):
            chance, more = right[j]
            if share * chance < _LEAST:
                break
            pairs.append((share * chance, mask | more))
    return _best(pairs, most)


def _best(entries: list, most: int) -> list:
    """Return the entries best first, cut to `most`."""
    rows = in_order([(-share, mask) for share, mask in entries])
    return [(-less, mask) for less, mask in rows[:most]]


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


def minimal(readings: list, most: int) -> list:
    """Return the smallest sets of causes that leave no reading unexplained, up to `most` causes each.

    A reading is the list of its parents; a set explains it when it holds one of them, and it is
    minimal when no cause can be left out (Reiter 1987). A tree without pruning: at the first reading
    not explained yet, try each parent. Pruning early would lose sets when one reading's parents
    contain another's (Greiner, Smith and Wilkerson 1989), so what is not minimal goes at the end.
    """
    sets = []
    seen = {}
    waiting = [()]
    while waiting:
        causes = waiting.pop()
        missed = unexplained(readings, causes)
        if not missed:
            if len([cause for cause in causes if not unexplained(readings, _less(causes, cause))]) == 0:
                sets.append(list(causes))
            continue
        if len(causes) == most:
            continue
        for parent in missed[0]:
            longer = tuple(sorted(causes + (parent,)))
            if longer not in seen:
                seen[longer] = True
                waiting.append(longer)
    return sorted(sets)


def unexplained(readings: list, causes) -> list:
    """Return the readings that none of the causes is a parent of."""
    return [parents for parents in readings if not [cause for cause in parents if cause in causes]]


def _less(causes, one) -> list:
    return [cause for cause in causes if cause != one]
