"""A mean over several beliefs, where one of several cases is the true one and nobody knows which.

All of them are over the same causes under the same numbers. Each has the weight of how well it predicts
the readings (Bayes' rule); before them all are alike. A mixture answers what a belief and its variations
answer, so that whoever plans on one plans on the other. A cause that only some of them suspect, or
that they hold differently likely, is a suspect of the mixture: then nothing is left that ties readings to
come to the case that is true. An explanation names what is present of the suspects of its own belief.
"""

from . import explanations
from .ordering import in_order
from .scaled_float import SCALED_ONE
from .variations import Variations
from .variations import explanation

# Below this two chances of one cause are the same figure with other roundings.
_SAME = 1e-12
# Half a part per billion: an explanation below it is shown as nothing.
_LEAST = 5e-10


class Mixture:
    """The distribution over all causes, averaged over several beliefs."""

    def __init__(self, beliefs: list):
        self.beliefs = beliefs
        self.shares = _normalised([_weight(belief) for belief in beliefs])
        self.best = 0
        for n, share in enumerate(self.shares):
            if share > self.shares[self.best]:
                self.best = n
        self.model = beliefs[self.best].model
        self.suspects = [cause for cause in range(len(self.model.names)) if self._is_suspect(cause)]
        self.bit = {}
        for n, cause in enumerate(self.suspects):
            self.bit[cause] = n
        self.alone = list(beliefs[self.best].alone)
        for cause in self.suspects:
            self.alone[cause] = None
        self.ways = len(beliefs)

    def _is_suspect(self, cause: int) -> bool:
        first = self.beliefs[0].alone[cause]
        for belief in self.beliefs:
            chance = belief.alone[cause]
            if chance is None or abs(chance - first) > _SAME:
                return True
        return False

    def expects(self, scales: list) -> list:
        """Return, belief by belief, its share times the mean of the product of the scales."""
        found = []
        for belief, share in zip(self.beliefs, self.shares):
            mine = []
            for suspect, scale in scales:
                cause = self.suspects[suspect]
                if cause in belief.bit:
                    mine.append((belief.bit[cause], scale))
                else:
                    chance = belief.alone[cause]
                    share = share * (1.0 - chance + chance * scale)
            found.append(share * belief.expect(sorted(mine)))
        return found

    def expect(self, scales: list) -> float:
        """Return the mean of the product of the scales of the suspects that are present."""
        total = 0.0
        for part in self.expects(scales):
            total = total + part
        return total

    def marginals(self) -> list:
        """Return P(present) of every cause."""
        chances = [0.0] * len(self.alone)
        for belief, share in zip(self.beliefs, self.shares):
            for cause, chance in enumerate(belief.marginals()):
                chances[cause] = chances[cause] + share * chance
        return chances

    def absent(self, flags: list) -> float:
        """Return the probability that no suspect with a flag is present; each belief has its own."""
        total = 0.0
        for belief, share in zip(self.beliefs, self.shares):
            total = total + share * belief.absent(flags)
        return total

    def likeliest(self, most: int) -> list:
        """Return the likeliest (probability, subset), at most `most`, best first."""
        sums = {}
        for belief, share in zip(self.beliefs, self.shares):
            for chance, mask in explanations.likeliest(belief, most):
                spread = 0
                for n, cause in enumerate(belief.suspects):
                    if mask >> n & 1:
                        spread |= 1 << self.bit[cause]
                sums[spread] = sums.get(spread, 0.0) + share * chance
        rows = in_order([(-sums[mask], mask) for mask in sorted(sums)])
        return [(-less, mask) for less, mask in rows[:most] if -less >= _LEAST]


class MixedVariations:
    """The variations of all beliefs of a mixture together: each moves how likely a belief is, too."""

    def __init__(self, mixture):
        self.mixture = mixture
        self.sources = [Variations(belief) for belief in mixture.beliefs]
        self._shares = {}
        self._chances = {}

    def chance(self, what: str, factor: float, event: tuple) -> float:
        """Return the chance of an event as Variations.chance does."""
        key = (what, factor, event)
        if key not in self._chances:
            total = 0.0
            for n, share in enumerate(self._shares_at(what, factor)):
                total = total + share * self.sources[n].chance(what, factor, event)
            self._chances[key] = total
        return self._chances[key]

    def multiple(self, what: str, factor: float, mask: int) -> float:
        """Return what a variation multiplies the weight of a subset of the suspects by."""
        names = self.mixture.model.names
        event = explanation([names[cause] for n, cause in enumerate(self.mixture.suspects) if mask >> n & 1])
        now = self.chance("unit", 1.0, event)
        return self.chance(what, factor, event) / now if now > 0.0 else 1.0

    def _shares_at(self, what: str, factor: float) -> list:
        key = (what, factor)
        if key not in self._shares:
            self._shares[key] = _normalised([source.weight(what, factor) for source in self.sources])
        return self._shares[key]


def _weight(belief):
    """Return how well a belief predicts the readings; the constant factors are the same in all."""
    weight = SCALED_ONE * belief.total
    for cause in range(len(belief.model.names)):
        if cause not in belief.bit:
            absent, present = belief.model.weights(cause, SCALED_ONE, belief.model.rates)
            weight = weight * (absent + present)
    return weight


def _normalised(weights: list) -> list:
    total = SCALED_ONE * 0.0
    for weight in weights:
        total = total + weight
    return [weight / total for weight in weights]
