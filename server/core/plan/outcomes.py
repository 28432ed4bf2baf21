"""What a move would show, roughly: its likely outcomes in a list of likely hypotheses.

A hypothesis is an explanation with its weight. The figures that people see come from `outlook`; this is
the quick look that lets the look-ahead weigh many moves.
"""

from ..infer.noisy_or import power
from .listening import Listening
from .moves import after
from .observation import count
from .outcome import Outcome

_MOST_WATCHED = 4
_FEW_POSITIONS = 5
# Hypotheses that weigh less than this together are followed only where they show something this often.
_HEAVY = 0.07
_RARE = 0.02


class Predictions:
    """The outcomes of moves, for one belief."""

    def __init__(self, observation):
        self.observation = observation
        self.case = observation.case
        self.listening = Listening(observation)
        # Places whose own causes the hypotheses leave out: these can't say what would be read there.
        self.out_of_focus = []
        # Causes behind each reading of some, by what is present.
        self._counts = {}
        self._pattern_cache = {}
        self._read_cache = {}

    def watched(self, state, move, hypotheses: list) -> list:
        """Return the positions whose reading tells something, by position."""
        places = [place for place, _ in move.fitted]
        if move.kind != "repair":
            places = places + [place for place in move.places if place not in places]
        read = self.observation.read()
        if len(read) <= _FEW_POSITIONS:
            return sorted(set(read + places))
        rows = []
        reached = after(state, move)
        behind = {}
        for place, suspects, new in self._read(reached):
            if suspects not in behind:
                local = 0.0
                for mask, weight in hypotheses:
                    if mask & suspects:
                        local = local + weight
                behind[suspects] = local
            rows.append((-int((behind[suspects] + new) * 1000000 + 0.5), place))
        rows.sort()
        for _, place in rows:
            if len(places) >= _MOST_WATCHED:
                break
            if place not in places:
                places.append(place)
        return sorted(places)

    def _read(self, state) -> list:
        """Return (place, suspects behind it, chance of something new) of all that a test would read."""
        key = (tuple(state.fitted), tuple(state.blockable), state.repaired)
        if key not in self._read_cache:
            found = []
            for place in self.observation.read():
                reading = self.observation.reading(state, place, False)
                found.append((place, reading.suspects, 1.0 - reading.quiet))
            self._read_cache[key] = found
        return self._read_cache[key]

    def outcomes(self, state, move, hypotheses: list, noticed: float, times: int = 1) -> list:
        """Return the outcomes of a move in these hypotheses that are likely enough to notice.

        With `times`, of so many tests in a row, of which only is kept where a fault ever showed.
        """
        if move.kind == "meter":
            return self._read_meter(move, hypotheses)
        if move.kind == "listen":
            return self.listening.outcomes(move, hypotheses)
        reached = after(state, move)
        readings = []
        for place in self.watched(state, move, hypotheses):
            if place in self.out_of_focus:
                continue
            unplugged = move.kind == "unplug" and place in move.places
            readings.append(self.observation.reading(reached, place, unplugged))
        which = tuple([reading.number for reading in readings])
        outcomes = {}
        for members, weight, counts in self._alike(readings, which, hypotheses):
            # What is left out has to be rare beside all hypotheses; in a light one that is much.
            least = noticed if weight >= _HEAVY else _RARE
            key = (which, counts, times, least)
            if key not in self._pattern_cache:
                self._pattern_cache[key] = self._patterns(readings, counts, times, least)
            for pattern, chance, share in self._pattern_cache[key]:
                if pattern not in outcomes:
                    outcomes[pattern] = Outcome()
                outcome = outcomes[pattern]
                outcome.total = outcome.total + weight * chance
                if share > 0.0:
                    scale = chance * share
                    outcome.hypotheses += [(mask, part * scale) for mask, part in members]
        return [outcomes[pattern] for pattern in sorted(outcomes) if outcomes[pattern].total > 0.0]

    def _alike(self, readings: list, which: tuple, hypotheses: list) -> list:
        """Return (hypotheses, weight, causes behind each reading) of those that a test can't tell apart."""
        if which not in self._counts:
            self._counts[which] = {}
        known = self._counts[which]
        rows = {}
        order = []
        for hypothesis in hypotheses:
            mask = hypothesis[0]
            if mask not in known:
                known[mask] = tuple([count(mask & reading.suspects) for reading in readings])
            key = known[mask]
            if key not in rows:
                rows[key] = []
                order.append(key)
            rows[key].append(hypothesis)
        groups = []
        for key in order:
            weight = 0.0
            for _, part in rows[key]:
                weight = weight + part
            groups.append((rows[key], weight, key))
        return groups

    def _patterns(self, readings: list, counts: tuple, times: int, least: float) -> list:
        """Return (pattern, chance, share that is nothing new) of what such a hypothesis would show.

        What is rarer than `least` is left out, and the rest makes up for it: a hypothesis lost here
        would pass for something that the test has told.
        """
        hides = self.observation.hides
        partial = [(0, 1.0, 1.0)]
        for n, reading in enumerate(readings):
            bit = 1 << n
            clean = power(reading.quiet * hides[counts[n]], times)
            # With none of the suspects behind it, a fault is mostly something new.
            known = 1.0
            if counts[n] == 0 and clean < 1.0:
                known = (1.0 - power(reading.bare, times)) / (1.0 - clean)
            longer = []
            # The likelier reading is always followed, so that no hypothesis is lost altogether.
            for pattern, chance, share in partial:
                without = chance * clean
                if clean > 0.5 or without >= least:
                    longer.append((pattern, without, share))
                if clean <= 0.5 or chance - without >= least:
                    longer.append((pattern | bit, chance - without, share * known))
            partial = longer
        total = 0.0
        for _, chance, _ in partial:
            total = total + chance
        return [(pattern, chance / total, share) for pattern, chance, share in partial]

    def _read_meter(self, move, hypotheses: list) -> list:
        rates = self.case.rates
        cause = self.observation.model.circuits[move.places[0]][-1]
        bit = self.observation.belief.bit.get(cause)
        good = Outcome()
        bad = Outcome()
        for mask, weight in hypotheses:
            if bit is None:
                chance = self.observation.belief.alone[cause]
            else:
                chance = 1.0 * (mask >> bit & 1)
            reads_bad = chance * rates["meter_sees"] + (1.0 - chance) * rates["meter_false"]
            for outcome, part in ((good, 1.0 - reads_bad), (bad, reads_bad)):
                if part > 0.0:
                    outcome.total = outcome.total + weight * part
                    outcome.hypotheses.append((mask, weight * part))
        return [outcome for outcome in (good, bad) if outcome.total > 0.0]
