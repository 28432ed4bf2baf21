"""What is believed about every cause after the evidence, worked out exactly.

A clean reading multiplies the weight of each of its parents by (1 - shows), one by one, so it ties
nothing together (Heckerman's Quickscore observation, 1989); so does a tick that is heard. Only faulted
readings and silence tie causes. The causes shared by several such positions (feeds, control unit) are
held at each of their states in turn (cutset conditioning, Pearl 1988); given those, the suspects fall
apart into components that are weighed alone.
"""

from collections import namedtuple

from ..errors import BadInput
from ..messages import message
from .elimination import Eliminated
from .factors import Shown
from .factors import Unheard
from .noisy_or import chances_faulted
from .noisy_or import power
from .noisy_or import ticks_on
from .scaled_float import SCALED_ONE
from .table import Table

# Up to here a table of all subsets is the quicker way.
LARGEST_TABLE = 10
# More shared suspects than this are not held at each state but eliminated like the others.
LARGEST_CUTSET = 5
# Products below this would soon lose digits: work with wide numbers instead.
SMALLEST = 1e-200
# Shares below this are lost in the rounding of a float anyway.
NOTHING = 1e-16

# One state of the shared suspects: its share, the subset present, and the components given it.
Branch = namedtuple("Branch", ("share", "present", "components"))


