"""The moves that could come next: what each would change and how long it takes.

A move is data only. `fitted` is a mapping from position to unit, so that one pair, several pairs, a
ring of three, a spare and a new unit are all the same kind of thing.
"""

from collections import namedtuple

from .case import NOBODY

# Stands for a unit that is still to be bought; it has the prior of any unit.
NEW = -2

# What is where and which positions may still be blocked: all that a move can change.
State = namedtuple("State", ("fitted", "blockable"))
# `place` is the position cleaned, unplugged or measured; `fitted` a list of (position, unit);
# `why` names the sentence that explains the choice (words.py).
Move = namedtuple("Move", ("kind", "place", "fitted", "minutes", "why"))
# How likely each position's own causes are, as far as they still act: the scent to follow.
Scent = namedtuple("Scent", ("unit", "circuit", "blocked", "spare"))

# Below this a cause is not worth a move of its own.
_WORTH_A_MOVE = 0.01
# A position as doubtful as this, or as this part of the suspect, is still good to exchange with.
_CLEARED = 0.02
_CLEARED_BESIDE = 0.1


def after(state: State, move: Move) -> State:
    """Return what is where once the move is made."""
    if move.kind == "clean":
        blockable = list(state.blockable)
        blockable[move.place] = False
        return State(state.fitted, blockable)
    if not move.fitted:
        return state
    fitted = list(state.fitted)
    blockable = list(state.blockable)
    for place, unit in move.fitted:
        fitted[place] = unit
        blockable[place] = False
    return State(fitted, blockable)


