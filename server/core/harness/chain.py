"""A chain of segments with one fault in it, and how its checks read.

A fault is of one kind in one segment. A check reads bad with the chance `sees` where the fault is one of
those that it looks at, and else with the chance `false`; readings are independent given the fault. So the
weight of a fault is its share times the chance of each reading: exact, by enumeration. Faults of a segment
that every check reads alike are weighed as one.
That there is one fault is an assumption: a second one shows once the first is repaired.
"""

from collections import namedtuple

# `faults` is kind -> how often it is the fault, beside all others; `branch`: it lies beside the line.
Segment = namedtuple("Segment", ("id", "faults", "branch"))
# A check: the segments it looks at, the kinds of fault that it sees there (none named: every kind), the
# chances that it reads bad, the minutes it takes (0: read of old, no more made), the places that are reached
# for it, and the end to which it is made.
Probe = namedtuple("Probe", ("id", "segments", "kinds", "sees", "false", "minutes", "places", "to"))

# A check that is made again while warm is one of its own, under its id and this.
WARM = " warm"

# A segment is named from this chance on; a check is worth making while what it looks at has this one.
NAMED, WORTH = 0.97, 0.02


class Chain:
    """Segments from the unit to the control unit, and the checks of them."""

    def __init__(self, segments: tuple, probes: tuple, later: dict | None = None, before: dict | None = None):
        """Take segments and checks, each in order.

        `later` is (segment, kind) -> the list of checks from which on that fault is weighed; the others
        always were. `before` is check -> (list, chance): until that list it was taken to see with this
        chance.
        """
        self.segments = segments
        self.probes = probes
        self._before = before or {}
        # (index of the segment, share, whether each check sees it, from which list on)
        self.faults = _faults(segments, probes, later or {})
        # What was asked of it -> how it stands: for who asks the same again.
        self.kept: dict = {}

    def shares(self, since: int | None = None) -> list[float]:
        """Return each fault's weight before anything is read, by a list of checks, None for the latest."""
        return [fault[1] if since is None or fault[3] <= since else 0.0 for fault in self.faults]

    def read(self, weights: list[float], reads: dict, since: int | None = None) -> list[float]:
        """Return the weights after readings by a list: check -> "good", "bad", or what says nothing."""
        for n in range(len(self.probes)):
            read = reads.get(self.probes[n].id)
            if read in ("good", "bad"):
                weights = self.after(weights, n, read == "bad", since)
        return weights

    def after(self, weights: list[float], n: int, bad: bool, since: int | None = None) -> list[float]:
        """Return the weights after one more reading of a check, by its index."""
        probe = self.probes[n]
        sees = probe.sees
        if since is not None and probe.id in self._before and since < self._before[probe.id][0]:
            sees = self._before[probe.id][1]
        seen, other = (sees, probe.false) if bad else (1 - sees, 1 - probe.false)
        return [weights[m] * (seen if self.faults[m][2][n] else other) for m in range(len(weights))]

    def chances(self, weights: list[float]) -> list[float]:
        """Return the chance of each segment."""
        found, total = [0.0] * len(self.segments), 0.0
        for m in range(len(weights)):
            found[self.faults[m][0]] += weights[m]
            total += weights[m]
        return [each / total for each in found]

    def suspects(self, weights: list[float]) -> list[int]:
        """Return the fewest segments, by index and in order, that are sure enough between them."""
        chances = self.chances(weights)
        found, total = [], 0.0
        for n in sorted(range(len(chances)), key=lambda n: (-chances[n], n)):
            if total < NAMED:
                found.append(n)
                total += chances[n]
        return sorted(found)

    def seen(self, weights: list[float], n: int) -> float:
        """Return the chance that the fault is one of those that a check looks at."""
        seen, total = 0.0, 0.0
        for m in range(len(weights)):
            total += weights[m]
            if self.faults[m][2][n]:
                seen += weights[m]
        return seen / total

    def worthwhile(self, weights: list[float], left: list[int]) -> list[int]:
        """Return which of some checks, by index, look at enough."""
        return [n for n in left if self.seen(weights, n) >= WORTH]

    def unmade(self, reads: dict, warm: bool = False) -> list[int]:
        """Return the checks, by index, that are not read yet, worth making now or not, all warm or none."""
        left = []
        for n in range(len(self.probes)):
            probe = self.probes[n]
            if probe.minutes and probe.id not in reads and probe.id.endswith(WARM) == warm:
                left.append(n)
        return left


def _faults(segments: tuple, probes: tuple, later: dict) -> list[tuple]:
    found: list[tuple] = []
    for index in range(len(segments)):
        alike: dict = {}
        for kind in sorted(segments[index].faults):
            seen = tuple([_looks_at(probe, segments[index].id, kind) for probe in probes])
            each = (seen, later.get((segments[index].id, kind), 0))
            alike[each] = alike.get(each, 0) + segments[index].faults[kind]
        found.extend([(index, float(alike[each]), each[0], each[1]) for each in sorted(alike)])
    return found


def _looks_at(probe: Probe, segment: str, kind: str) -> bool:
    return segment in probe.segments and (not probe.kinds or kind in probe.kinds)
