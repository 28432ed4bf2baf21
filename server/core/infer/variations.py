"""What would be believed if one of the rates were another: the assumptions, turned one at a time.

The odds of every cause of one class (unit, circuit, blocked, feed, control), the odds of a miss
(1 - shows) or those of a false alarm are multiplied by a factor. Where a cause was repaired, what
came after belongs to the class too; a prior or likelihood of its own moves with it; a probability of 0
or 1 stays. Rates of a meter and of listening are not touched.

Other prior odds are no new inference but a reweighting, exact however much is unlisted: with K of the
class among the suspects present, P'(E) = P(E) * f^k(E) / E[f^K]. Causes that are no suspects stand in no
reading that ties them to the others, so they fall out of it. Another miss or false alarm changes the
readings: they are weighed again, over the same components; clean readings at once move with the miss.
"""

from .likelihoods import tilted
from .scaled_float import SCALED_ONE

CLASSES = ("unit", "circuit", "blocked", "feed", "control")
READINGS = ("miss", "false_alarm")


def explanation(causes) -> tuple:
    """The event that just these suspects are present."""
    return ("explanation", tuple(sorted(causes)))


def cause(name: str) -> tuple:
    """The event that one suspect is present, whatever else is."""
    return ("cause", name)


# The event that no live suspect is present.
CLEAR = ("clear", "")


class Variations:
    """Answers for one belief what a chance would be with the odds of one class multiplied."""

    def __init__(self, belief):
        self.belief = belief
        self.model = belief.model
        self._masks = {}
        self._classes = {}
        self._totals = {}
        self._reread = {}
        self._multiples = {}

    def chance(self, what: str, factor: float, event: tuple) -> float:
        """Return the chance of an event with the odds of `what` times `factor`."""
        masks = self._event(event)
        if masks is None:
            return 0.0
        present, absent = masks
        if what in READINGS:
            return self._sum(self._again(what, factor)[1], present, absent, 0, 1.0)
        counted = self._counted(what)
        if not counted:
            return self._sum(self.belief.every, present, absent, 0, 1.0)
        return self._sum(self.belief.every, present, absent, counted, factor) / self._total(what, factor)

    def multiple(self, what: str, factor: float, mask: int) -> float:
        """Return what a variation multiplies the weight of a subset of the suspects by."""
        if what not in READINGS:
            return multiplied(1.0, factor, mask & self._counted(what))
        key = (what, factor, mask)
        if key not in self._multiples:
            now = self._exactly(self.belief.every, mask)
            then = self._exactly(self._again(what, factor)[1], mask)
            self._multiples[key] = then / now if now > 0.0 else 1.0
        return self._multiples[key]

    def _exactly(self, branches: list, mask: int) -> float:
        """Return the chance of just this subset of the suspects."""
        return self._sum(branches, mask, (1 << len(self.belief.suspects)) - 1 - mask, 0, 1.0)

    def weight(self, what: str, factor: float):
        """Return how likely all readings would be, but for what any case with these causes shares."""
        model = self.model
        rates = model.rates
        if what in READINGS:
            rates = self._rates(what, factor)
            weight = SCALED_ONE * self._again(what, factor)[0]
        else:
            weight = SCALED_ONE * self.belief.total * self._total(what, factor)
        for number, kind in enumerate(model.kinds):
            if number in self.belief.bit:
                continue
            absent, present = model.weights(number, SCALED_ONE, rates)
            weight = weight * (absent + (present * factor if kind == what else present))
        return weight

    def _total(self, what: str, factor: float) -> float:
        """Return E[f^K]."""
        key = (what, factor)
        if key not in self._totals:
            self._totals[key] = self._sum(self.belief.every, 0, 0, self._counted(what), factor)
        return self._totals[key]

    def _again(self, what: str, factor: float) -> tuple:
        """Return the weight and the branches with another rate of the readings."""
        key = (what, factor)
        if key not in self._reread:
            self._reread[key] = self.belief.weighed(self._rates(what, factor))
        return self._reread[key]

    def _rates(self, what: str, factor: float) -> dict:
        rates = dict(self.model.rates)
        if what == "miss":
            rates["shows"] = 1.0 - tilted(1.0 - rates["shows"], factor)
        else:
            rates["false_alarm"] = tilted(rates["false_alarm"], factor)
        return rates

    def _counted(self, what: str) -> int:
        """Return the suspects of a class as a mask."""
        if what not in self._classes:
            self._classes[what] = of_class(self.belief, what)
        return self._classes[what]

    def _event(self, event: tuple) -> tuple | None:
        """Return an event as the masks of what is present and what is absent; None when it can't be."""
        if event not in self._masks:
            self._masks[event] = self._as_masks(event)
        return self._masks[event]

    def _as_masks(self, event: tuple) -> tuple | None:
        suspects = self.belief.suspects
        names = [self.model.names[suspect] for suspect in suspects]
        kind, what = event
        if kind == "clear":
            live = self.model.live()
            return 0, _mask([n for n, suspect in enumerate(suspects) if live[suspect]])
        wanted = [what] if kind == "cause" else what
        for name in wanted:
            if name not in names:
                return None
        present = _mask([n for n, name in enumerate(names) if name in wanted])
        return present, (1 << len(suspects)) - 1 - present if kind == "explanation" else 0

    def _sum(self, branches: list, present: int, absent: int, counted: int, factor: float) -> float:
        """Return the mean of factor ** (how many of `counted` are present) where the event is true."""
        local = []
        shared = 0
        for n in self.belief.cutset:
            shared |= 1 << n
        for c in range(len(self.belief.members)):
            mine = (self._local(c, present), self._local(c, absent), self._local(c, counted))
            if mine != (0, 0, 0):
                local.append((c, mine[0], mine[1], mine[2]))
        total = 0.0
        for branch in branches:
            if branch.present & absent or present & shared & ~branch.present:
                continue
            result = multiplied(branch.share, factor, branch.present & counted)
            for c, here, gone, counts in local:
                result = result * branch.components[c].chance(here, gone, counts, factor)
            total = total + result
        return total

    def _local(self, c: int, mask: int) -> int:
        """Return a subset of all suspects as one of a component's."""
        local = 0
        for number, n in enumerate(self.belief.members[c]):
            if mask >> n & 1:
                local |= 1 << number
        return local


def of_class(belief, what: str) -> int:
    """Return the suspects of a class of causes as a mask."""
    kinds = belief.model.kinds
    return _mask([n for n, suspect in enumerate(belief.suspects) if kinds[suspect] == what])


def multiplied(value: float, factor: float, mask: int) -> float:
    """Return a value times the factor once for each bit of a mask."""
    while mask:
        value = value * factor
        mask &= mask - 1
    return value


def _mask(numbers: list) -> int:
    mask = 0
    for n in numbers:
        mask |= 1 << n
    return mask
