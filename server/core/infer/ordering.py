"""Sorting that takes about as long on the phone as it should.

MicroPython sorts with a plain quicksort that calls a key function at each comparison: on a list
that is nearly in order already, as ours are, that takes seconds. This merges the runs instead.
"""


def in_order(items: list) -> list:
    """Return a sorted copy; the items are tuples, no two of them equal."""
    runs = _runs(items)
    while len(runs) > 1:
        merged = []
        for n in range(0, len(runs) - 1, 2):
            merged.append(_merge(runs[n], runs[n + 1]))
        if len(runs) % 2:
            merged.append(runs[-1])
        runs = merged
    return runs[0] if runs else []


def by_chance_per_minute(chances: list, costs: list) -> list:
    """Return the numbers of independent checks in the order of least expected cost.

    The one with the highest chance for its cost comes first. That is the best order when one fault
    is there, each check sees it for sure, and none makes another cheaper (Mitten 1960; Heckerman,
    Breese & Rommelse, Decision-Theoretic Troubleshooting, 1995); with several faults it is a rule of
    thumb. What costs nothing comes before all else.
    """
    rows = []
    for n, chance in enumerate(chances):
        worth = int(chance / costs[n] * 1000000000 + 0.5) if costs[n] > 0 else 0
        rows.append((1 if costs[n] > 0 else 0, -worth, n))
    return [n for _, _, n in sorted(rows)]


def _runs(items: list) -> list:
    """Cut the list where it stops rising."""
    runs = []
    for item in items:
        if runs and runs[-1][-1] < item:
            runs[-1].append(item)
        else:
            runs.append([item])
    return runs


def _merge(left: list, right: list) -> list:
    merged = []
    i = 0
    j = 0
    while i < len(left) and j < len(right):
        if left[i] < right[j]:
            merged.append(left[i])
            i += 1
        else:
            merged.append(right[j])
            j += 1
    merged.extend(left[i:])
    merged.extend(right[j:])
    return merged
