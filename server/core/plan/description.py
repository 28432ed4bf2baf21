"""A move as it is shown: its reason, its minutes, its outlook, and what speaks against it."""

from ..infer import cost
from ..infer import reasons
from ..infer.figures import hundredths
from ..infer.figures import parts
from . import why_not
from .moves import NEW
from .moves import Move
from .outlook import Outlook


class Description:
    """Describes the moves of one belief."""

    def __init__(self, sight, foresight, found, scent, entries: list):
        self.belief = sight.belief
        self.model = sight.model
        self.case = sight.case
        self.state = sight.now()
        self.foresight = foresight
        self.found = found
        self.scent = scent
        self.outlook = Outlook(sight, entries)

    def shown(self, move: Move, best: bool) -> dict:
        """Return a move with its reason, its outlook, and what speaks against it."""
        shown = self._described(move)
        if not best:
            against = why_not.sentence(move, shown["bits_x1000"], self._untested(move), self._good(move))
            if against:
                shown["why_not"] = against
        if self.case.money is not None:
            bought = len([1 for _, unit in move.fitted if unit == NEW])
            shown["cost"] = cost.cost(self.case.money, shown["minutes_x100"], bought)
        return shown

    def _untested(self, move: Move) -> bool:
        """Tell whether a move fits a spare that no test has seen clean and no history speaks for."""
        for _, unit in move.fitted:
            if unit >= 0 and unit not in self.state.fitted:
                cause = self.model.unit[unit]
                if self.model.clean[cause] == 0 and cause not in self.belief.bit:
                    if self.model.priors[cause] >= self.case.rates["unit"]:
                        return True
        return False

    def _good(self, move: Move) -> int:
        """Return how likely one of the sensors that a move replaces is good."""
        bad = 1.0
        for place, unit in move.fitted:
            if unit == NEW:
                bad = min(bad, self.scent.unit[place])
        return parts(1.0 - bad)

    def _described(self, move: Move) -> dict:
        """Return a move with its reason and its outlook."""
        minutes = hundredths(move.minutes)
        shown = {
            "move": move.kind,
            "minutes_x100": minutes,
            "reason": reasons.reason(
                move.why, self._about(move), minutes, move.kind not in ("retest", "meter")
            ),
        }
        if move.kind == "meter":
            shown["position"] = self.case.positions[move.places[0]].id
            shown["outlook"], shown["bits_x1000"] = self.outlook.of_meter(move)
            return shown
        if move.fitted:
            shown["fitted"] = {}
            names = self._names(move)
            for n, (place, _) in enumerate(move.fitted):
                shown["fitted"][self.case.positions[place].id] = names[n]
        elif len(move.places) == 1:
            shown["position"] = self.case.positions[move.places[0]].id
        elif move.places:
            shown["positions"] = [self.case.positions[place].id for place in move.places]
        places = self.foresight.results.watched(self.state, move, self.foresight.worlds)
        shown["outlook"], shown["bits_x1000"] = self.outlook.of_test(self.state, move, places)
        return shown

    def _names(self, move: Move) -> list:
        """Return the ids of the units to fit; each new one gets the first name that is free."""
        taken = [known.id for known in self.case.units]
        names = []
        for _, unit in move.fitted:
            name = "new"
            n = 2
            while name in taken:
                name = "new-{}".format(n)
                n += 1
            if unit != NEW:
                name = self.case.units[unit].id
            else:
                taken.append(name)
            names.append(name)
        return names

    def _about(self, move: Move) -> str:
        """Return what the sentence of a move speaks of."""
        if move.why == "shared":
            return reasons.either([reasons.cause(self.model, cause) for cause in self.found.shared()])
        if move.why.startswith("verdict") or move.why == "repair":
            return reasons.listed([reasons.cause(self.model, cause) for cause in self.found.dealt(move)])
        return reasons.listed([self.case.positions[place].name for place in move.places])
