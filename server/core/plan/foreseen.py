"""Whether what a result would say would stand: the variations, for a test that is still to come.

Only the likeliest explanations are followed; what they leave out counts as being of the class that is
more frequent. It is asked only where a result would be sure enough.
"""

from ..infer.figures import WHOLE
from ..infer.figures import parts
from ..infer.holds import least
from ..infer.holds import varied
from ..infer.likelihoods import tilted
from ..infer.noisy_or import power
from ..infer.variations import READINGS
from .observation import Reading
from .observation import count

# An explanation with less of a result than this is not followed.
_NOTICED = 0.0001
# By so many causes of one class two likely explanations differ.
_APART = 2


class Foreseen:
    """The rule for results to come, for one belief."""

    def __init__(self, variations, observation, entries: list):
        self.variations = variations
        self.model = observation.model
        self.case = observation.case
        self.entries = entries
        self.kept = least(parts(self.case.confidence)) / WHOLE
        self.most_doubt = max(self.case.doubt.values())
        self.variants = varied(self.case.doubt)
        self.now = observation.hides
        self.hides = [self._hides(what, factor) for what, factor, _ in self.variants]

    def stands(self, result: tuple, share: float, mine) -> bool:
        """Tell whether an event that has this share of a result would stand then.

        The result is (readings, pattern, fresh causes, chance); `mine(mask, extra)` tells whether an
        explanation (suspects as a mask, fresh causes) is of the event.
        """
        if share < self.case.confidence:
            return False
        readings, pattern, fresh, chance = result
        if share >= self.kept * (share + (1.0 - share) * power(self.most_doubt, _APART)):
            return True
        rows = []
        known = 0.0
        for weight, mask in self.entries:
            for extra in extras(readings, pattern, mask):
                joint = weight * given(self.now, readings, pattern, mask, extra, fresh)
                if joint >= _NOTICED * chance:
                    known = known + joint
                    rows.append((weight, mask, extra, mine(mask, extra)))
        unknown = max(0.0, chance - known)
        for n, (what, factor, _) in enumerate(self.variants):
            here = [self._varied(reading, what, factor) for reading in readings]
            anew = [(cause, self._tilted(cause, prior, what, factor)) for cause, prior in fresh]
            with_it = 0.0
            without = unknown * max(1.0, factor)
            for weight, mask, extra, is_mine in rows:
                joint = weight * given(self.hides[n], here, pattern, mask, extra, anew)
                joint = joint * self.variations.multiple(what, factor, mask)
                if is_mine:
                    with_it = with_it + joint
                else:
                    without = without + joint
            if with_it * (1.0 - self.kept) < self.kept * without:
                return False
        return True

    def _hides(self, what: str, factor: float) -> list:
        hidden = 1.0 - self.case.rates["shows"]
        return self._powers(tilted(hidden, factor) if what == "miss" else hidden)

    def _powers(self, hidden: float) -> list:
        hides = [1.0]
        for _ in range(8):
            hides.append(hides[-1] * hidden)
        return hides

    def _varied(self, reading, what: str, factor: float):
        """Return a reading as it would be."""
        bare = reading.bare
        if what == "false_alarm":
            bare = 1.0 - tilted(self.case.rates["false_alarm"], factor)
        others = [(cause, self._tilted(cause, prior, what, factor)) for cause, prior in reading.others]
        return Reading(reading.place, reading.suspects, others, bare, reading.quiet, reading.number)

    def _tilted(self, cause: int, prior: float, what: str, factor: float) -> float:
        """Return the chance of a cause that is no suspect, as it would be."""
        kinds = self.model.kinds
        kind = "unit" if cause < 0 else kinds[cause % len(kinds)]
        return tilted(prior, factor) if kind == what and what not in READINGS else prior


def extras(readings: list, pattern: int, mask: int) -> list:
    """Return the fresh causes that may be behind what these suspects leave unexplained: none, or one."""
    tried = [[]]
    for n, reading in enumerate(readings):
        if pattern >> n & 1 and not mask & reading.suspects:
            tried.extend([[cause] for cause, _ in reading.others])
    return tried


def given(hides: list, readings: list, pattern: int, mask: int, extra: list, fresh: list) -> float:
    """Return P(result and exactly `extra` of the fresh causes | these suspects present)."""
    result = 1.0
    known = {}
    for cause, chance in fresh:
        known[cause] = True
        result = result * (chance if cause in extra else 1.0 - chance)
    others = {}
    for n, reading in enumerate(readings):
        k = count(mask & reading.suspects)
        for cause, chance in reading.others:
            if cause in known:
                k += 1 if cause in extra else 0
            else:
                times = others[cause][1] if cause in others else 0
                others[cause] = (chance, times + 1)
        clean = reading.bare * hides[k]
        result = result * (1.0 - clean if pattern >> n & 1 else clean)
    for cause in sorted(others):
        chance, times = others[cause]
        result = result * (1.0 - chance + chance * hidden(hides, times))
    return result


def hidden(hides: list, times: int) -> float:
    """Return the chance that a cause stays hidden in so many readings."""
    if times < len(hides):
        return hides[times]
    result = hides[-1]
    for _ in range(times - len(hides) + 1):
        result = result * hides[1]
    return result
