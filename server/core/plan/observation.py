"""What a test made in some state would show, given which suspects are present.

Shared by the look-ahead (many rough looks) and the outlook (a few exact ones). The parents of a
reading are split once into suspects, which are tied to each other by the evidence, and the others,
which are not and can be averaged on the spot.
"""

from collections import namedtuple

from ..infer.case import NOBODY
from .moves import NEW
from .moves import State

# One position to be read. `suspects` is a mask; `others` a list of (cause, chance); `bare` the
# chance of clean with no cause at all, `quiet` the same averaged over the others; `number` tells
# it from any other reading of this belief.
Reading = namedtuple("Reading", ("place", "suspects", "others", "bare", "quiet", "number"))


class Observation:
    """Readings to come, for one belief."""

    def __init__(self, belief):
        self.belief = belief
        self.model = belief.model
        self.case = belief.model.case
        rates = self.case.rates
        self.hidden = 1.0 - rates["shows"]
        self.quiet = 1.0 - rates["false_alarm"]
        self.hides = [1.0]
        for _ in range(8):
            self.hides.append(self.hides[-1] * self.hidden)
        # Where units lie in the hand, the next move fills what is empty.
        fills = bool(self.case.now.loose)
        self._read = [place for place, unit in enumerate(self.model.fitted) if unit != NOBODY or fills]
        self._readings = {}
        model = self.model
        self._always = 0
        for rows in model.circuits + model.feeds + [model.controls]:
            self._always |= self._mask([rows[-1]])

    def _mask(self, causes: list) -> int:
        mask = 0
        for cause in causes:
            if cause in self.belief.bit:
                mask |= 1 << self.belief.bit[cause]
        return mask

    def now(self) -> State:
        """Return what is where now."""
        return State(self.model.fitted, self.model.blockable, (), self.model.hanging)

    def live(self, state: State) -> int:
        """Return the mask of the suspects that would still act in this state."""
        causes = []
        for place, unit in enumerate(state.fitted):
            if unit >= 0:
                causes.append(self.model.unit[unit])
            if state.blockable[place]:
                causes.append(self.model.blocked[place])
        return (self._always & ~self._mask(state.repaired)) | self._mask(causes)

    def own(self, state: State, place: int) -> int:
        """Return the mask of the suspects that act on this position alone."""
        causes = [self.model.circuits[place][-1]]
        if state.fitted[place] >= 0:
            causes.append(self.model.unit[state.fitted[place]])
        if state.blockable[place]:
            causes.append(self.model.blocked[place])
        return self._mask([cause for cause in causes if cause not in state.repaired])

    def read(self) -> list:
        """Return the positions that a test now would read: those with a unit."""
        return self._read

    def reading(self, state: State, place: int, unplugged: bool) -> Reading:
        """Return what bears on the reading of a position; remembered, for it is asked often."""
        unit = NOBODY if unplugged else state.fitted[place]
        blockable = state.blockable[place] and not unplugged
        key = (place, unit, blockable, unplugged, state.repaired)
        if key not in self._readings:
            self._readings[key] = self._reading(place, unit, blockable, unplugged, state.repaired)
        return self._readings[key]

    def _reading(self, place: int, unit: int, blockable: bool, unplugged: bool, repaired: tuple) -> Reading:
        model = self.model
        causes = [model.circuits[place][-1], model.controls[-1]]
        if model.group[place] is not None:
            causes.append(model.feeds[model.group[place]][-1])
        if unit >= 0:
            causes.append(model.unit[unit])
        if blockable:
            causes.append(model.blocked[place])
        others = []
        kept = []
        for cause in sorted(causes):
            if cause in repaired:
                # What is repaired may be bad again: one cause more, numbered behind all that are there.
                others.append((len(model.names) + cause, self.case.rates[model.kinds[cause]]))
                continue
            kept.append(cause)
            if cause not in self.belief.bit:
                others.append((cause, self.belief.alone[cause]))
        if unit == NEW:
            # A number that no cause has: each new unit is one of its own.
            others.append((-1 - place, self.case.rates["unit"]))
        bare = self.quiet * (self.hidden if unplugged else 1.0)
        quiet = bare
        for _, chance in others:
            quiet = quiet * (1.0 - chance + chance * self.hidden)
        return Reading(place, self._mask(kept), others, bare, quiet, len(self._readings))


def count(mask: int) -> int:
    """Return how many bits are set."""
    n = 0
    while mask:
        mask &= mask - 1
        n += 1
    return n
