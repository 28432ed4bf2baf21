"""Whether what a result would say would stand: the variations, for a test that is still to come.

Only the likeliest explanations are followed; what they leave out counts as being of the class that is
more frequent. It is asked only where a result would be sure enough.
"""

from ..infer import variations
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

    def __init__(self, source, observation, entries: list):
        self.variations = source
        self.belief = observation.belief
        self.model = observation.model
        self.case = observation.case
        self.entries = entries
        self.kept = least(parts(self.case.confidence)) / WHOLE
        # Every clean reading of one cause may have been a miss; the test to come is one more.
        missed = max([0] + [once + again for once, again in zip(self.model.clean, self.model.again)])
        self.most_moved = power(max(self.case.doubt.values()), max(_APART, missed + 1))
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
        if share >= self.kept * (share + (1.0 - share) * self.most_moved):
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
            joints = []
            for weight, mask, extra, is_mine in rows:
                joint = weight * given(self.hides[n], here, pattern, mask, extra, anew)
                joints.append((joint * self.variations.multiple(what, factor, mask), is_mine))
            if not self._keeps(joints, unknown * max(1.0, factor)):
                return False
        return True

    def reads(self, rows: list, fresh: list, favoured: tuple, chance: float) -> bool:
        """Tell whether the favoured of some explanations would stand by a reading that no variation moves.

        `rows` are (joint chance, suspects as a mask, the fresh cause with them or None); `fresh` are (cause,
        chance); the favoured is (mask, fresh cause).
        """
        own = next(joint for joint, mask, extra in rows if (mask, extra) == favoured)
        if own < self.case.confidence * chance:
            return False
        unknown = chance
        for joint, _, _ in rows:
            unknown = unknown - joint
        for what, factor, _ in self.variants:
            joints = []
            for joint, mask, extra in rows:
                joint = joint * self.variations.multiple(what, factor, mask)
                for cause, before in fresh:
                    then = self._tilted(cause, before, what, factor)
                    joint = joint * (then / before if cause == extra else (1.0 - then) / (1.0 - before))
                joints.append((joint, (mask, extra) == favoured))
            if not self._keeps(joints, max(0.0, unknown) * max(1.0, factor)):
                return False
        return True

    def sure(self, cause: int, share: float, seen: float, unseen: float) -> bool:
        """Tell whether one cause that is no unit would be certain, at this share, by a reading of it alone.

        The reading is seen with the chance `seen` where the cause is there, else with `unseen`.
        """
        if share < self.case.confidence:
            return False
        name = self.model.names[cause]
        is_suspect = cause in self.belief.bit
        for what, factor, _ in self.variants:
            if is_suspect:
                chance = self.variations.chance(what, factor, variations.cause(name))
            else:
                chance = self._tilted(cause, self.belief.alone[cause], what, factor)
            if not self._keeps([(chance * seen, True)], (1.0 - chance) * unseen):
                return False
        return True

    def _keeps(self, joints: list, without: float) -> bool:
        """Tell whether an event keeps what it has to; `joints` are (chance, whether it is of the event)."""
        with_it = 0.0
        for joint, is_mine in joints:
            if is_mine:
                with_it = with_it + joint
            else:
                without = without + joint
        return with_it * (1.0 - self.kept) >= self.kept * without

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
    """Return the fresh causes that may be behind what these suspects leave unexplained.

    None, one, or the likeliest one of each position.
    """
    tried = [[]]
    own = []
    for n, reading in enumerate(readings):
        if pattern >> n & 1 and not mask & reading.suspects and reading.others:
            tried.extend([[cause] for cause, _ in reading.others])
            likeliest = max([chance for _, chance in reading.others])
            own.append(next(cause for cause, chance in reading.others if chance == likeliest))
    if len(own) > 1:
        tried.append(sorted(set(own)))
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