class Candidates:
    """Lists the moves worth a look in a given state."""

    def __init__(self, case):
        self.case = case
        self.minutes = case.minutes

    def moves(self, state: State, scent: Scent, width: int, all_kinds: bool) -> list:
        """Return the moves for the `width` most suspect positions, in a fixed order."""
        found = [Move("retest", NOBODY, [], self.minutes["test"], "retest")]
        places = self._by_suspicion(state, scent)[:width]
        for place in places:
            if scent.blocked[place] >= _WORTH_A_MOVE:
                found.append(self.clean(place))
            if scent.circuit[place] >= _WORTH_A_MOVE:
                found.append(self.meter(place))
        doubtful = _CLEARED
        for place in places:
            doubtful = max(doubtful, _CLEARED_BESIDE * scent.unit[place])
        suspects = [place for place in places if scent.unit[place] >= doubtful]
        found.extend(self._exchanges(state, scent, suspects, width))
        found.extend(self._elsewhere(state, scent))
        if all_kinds and places:
            if suspects:
                found.append(self.replace([suspects[0]]))
            found.append(self.unplug(places[0]))
        return found

    def clean(self, place: int) -> Move:
        """Clean a position and test again."""
        minutes = self.case.positions[place].reach + self.minutes["clean"] + self.minutes["test"]
        return Move("clean", place, [], minutes, "clean")

    def meter(self, place: int) -> Move:
        """Go through the checks of a circuit."""
        minutes = self.case.positions[place].reach + self.minutes["meter"]
        return Move("meter", place, [], minutes, "meter")

    def unplug(self, place: int) -> Move:
        """Pull the connector of a position and test: does the test watch it at all?"""
        minutes = self.case.positions[place].reach + self.minutes["pull"] + self.minutes["test"]
        return Move("unplug", place, [], minutes, "unplug")

    def replace(self, places: list) -> Move:
        """Fit a new unit at each of the positions and test."""
        fitted = [(place, NEW) for place in sorted(places)]
        return Move("replace", NOBODY, fitted, self._refit(places), "replace")

    def _refit(self, places: list) -> float:
        """Return the minutes to pull and fit at the positions, with the test."""
        minutes = self.minutes["test"]
        for place in sorted(places):
            reach = self.case.positions[place].reach
            minutes = minutes + reach + self.minutes["pull"] + self.minutes["fit"]
        return minutes

    def _by_suspicion(self, state: State, scent: Scent) -> list:
        rows = []
        for place in range(len(state.fitted)):
            total = scent.unit[place] + scent.circuit[place] + scent.blocked[place]
            if total >= _WORTH_A_MOVE:
                rows.append((-int(total * 1000000 + 0.5), place))
        return [place for _, place in sorted(rows)]

    def _exchanges(self, state: State, scent: Scent, suspects: list, width: int) -> list:
        """Return exchanges of each suspect, of several in one retest, and of two suspects."""
        found = []
        partners = []
        for place in suspects:
            mine = self._partners(state, scent, place)
            partners.append(mine)
            for partner in mine[: 2 if width > 1 else 1]:
                found.append(self._exchange(state, [(place, partner)], "cleared"))
            spare = self.spare(state, scent, place)
            if spare is not None:
                found.append(self.with_spare(place, spare))
        if len(suspects) > 1:
            for count in range(2, len(suspects) + 1):
                pairs = _disjoint(suspects[:count], partners)
                if pairs:
                    found.append(self._exchange(state, pairs, "several"))
            if self._same_part(state.fitted[suspects[0]], state.fitted[suspects[1]]):
                pair = [(suspects[0], suspects[1])]
                found.append(self._exchange(state, pair, "suspects"))
        return found

    def with_spare(self, place: int, spare: int) -> Move:
        """Fit a spare at the position and test."""
        return Move("exchange", NOBODY, [(place, spare)], self._refit([place]), "spare")

    def _elsewhere(self, state: State, scent: Scent) -> list:
        """Return the move that fits a suspect, taken out before, where all is known to work.

        Only there can it be cleared; as long as it lies on the bench its share of the doubt stays.
        """
        rows = []
        for unit, known in enumerate(self.case.units):
            if unit not in state.fitted and known.available and scent.spare[unit] >= _CLEARED:
                rows.append((-int(scent.spare[unit] * 1000000 + 0.5), unit))
        for _, unit in sorted(rows):
            for place in self._hosts(state, scent, unit):
                return [Move("exchange", NOBODY, [(place, unit)], self._refit([place]), "bench")]
        return []

    def _hosts(self, state: State, scent: Scent, unit: int) -> list:
        """Return the cleared positions that take this unit, the easiest to reach first."""
        rows = []
        for place, other in enumerate(state.fitted):
            if self._same_part(unit, other):
                if scent.unit[place] + scent.circuit[place] + scent.blocked[place] < _CLEARED:
                    rows.append((int(self.case.positions[place].reach * 100 + 0.5), place))
        return [place for _, place in sorted(rows)]

    def _exchange(self, state: State, pairs: list, why: str) -> Move:
        fitted = []
        for one, other in pairs:
            fitted.append((one, state.fitted[other]))
            fitted.append((other, state.fitted[one]))
        fitted.sort()
        if why == "cleared":
            why = self._easiest(state, pairs[0])
        return Move("exchange", NOBODY, fitted, self._refit([p for p, _ in fitted]), why)

    def _easiest(self, state: State, pair) -> str:
        """Say whether the partner is the easiest to reach, and whether it is known to match."""
        units = self.case.units
        one, other = state.fitted[pair[0]], state.fitted[pair[1]]
        known = one >= 0 and other >= 0 and units[one].part is not None
        same = known and units[one].part == units[other].part
        reach = self.case.positions[pair[1]].reach
        for place, unit in enumerate(state.fitted):
            if place != pair[0] and unit != NOBODY and self._same_part(one, unit):
                if self.case.positions[place].reach < reach:
                    return "same part" if same else "cleared"
        return "same part, easiest" if same else "easiest"

    def _same_part(self, one: int, other: int) -> bool:
        """Tell whether two units may be exchanged: not when both are known and differ."""
        if one < 0 or other < 0:
            return False
        part = self.case.units[one].part
        return part is None or self.case.units[other].part in (None, part)

    def _partners(self, state: State, scent: Scent, place: int) -> list:
        """Return the cleared positions to exchange with: easiest to reach, then least suspect."""
        rows = []
        doubtful = max(_CLEARED, _CLEARED_BESIDE * scent.unit[place])
        for other, unit in enumerate(state.fitted):
            if other == place or not self._same_part(state.fitted[place], unit):
                continue
            doubt = scent.unit[other] + scent.circuit[other] + scent.blocked[other]
            if doubt < doubtful:
                reach = int(self.case.positions[other].reach * 100 + 0.5)
                near = 0 if self._same_group(place, other) else 1
                rows.append((reach, near, abs(other - place), other))
        return [other for _, _, _, other in sorted(rows)]

    def _same_group(self, one: int, other: int) -> bool:
        return self.case.positions[one].group == self.case.positions[other].group

    def spare(self, state: State, scent: Scent, place: int):
        """Return the least suspect unit at hand that is fitted nowhere and fits here, or None."""
        rows = []
        for unit, known in enumerate(self.case.units):
            if known.available and unit not in state.fitted and scent.spare[unit] < 0.1:
                if self._same_part(state.fitted[place], unit):
                    rows.append((int(scent.spare[unit] * 1000000 + 0.5), known.id, unit))
        return sorted(rows)[0][2] if rows else None


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
