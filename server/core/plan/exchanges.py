"""The exchanges worth a look: pairs, several pairs at once, rings, chains from a spare.

Each position that is touched costs its reach, so what a retest can settle with one position less
is worth a look: a ring of three settles two suspects with three pulls where two pairs take four.
"""

from ..infer.case import NOBODY
from .moves import CLEARED
from .moves import Move
from .moves import reach
from .moves import refit
from .moves import same_part

# A position as doubtful as this part of the suspect is still good to exchange with.
_CLEARED_BESIDE = 0.1
# A unit more doubtful than this is no spare to rely on.
_SPARE = 0.1


class Exchanges:
    """Lists exchanges for a case, in a fixed order."""

    def __init__(self, case):
        self.case = case

    def all(self, state, marginals, suspects: list, width: int) -> list:
        """Return the exchanges that say something about these suspect positions."""
        moves = []
        partners = []
        for place in suspects:
            mine = self._partners(state, marginals, place)
            partners.append(mine)
            for partner in mine[: 2 if width > 1 else 1]:
                moves.append(self._pair(state, place, partner))
            spare = self.spare(state, marginals, place, [])
            if spare is not None:
                moves.append(self.with_spare(state, place, spare))
        if len(suspects) > 1:
            for count in range(2, len(suspects) + 1):
                moves.extend(self._several(state, marginals, suspects[:count], partners))
            for n in range(1, len(suspects)):
                if n > 1 and partners[n]:
                    moves.extend(self._rings(state, [suspects[0], suspects[n]], partners))
            moves.extend(self._among(state, suspects))
        return moves

    def _among(self, state, suspects: list) -> list:
        """Return the exchanges of suspects with each other: pairs, and rings of all of them."""
        moves = []
        for n in range(1, len(suspects)):
            for place in suspects[:n]:
                if same_part(self.case, state.fitted[place], state.fitted[suspects[n]]):
                    moves.append(self._ring(state, [place, suspects[n]], "suspects"))
        if len(suspects) > 2 and self._all_alike(state, suspects):
            moves.append(self._ring(state, suspects, "suspects"))
            moves.append(self._ring(state, suspects[::-1], "suspects"))
        return moves

    def _several(self, state, marginals, suspects: list, partners: list) -> list:
        """Return ways to settle several suspects in one retest."""
        moves = self._rings(state, suspects, partners)
        pairs = _disjoint(suspects, partners)
        if pairs:
            moved = []
            for one, other in pairs:
                moved = moved + [(one, state.fitted[other]), (other, state.fitted[one])]
            moves.append(self._move(state, moved, "several"))
        spare = self.spare(state, marginals, suspects[0], [])
        if spare is None:
            return moves
        if self._all_alike(state, suspects):
            # The spare goes in, each suspect moves on by one, the last one comes out.
            moved = [(suspects[0], spare)]
            for n in range(1, len(suspects)):
                moved.append((suspects[n], state.fitted[suspects[n - 1]]))
            moves.append(self._move(state, moved, "chain"))
        moved = []
        for place in suspects:
            spare = self.spare(state, marginals, place, [unit for _, unit in moved])
            if spare is not None:
                moved.append((place, spare))
        if len(moved) == len(suspects):
            moves.append(self._move(state, moved, "spares"))
        return moves

    def _rings(self, state, suspects: list, partners: list) -> list:
        """Return rings of the suspects and one cleared position, in both directions."""
        if not self._all_alike(state, suspects):
            return []
        for partner in partners[0]:
            if partner not in suspects:
                ring = suspects + [partner]
                turned = suspects[::-1] + [partner]
                return [self._ring(state, ring, "ring"), self._ring(state, turned, "ring")]
        return []

    def _ring(self, state, places: list, why: str) -> Move:
        """Each unit goes to the next position, the last one to the first."""
        moved = []
        for n, place in enumerate(places):
            moved.append((place, state.fitted[places[n - 1]]))
        return self._move(state, moved, why)

    def _move(self, state, moved: list, why: str) -> Move:
        minutes = refit(self.case, state.hanging, [place for place, _ in moved], False)
        return Move("exchange", [], sorted(moved), minutes, why)

    def _pair(self, state, place: int, partner: int) -> Move:
        return self._ring(state, [place, partner], self._easiest(state, place, partner))

    def with_spare(self, state, place: int, spare: int) -> Move:
        """Fit a spare at the position and test."""
        return self._move(state, [(place, spare)], "spare")

    def with_cleared(self, state, marginals, place: int) -> list:
        """Return the exchanges of a unit, before another is bought for it, with one that is known to work."""
        return [
            self._ring(state, [place, partner], "elsewhere")
            for partner in self._partners(state, marginals, place)
        ]

    def back(self, state, place: int, unit: int) -> Move:
        """Put a unit back for which a spare is in, and test: is it bad?"""
        return self._move(state, [(place, unit)], "back")

    def elsewhere(self, state, marginals) -> list:
        """Return the move that fits a suspect, taken out before, where all is known to work.

        Only there can it be cleared; as long as it lies on the bench its share of the doubt stays. One that
        is known to be bad stays out.
        """
        rows = []
        for unit, known in enumerate(self.case.units):
            on_bench = unit not in state.fitted and known.available and marginals.suspected[unit]
            if on_bench and CLEARED <= marginals.spare[unit] < self.case.confidence:
                rows.append((-int(marginals.spare[unit] * 1000000 + 0.5), unit))
        for _, unit in sorted(rows):
            for place in self._hosts(state, marginals, unit):
                return [self._move(state, [(place, unit)], "bench")]
        return []

    def _hosts(self, state, marginals, unit: int) -> list:
        """Return the cleared positions that take this unit, the easiest to reach first."""
        rows = []
        for place, other in enumerate(state.fitted):
            if same_part(self.case, unit, other) and marginals.place(place) < CLEARED:
                rows.append((int(reach(self.case, state.hanging, place) * 100 + 0.5), place))
        return [place for _, place in sorted(rows)]

    def spare(self, state, marginals, place: int, taken: list):
        """Return the least suspect unit at hand that is fitted nowhere and fits here, or None."""
        rows = []
        for unit, known in enumerate(self.case.units):
            if known.available and unit not in state.fitted and unit not in taken:
                if marginals.spare[unit] < _SPARE and same_part(self.case, state.fitted[place], unit):
                    rows.append((int(marginals.spare[unit] * 1000000 + 0.5), known.id, unit))
        return sorted(rows)[0][2] if rows else None

    def _easiest(self, state, place: int, partner: int) -> str:
        """Say whether the partner is the easiest to reach, and whether it is known to match."""
        units = self.case.units
        one, other = state.fitted[place], state.fitted[partner]
        known = one >= 0 and other >= 0 and units[one].part is not None
        same = known and units[one].part == units[other].part
        minutes = reach(self.case, state.hanging, partner)
        for here, unit in enumerate(state.fitted):
            if here != place and unit != NOBODY and same_part(self.case, one, unit):
                if reach(self.case, state.hanging, here) < minutes:
                    return "same part" if same else "cleared"
        return "same part, easiest" if same else "easiest"

    def _all_alike(self, state, places: list) -> bool:
        for place in places[1:]:
            if not same_part(self.case, state.fitted[places[0]], state.fitted[place]):
                return False
        return True

    def _partners(self, state, marginals, place: int) -> list:
        """Return the cleared positions to exchange with: easiest to reach, then nearest."""
        rows = []
        doubtful = max(CLEARED, _CLEARED_BESIDE * marginals.unit[place])
        group = self.case.positions[place].group
        for other, unit in enumerate(state.fitted):
            if other != place and same_part(self.case, state.fitted[place], unit):
                if marginals.place(other) < doubtful:
                    minutes = int(reach(self.case, state.hanging, other) * 100 + 0.5)
                    near = 0 if self.case.positions[other].group == group else 1
                    rows.append((minutes, near, abs(other - place), other))
        return [other for _, _, _, other in sorted(rows)]


def _disjoint(suspects: list, partners: list) -> list:
    """Return a pair for every suspect, no position twice; empty when there are too few."""
    pairs = []
    taken = list(suspects)
    for n, place in enumerate(suspects):
        free = [other for other in partners[n] if other not in taken]
        if not free:
            return []
        taken.append(free[0])
        pairs.append((place, free[0]))
    return pairs