class Belief:
    """The exact distribution over all causes.

    Suspects are numbered from 0 in the order of `suspects`; a subset of them is a bit mask.
    """

    # A mixture (mixture.py) is a mean over several.
    ways = 1

    def __init__(self, model):
        self.model = model
        self.suspects = model.suspects()
        self.bit = {}
        for n, cause in enumerate(self.suspects):
            self.bit[cause] = n
        self.cutset = self._cutset()
        self.members = self._components()
        self.where = {}
        for c, members in enumerate(self.members):
            for n, suspect in enumerate(members):
                self.where[suspect] = (c, n)
        # How well the suspects fit the readings, before it is divided out, and every branch there is.
        self.total, self.every = self.weighed(model.rates)
        self.branches = [branch for branch in self.every if branch.share > NOTHING]
        self.alone = self._alone()

    def _cutset(self) -> list:
        """Return the suspects that several faulted or silent positions share."""
        model = self.model
        counts = {}
        for parents in self._tied():
            for cause in parents:
                if model.kinds[cause] in ("feed", "control"):
                    counts[cause] = counts.get(cause, 0) + 1
        shared = [self.bit[cause] for cause in sorted(counts) if counts[cause] > 1]
        return shared if len(shared) <= LARGEST_CUTSET else []

    def _tied(self) -> list:
        """Return the causes behind each faulted or silent reading, each set of them once of a kind."""
        return [parents for parents, _ in sorted(self.model.faulted)] + sorted(self.model.silent)

    def _components(self) -> list:
        """Return the suspects that are no part of the cutset, joined by what ties them."""
        group = {}
        for n in range(len(self.suspects)):
            if n not in self.cutset:
                group[n] = [n]
        for parents in self._tied():
            first = None
            for cause in parents:
                n = self.bit[cause]
                if n in self.cutset:
                    continue
                if first is None:
                    first = group[n]
                elif group[n] is not first:
                    joined = group[n]
                    first.extend(joined)
                    for other in joined:
                        group[other] = first
        return sorted([sorted(group[n]) for n in sorted(group) if min(group[n]) == n])

    def weighed(self, rates: dict) -> tuple:
        """Return (the total weight, every branch) at the given rates of a reading."""
        return self._weigh(1.0, rates) or self._weigh(SCALED_ONE, rates)

    def _weigh(self, one, rates: dict) -> tuple:
        """Weigh every state of the cutset; nothing when floats are too narrow for it."""
        weights = [self.model.weights(cause, one, rates) for cause in self.suspects]
        factors = self._factors(one, rates)
        branches = []
        known = {}
        total = one * 0.0
        for state in range(1 << len(self.cutset)):
            present = 0
            weight = one
            for n, suspect in enumerate(self.cutset):
                here = state >> n & 1
                weight = weight * weights[suspect][here]
                present |= here << suspect
            if weight == 0:
                continue
            components = []
            for c, members in enumerate(self.members):
                # Where the shared causes come to the same in a component, it is the same.
                keys = [factor.key(present) for factor in factors[c]]
                key = (c, tuple(keys))
                if key not in known:
                    mine = [weights[n] for n in members]
                    given = [(factor.causes, factor.states(keys[n])) for n, factor in enumerate(factors[c])]
                    kind = Table if len(members) <= LARGEST_TABLE else Eliminated
                    known[key] = kind(mine, given, one)
                component = known[key]
                components.append(component)
                weight = weight * component.total
            if weight == 0:
                continue
            branches.append((weight, present, components))
            total = total + weight
        if total < SMALLEST and one is not SCALED_ONE:
            return ()
        if total == 0:
            raise _impossible()
        return total, [Branch(weight / total, present, parts) for weight, present, parts in branches]

    def _factors(self, one, rates: dict) -> list:
        """Return per component what ties its causes."""
        factors = [[] for _ in self.members]
        for key in sorted(self.model.faulted):
            parents, extra = key
            home, local, shared = self._split(parents)
            times = self.model.faulted[key]
            chances = chances_faulted(len(parents) + extra, rates)
            values = [power(one * chance, times, one) for chance in chances]
            numbers = [number for number, _ in local]
            factors[home].append(Shown(numbers, [n for n, _ in shared], extra, values))
        for parents in sorted(self.model.silent):
            home, local, shared = self._split(parents)
            local = [(number, ticks_on(self.model.kinds[cause], rates)) for number, cause in local]
            shared = [(n, ticks_on(self.model.kinds[cause], rates)) for n, cause in shared]
            quiet = 1.0 - rates["tick_false"]
            factors[home].append(Unheard(local, shared, quiet, self.model.silent[parents], one))
        return factors

    def _split(self, parents: tuple) -> tuple:
        """Return (component, its causes as (number in it, cause), shared ones as (suspect, cause))."""
        home = 0
        local = []
        shared = []
        for cause in parents:
            n = self.bit[cause]
            if n in self.where:
                home, number = self.where[n]
                local.append((number, cause))
            else:
                shared.append((n, cause))
        return home, local, shared

    def _alone(self) -> list:
        """Return P(present) for each cause that is no suspect, None for the suspects."""
        chances = []
        for cause in range(len(self.model.names)):
            if cause in self.bit:
                chances.append(None)
                continue
            absent, present = self.model.weights(cause, 1.0, self.model.rates)
            if absent + present < SMALLEST:
                absent, present = self.model.weights(cause, SCALED_ONE, self.model.rates)
            both = absent + present
            if both == 0:
                raise _impossible()
            chances.append(present / both)
        return chances

    def marginals(self) -> list:
        """Return P(present) of every cause."""
        chances = list(self.alone)
        for cause in self.suspects:
            chances[cause] = 0.0
        for branch in self.branches:
            for n in self.cutset:
                if branch.present >> n & 1:
                    chances[self.suspects[n]] += branch.share
            for c, members in enumerate(self.members):
                inside = branch.components[c].marginals()
                for number, n in enumerate(members):
                    chances[self.suspects[n]] += branch.share * inside[number]
        return chances

    def absent(self, flags: list) -> float:
        """Return the probability that no suspect with a flag (one a cause) is present."""
        scales = [(n, 0.0) for n, cause in enumerate(self.suspects) if flags[cause]]
        return self.expect(scales)

    def expects(self, scales: list) -> list:
        """Return what `expect` does, way by way: there is one."""
        return [self.expect(scales)]

    def expect(self, scales: list) -> float:
        """Return the mean of the product of the scales of the suspects that are present."""
        shared = []
        touched = {}
        for suspect, scale in scales:
            if suspect in self.where:
                c, number = self.where[suspect]
                if c not in touched:
                    touched[c] = []
                touched[c].append((number, scale))
            else:
                shared.append((suspect, scale))
        local = [(c, tuple(touched[c])) for c in sorted(touched)]
        total = 0.0
        for branch in self.branches:
            result = branch.share
            for suspect, scale in shared:
                if branch.present >> suspect & 1:
                    result = result * scale
            for c, inside in local:
                result = result * branch.components[c].expect(inside)
            total = total + result
        return total


def _impossible() -> BadInput:
    return BadInput("tests", (message("case-ruled-out"),), message("case-possible"))
