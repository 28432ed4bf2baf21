"""The moves where units lie in the hand and positions are empty: they go in, some of them elsewhere.

The positions have to be filled anyway, so that the plain way costs least. But what sits where it sat before
may tell nothing: so a unit of another position may come in, and the loose one goes there.
"""

from ..infer.case import NOBODY
from .moves import Move
from .moves import State
from .moves import handled

# So many orders of the loose units are tried where they differ.
_MOST_ORDERS = 6


class Fills:
    """Lists the fillings of one state."""

    def __init__(self, lookahead, state, loose: list):
        self.lookahead = lookahead
        self.case = lookahead.case
        self.state = state
        rows = []
        for place, unit in enumerate(state.fitted):
            if unit == NOBODY:
                rows.append((int(self.case.positions[place].reach * 100 + 0.5), place))
        self.empty = [place for _, place in sorted(rows)]
        self.loose = loose
        # As likely to be bad as each other, before they were tested, they are the same to a test.
        marginals = lookahead.marginals(state, lookahead.hypotheses)
        self.alike = {unit: int(marginals.spare[unit] * 1000000 + 0.5) for unit in loose}

    def moves(self) -> list:
        """Return the fillings, the plain one first."""
        found, seen = [], []
        for order in self._orders():
            placed = list(zip(self.empty, order))
            filled = list(self.state.fitted)
            for place, unit in placed:
                filled[place] = unit
            reached = State(filled, self.state.blockable, self.state.repaired, self.state.hanging)
            self._add(found, seen, placed, "fill")
            around = self.lookahead.marginals(reached, self.lookahead.hypotheses)
            for move in self.lookahead.candidates.moves(reached, around, 3, False):
                if move.kind == "exchange" and not [1 for _, unit in move.fitted if unit not in filled]:
                    self._add(found, seen, _over(placed, move.fitted), "fill elsewhere")
        return found

    def _orders(self) -> list:
        """Return the orders in which the loose units may go in, those alike told apart by none."""
        orders: list[list[int]] = [[]]
        for _ in range(min(len(self.empty), len(self.loose))):
            longer = []
            for order in orders:
                seen = []
                for unit in self.loose:
                    if unit not in order and self.alike[unit] not in seen:
                        seen.append(self.alike[unit])
                        longer.append(order + [unit])
            orders = longer[:_MOST_ORDERS]
        return orders

    def _add(self, found: list, seen: list, placed: list, why: str) -> None:
        """Add a filling that is new, also if units that are alike changed places."""
        fitted = sorted(placed)
        key = [(place, self.alike.get(unit, -1 - unit)) for place, unit in fitted]
        if key in seen:
            return
        seen.append(key)
        minutes = self.case.minutes["test"]
        for place, _ in fitted:
            minutes = minutes + handled(self.case, self.state.hanging, place, False)
            if place in self.empty:
                minutes = minutes - self.case.minutes["pull"]
        found.append(Move("exchange", [], fitted, minutes, why))


def _over(placed: list, fitted: list) -> list:
    """Return what is where after both: the second has the last word."""
    last = dict(placed)
    for place, unit in fitted:
        last[place] = unit
    return list(last.items())
