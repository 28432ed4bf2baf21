"""The outlook of one move: each possible result, its exact chance, and what it would then say.

The chance that certain positions all read clean is a mean of a product over causes, which the
belief gives exactly. The chance of 'these show a fault, those are clean' follows from such means
by inclusion and exclusion.
"""

from ..infer import reasons
from ..infer.entropy import bits
from ..infer.figures import WHOLE
from ..infer.figures import apportion
from ..infer.figures import parts
from ..infer.figures import thousandths
from ..infer.ordering import in_order
from .foreseen import Foreseen
from .foreseen import extras
from .foreseen import given
from .foreseen import hidden
from .moves import after
from .observation import count

# A result below this gets a general answer instead of a worked-out one.
_WORKED_OUT = 0.004


class Outlook:
    """Works out what a test after a move would show."""

    def __init__(self, variations, observation, entries: list):
        self.foreseen = Foreseen(variations, observation, entries)
        self.observation = observation
        self.belief = observation.belief
        self.case = observation.case
        self.entries = entries

    def of_test(self, state, move, places: list) -> tuple:
        """Return (outcomes as shown, bits) of a test that is read at these positions."""
        reached = after(state, move)
        readings = []
        for place in places:
            readings.append(self.observation.reading(reached, place, self._unplugged(move, place)))
        clean = [self._clean_by_way(readings, T, []) for T in range(1 << len(readings))]
        by_way = [
            _exactly([each[n] for each in clean], len(readings)) if self.belief.ways > 1 else []
            for n in range(self.belief.ways)
        ]
        chances = _exactly([_sum(each) for each in clean], len(readings))
        rows = []
        shares = apportion(chances)
        live = self.observation.live(reached)
        for pattern, share in enumerate(shares):
            if share > 0:
                faulted = [self._id(places[n]) for n in range(len(places)) if pattern >> n & 1]
                then = self._then(move, readings, pattern, chances[pattern], live)
                rows.append((-share, len(faulted), faulted, then, pattern))
        outcomes = []
        for less, _, faulted, then, pattern in in_order(rows):
            outcomes.append({"faulted": faulted, "chance": -less, "then": then})
            if self.belief.ways > 1:
                # How likely each way is after this result.
                shares = [each[pattern] for each in by_way]
                whole = _sum(shares)
                outcomes[-1]["ways"] = [parts(share / whole) if whole > 0.0 else 0 for share in shares]
        return outcomes, self._bits(readings, chances)

    def of_meter(self, move) -> tuple:
        """Return (outcomes as shown, bits) of the checks of one circuit."""
        rates = self.case.rates
        cause = self.observation.model.circuits[move.places[0]][-1]
        if cause in self.belief.bit:
            n = self.belief.bit[cause]
            present = 1.0 - self.belief.expect([(n, 0.0)])
        else:
            present = self.belief.alone[cause]
        bad = present * rates["meter_sees"] + (1.0 - present) * rates["meter_false"]
        shares = apportion([1.0 - bad, bad])
        name = self.case.positions[move.places[0]].name
        outcomes = []
        for reads, share, chance in (("good", shares[0], 1.0 - bad), ("bad", shares[1], bad)):
            if share > 0:
                seen = rates["meter_sees"] if reads == "bad" else 1.0 - rates["meter_sees"]
                unseen = rates["meter_false"] if reads == "bad" else 1.0 - rates["meter_false"]
                stands = self.foreseen.sure(cause, present * seen / chance, seen, unseen)
                then = reasons.circuit_after(name, parts(present * seen / chance), stands)
                outcomes.append((-share, {"reads": reads, "chance": share, "then": then}))
        if len(outcomes) == 2 and outcomes[1][0] < outcomes[0][0]:
            outcomes.reverse()
        noise = present * _two_way(rates["meter_sees"])
        noise = noise + (1.0 - present) * _two_way(rates["meter_false"])
        return [outcome for _, outcome in outcomes], thousandths(_two_way(bad) - noise)

    def _unplugged(self, move, place: int) -> bool:
        return move.kind == "unplug" and place in move.places

    def _id(self, place: int) -> str:
        return self.case.positions[place].id

    def _all_clean(self, readings: list, chosen: int, absent: list) -> float:
        """Return the chance that the chosen readings are all clean.

        `absent`: causes that must be absent besides, so that it is the chance of both.
        """
        return _sum(self._clean_by_way(readings, chosen, absent))

    def _clean_by_way(self, readings: list, chosen: int, absent: list) -> list:
        """Return the same, way by way of a mixture, each with the share of the way."""
        hides = self.observation.hides
        result = 1.0
        suspects = {}
        others = {}
        for cause, chance in absent:
            if cause in self.belief.bit:
                suspects[self.belief.bit[cause]] = 0.0
            else:
                result = result * (1.0 - chance)
                others[cause] = None
        for n, reading in enumerate(readings):
            if not chosen >> n & 1:
                continue
            result = result * reading.bare
            mask = reading.suspects
            suspect = 0
            while mask:
                if mask & 1:
                    suspects[suspect] = suspects.get(suspect, 1.0) * self.observation.hidden
                mask >>= 1
                suspect += 1
            for cause, chance in reading.others:
                if cause not in others:
                    others[cause] = (chance, 1)
                elif others[cause] is not None:
                    others[cause] = (chance, others[cause][1] + 1)
        for cause in sorted(others):
            if others[cause] is not None:
                chance, times = others[cause]
                result = result * (1.0 - chance + chance * hidden(hides, times))
        return [result * mean for mean in self.belief.expects(sorted(suspects.items()))]

    def _bits(self, readings: list, chances: list) -> int:
        """Return what the result would tell about the explanations, in thousandths of a bit."""
        total = 0.0
        for weight, _ in self.entries:
            total = total + weight
        noise = {}
        for reading in readings:
            for weight, mask in self.entries:
                k = count(mask & reading.suspects)
                clean = reading.quiet * self.observation.hides[k]
                noise[clean] = noise.get(clean, 0.0) + weight / total
        told = bits(chances)
        for clean in sorted(noise):
            told = told - noise[clean] * _two_way(clean)
        return thousandths(told)

    def _then(self, move, readings: list, pattern: int, chance: float, live: int) -> dict:
        """Say what this result would mean."""
        if move.kind == "unplug":
            n = [reading.place for reading in readings].index(move.places[0])
            return reasons.UNPLUGGED_SHOWS if pattern >> n & 1 else reasons.UNPLUGGED_HIDES
        if chance < _WORKED_OUT:
            return reasons.UNLIKELY
        if not pattern and not self.belief.suspects:
            return reasons.NO_FAULT
        fresh = self._fresh(readings, pattern)
        result = (readings, pattern, fresh, chance)
        if self._may_be_clear(readings, pattern, chance, live, fresh):
            clear = self._clear(readings, pattern, live, fresh) / chance
            if self.foreseen.stands(result, clear, lambda mask, extra: not mask & live and not extra):
                return reasons.nothing_left(min(parts(clear), WHOLE))
        favoured = self._best(readings, pattern, fresh)
        if favoured is None or not favoured[1]:
            return reasons.OPEN if pattern else reasons.GONE
        share = favoured[0] / chance
        open_ones = [c for c in sorted(favoured[1]) if not self._dealt_with(c, live)]
        names = [reasons.cause(self.observation.model, c) for c in open_ones]
        if not names:
            return reasons.GONE
        stands = self.foreseen.stands(
            result, share, lambda mask, extra: self._causes(mask) + extra == favoured[1]
        )
        say = reasons.settled if stands else reasons.leading
        return say(names, min(parts(share), WHOLE))

    def _dealt_with(self, cause: int, live: int) -> bool:
        """Tell whether a cause is known already and no longer acts: a unit that was replaced."""
        weight, mask = self.entries[0]
        if cause not in self.belief.bit or weight < self.case.confidence:
            return False
        bit = 1 << self.belief.bit[cause]
        return bool(mask & bit and not live & bit)

    def _fresh(self, readings: list, pattern: int) -> list:
        """Return the causes that a result would make suspects, with their chances."""
        fresh = {}
        for n, reading in enumerate(readings):
            if pattern >> n & 1:
                for cause, chance in reading.others:
                    fresh[cause] = chance
        return [(cause, fresh[cause]) for cause in sorted(fresh)]

    def _best(self, readings: list, pattern: int, fresh: list) -> tuple | None:
        """Return (joint probability, causes) of the explanation that a result would favour."""
        best = None
        for weight, mask in self.entries:
            if best is not None and weight <= best[0]:
                break
            for extra in extras(readings, pattern, mask):
                joint = weight * given(self.observation.hides, readings, pattern, mask, extra, fresh)
                if best is None or joint > best[0]:
                    best = (joint, self._causes(mask) + extra)
        return best

    def _causes(self, mask: int) -> list:
        suspects = self.belief.suspects
        return [suspects[n] for n in range(len(suspects)) if mask >> n & 1]

    def _may_be_clear(self, readings, pattern: int, chance: float, live: int, fresh: list) -> bool:
        """Tell whether the exact answer is worth working out: it takes long and is mostly no."""
        possible = 1.0
        for weight, _ in self.entries:
            possible = possible - weight
        for weight, mask in self.entries:
            if mask & live == 0:
                possible = possible + weight * given(
                    self.observation.hides, readings, pattern, mask, [], fresh
                )
        return possible / chance >= self.case.confidence

    def _clear(self, readings: list, pattern: int, live: int, fresh: list) -> float:
        """Return the chance of this result with no live suspect, old or fresh, present."""
        absent = [(self.belief.suspects[n], 0.0) for n in range(len(self.belief.suspects)) if live >> n & 1]
        absent = absent + fresh
        chosen = ((1 << len(readings)) - 1) & ~pattern
        total = 0.0
        # Every subset of the faulted positions, with the sign of its size.
        subset = pattern
        while True:
            part = self._all_clean(readings, chosen | subset, absent)
            total = total - part if count(subset) % 2 else total + part
            if subset == 0:
                return max(0.0, total)
            subset = (subset - 1) & pattern


def _sum(shares: list) -> float:
    total = 0.0
    for share in shares:
        total = total + share
    return total


def _exactly(clean: list, size: int) -> list:
    """Turn 'all of these clean' into 'exactly these faulted', the others of `size` clean."""
    whole = (1 << size) - 1
    chances = list(clean)
    for n in range(size):
        for chosen in range(1 << size):
            if not chosen >> n & 1:
                chances[chosen] = chances[chosen] - chances[chosen | 1 << n]
    return [max(0.0, chances[whole ^ pattern]) for pattern in range(1 << size)]


def _two_way(chance: float) -> float:
    return bits([chance, 1.0 - chance])
