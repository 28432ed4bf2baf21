"""The moves that could come next in a given state, the few that are worth a look."""

from ..infer.case import NOBODY
from .exchanges import Exchanges
from .moves import CLEARED
from .moves import NEW
from .moves import Move
from .moves import reach
from .moves import refit

# Below this a cause is not worth a move of its own.
_WORTH_A_MOVE = 0.01
_CLEARED_BESIDE = 0.1


class Candidates:
    """Lists the moves worth a look."""

    def __init__(self, case):
        self.case = case
        self.minutes = case.minutes
        self.exchanges = Exchanges(case)

    def moves(self, state, marginals, width: int, all_kinds: bool) -> list:
        """Return the moves for the `width` most suspect positions, in a fixed order."""
        moves = [Move("retest", [], [], self.minutes["test"], "retest")]
        places = self.by_doubt(state, marginals)[:width]
        doubtful = CLEARED
        plugged = [place for place in places if state.fitted[place] != NOBODY]
        blocked = [place for place in plugged if marginals.blocked[place] >= _WORTH_A_MOVE]
        for count in range(2, len(blocked) + 1):
            moves.append(self.clean(state, blocked[:count]))
        for place in places:
            if place in blocked:
                moves.append(self.clean(state, [place]))
            if marginals.circuit[place] >= _WORTH_A_MOVE:
                moves.append(self.meter(state, place, marginals.circuit[place]))
            doubtful = max(doubtful, _CLEARED_BESIDE * marginals.unit[place])
        suspects = [place for place in places if marginals.unit[place] >= doubtful]
        moves.extend(self.exchanges.all(state, marginals, suspects, width))
        moves.extend(self.exchanges.elsewhere(state, marginals))
        if all_kinds and plugged:
            moves.append(self.unplug(state, plugged[0]))
        return moves

    def proving(self, moves: list) -> list:
        """Return the moves without the exchanges of suspects only, unless there is no other exchange.

        What they prove leans on how rare the causes are, not on what is seen.
        """
        cleared = [move for move in moves if move.kind == "exchange" and move.why != "suspects"]
        return [move for move in moves if move.why != "suspects"] if cleared else moves

    def clean(self, state, places: list) -> Move:
        """Clean positions, one or several, and test again; what lies outside is wiped with nothing opened."""
        minutes = self.minutes["test"]
        for place in places:
            minutes = minutes + self.minutes["clean"]
            if not self.case.sort.obstruction.outside:
                minutes = minutes + reach(self.case, state.hanging, place)
        return Move("clean", sorted(places), [], minutes, "clean" if len(places) == 1 else "clean several")

    def meter(self, state, place: int, bad: float) -> Move:
        """Go through the checks of a circuit, `bad` with that chance: they end where its fault is found."""
        checks = self.minutes["meter"] + bad * (self.minutes["meter_found"] - self.minutes["meter"])
        return Move("meter", [place], [], reach(self.case, state.hanging, place) + checks, "meter")

    def unplug(self, state, place: int) -> Move:
        """Pull the connector of a position and test: does the test watch it at all?"""
        minutes = reach(self.case, state.hanging, place) + self.minutes["pull"] + self.minutes["test"]
        return Move("unplug", [place], [], minutes, "unplug")

    def repair(self, cause: int) -> Move:
        """Find and repair what is wrong with a circuit, a feed or the control unit, and test again."""
        minutes = self.minutes["repair"] + self.minutes["test"]
        return Move("repair", [cause], [], minutes, "repair")

    def replace(self, state, places: list, spare: int = NEW) -> Move:
        """Fit a new unit at each of the positions, where the old one is known to be bad, and test.

        A good one that lies there, `spare`, goes to the first of them: one test proves both.
        """
        fitted = sorted([(place, NEW if n else spare) for n, place in enumerate(places)])
        return Move("replace", [], fitted, refit(self.case, state.hanging, places, True), "verdict replace")

    def by_doubt(self, state, marginals) -> list:
        """Return the suspect positions, those first of whose causes least is known."""
        rows = []
        for place in range(len(state.fitted)):
            if marginals.place(place) >= _WORTH_A_MOVE:
                doubt = 0.0
                for chance in (marginals.unit[place], marginals.circuit[place], marginals.blocked[place]):
                    doubt = doubt + chance * (1.0 - chance)
                rows.append((-int(doubt * 1000000 + 0.5), place))
        return [place for _, place in sorted(rows)]
